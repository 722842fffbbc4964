package rodwork.app.operation;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.report.LabelsFile;
import rodwork.casework.drawing.PlanDrawing;
import rodwork.casework.drawing.Sheet;
import rodwork.casework.rulebook.Rulebook;
import rodwork.design.abutment.Answers;
import rodwork.design.plan.Choices;
import rodwork.geometry.Watch;
import rodwork.geometry.testing.Shared;
import rodwork.survey.Tilt;

/** On the drawing of a plan no words lie on other words, beyond the sheet, or on a part. */
class PlanDrawingTest {
  private static final Pattern TEXT =
      Pattern.compile(
          "<text[^>]*?x=\"([\\d.-]+)\" y=\"([\\d.-]+)\"\\s+font-size=\"([\\d.]+)\"([^>]*)>([^<]*)");

  private static final Pattern PART =
      Pattern.compile(
          "<path class=\"(tooth|rest|retentive|reciprocal|connector|minor|plate|base|finish)\""
              + "[^>]*? d=\"([^\"]*)\"");

  private static final Pattern POINT = Pattern.compile("([MLZ])(?:([\\d.-]+) ([\\d.-]+))?");

  /** Letters of the form are narrower than those of the usual family by this. */
  private static final double CONDENSED = 0.9;

  private record Words(String text, Rectangle2D box) {}

  @ParameterizedTest
  @CsvSource({
    "demo-upper, '14,15,25,26'",
    "demo-lower, '35,36,37,45,46'",
    "upper-14, 14",
    "upper-15-24, '15,24'",
    "lower-35, 35"
  })
  void noWordsLieOnOthersOrOnAPart(String cast, String missing) {
    MakePlan.Planned planned = planned(cast, missing);
    for (Sheet sheet : List.of(Sheet.WHOLE, Sheet.ON_PAGE)) {
      String svg =
          PlanDrawing.svg(
              planned.judged().teeth().arch(),
              planned.judged().teeth().dentition(),
              planned.plan(),
              cast,
              sheet,
              Notation.FDI);
      double narrow = sheet.equals(Sheet.ON_PAGE) ? CONDENSED : 1;
      List<Words> all = words(svg, narrow);
      Matcher size = Pattern.compile("viewBox=\"0 0 ([\\d.]+) ([\\d.]+)\"").matcher(svg);
      assertThat(size.find()).isTrue();
      Rectangle2D page =
          new Rectangle2D.Double(
              0, 0, Double.parseDouble(size.group(1)), Double.parseDouble(size.group(2)));
      for (int i = 0; i < all.size(); i++) {
        Words one = all.get(i);
        assertThat(page.contains(one.box)).as("%s on %s", one, cast).isTrue();
        for (Words other : all.subList(i + 1, all.size())) {
          assertThat(one.box.intersects(other.box)).as("%s and %s", one, other).isFalse();
        }
      }
      List<Words> numbers = all.stream().filter(w -> w.text.matches("[1-4][1-8]")).toList();
      Set<String> named = numbers.stream().map(Words::text).collect(Collectors.toSet());
      planned
          .judged()
          .teeth()
          .dentition()
          .standing()
          .forEach(t -> assertThat(named).contains(t.toString()));
      planned.plan().replaced().forEach(t -> assertThat(named).contains(t.toString()));
      Matcher part = PART.matcher(svg);
      while (part.find()) {
        for (Rectangle2D piece : pieces(part.group(2))) {
          for (Words number : numbers) {
            assertThat(number.box.intersects(piece))
                .as("%s on a %s of %s", number.text, part.group(1), cast)
                .isFalse();
          }
        }
      }
    }
  }

  /** On a sheet too small for its numbers they lie on what they belong to, and none is left out. */
  @Test
  void noNumberIsLostWhereThereIsNoRoom() {
    MakePlan.Planned planned = planned("demo-lower", "35,36,37,45,46");
    Sheet small = new Sheet(42, 0.5, 0.3, 0.3, true, 0.42, 3, 2.4, 2.4, "Form", 0.5);
    String svg =
        PlanDrawing.svg(
            planned.judged().teeth().arch(),
            planned.judged().teeth().dentition(),
            planned.plan(),
            "demo",
            small,
            Notation.FDI);
    List<String> named = words(svg, 1).stream().map(Words::text).toList();
    Set<ToothNumber> all = new TreeSet<>(planned.judged().teeth().dentition().standing());
    all.addAll(planned.plan().replaced());
    for (ToothNumber tooth : all) {
      // From above, and from both sides of its half.
      assertThat(named.stream().filter(tooth.toString()::equals)).as("%s", tooth).hasSize(3);
    }
  }

  private static List<Words> words(String svg, double narrow) {
    Font font = new Font(Font.SANS_SERIF, Font.PLAIN, 100);
    FontRenderContext context = new FontRenderContext(null, true, true);
    List<Words> all = new ArrayList<>();
    Matcher text = TEXT.matcher(svg);
    while (text.find()) {
      double size = Double.parseDouble(text.group(3));
      double wide = font.getStringBounds(text.group(5), context).getWidth() / 100 * size * narrow;
      double x = Double.parseDouble(text.group(1));
      double left = text.group(4).contains("middle") ? x - wide / 2 : x;
      // Capitals and digits are about 0.73 of the size high.
      double y = Double.parseDouble(text.group(2)) - 0.73 * size;
      all.add(new Words(text.group(5), new Rectangle2D.Double(left, y, wide, 0.73 * size)));
    }
    return all;
  }

  /** Small boxes along a path, each shorter than half a millimetre. */
  private static List<Rectangle2D> pieces(String path) {
    List<Rectangle2D> pieces = new ArrayList<>();
    Matcher point = POINT.matcher(path);
    double[] start = null;
    double[] before = null;
    while (point.find()) {
      boolean close = point.group(1).equals("Z");
      double[] at =
          close
              ? start
              : new double[] {
                Double.parseDouble(point.group(2)), Double.parseDouble(point.group(3))
              };
      if (point.group(1).equals("M")) {
        start = at;
      } else if (before != null && at != null) {
        int n = 1 + (int) (2 * Math.hypot(at[0] - before[0], at[1] - before[1]));
        for (int i = 0; i < n; i++) {
          double x = before[0] + (at[0] - before[0]) * (i + 0.5) / n;
          double y = before[1] + (at[1] - before[1]) * (i + 0.5) / n;
          pieces.add(new Rectangle2D.Double(x - 0.01, y - 0.01, 0.02, 0.02));
        }
      }
      before = at;
    }
    return pieces;
  }

  private static MakePlan.Planned planned(String cast, String missing) {
    Jaw jaw = cast.contains("upper") ? Jaw.UPPER : Jaw.LOWER;
    WantedTeeth wanted =
        new WantedTeeth(
            Arrays.stream(missing.split(","))
                .map(t -> ToothNumber.of(Integer.parseInt(t)))
                .collect(Collectors.toSet()),
            null,
            List.of());
    CastTeeth teeth =
        cast.startsWith("demo")
            ? FindTeeth.of(OpenDemo.of(jaw, Watch.NONE), wanted, Watch.NONE)
            : FindTeeth.labelled(
                OpenCast.of(
                    Shared.file("arches/" + cast + ".ply"),
                    new CastOptions(jaw, FrameHints.NONE, Optional.empty()),
                    Watch.NONE),
                wanted,
                LabelsFile.read(Shared.file("arches/" + cast + ".labels.json")),
                Watch.NONE);
    return MakePlan.of(
        teeth,
        new JudgeAbutments.Wanted(
            new WantedPath.AtTilt(Tilt.REFERENCE), new TreeSet<>(), null, Answers.NONE),
        Choices.NONE,
        Rulebook.shipped(),
        Watch.NONE);
  }
}
