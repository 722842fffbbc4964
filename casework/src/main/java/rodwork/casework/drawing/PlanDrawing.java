package rodwork.casework.drawing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.design.plan.Plan;
import rodwork.geometry.Vec3;

/**
 * The plan as a drawing to scale, from above and from the sides, from the same curves as the plan
 * itself.
 *
 * <p>Black and white: each kind of part has its own line and hatching, and the legend is always
 * there. Units of the SVG are mm on paper.
 */
public final class PlanDrawing {
  /** Scales are whole multiples of this, so that they can be read off a rule. */
  private static final double SCALE_STEP = 0.05;

  /** Between views, and between columns [mm on paper]. */
  private static final double GAP_MM = 4;

  /** From a sample of the legend to its words [mm on paper]. */
  private static final double SAMPLE_MM = 8.5;

  private final Arch arch;
  private final Dentition dentition;
  private final Plan plan;
  private final Sheet sheet;
  private final Notation notation;
  private final StringBuilder svg = new StringBuilder();

  private PlanDrawing(Arch arch, Dentition dentition, Plan plan, Sheet sheet, Notation notation) {
    this.arch = arch;
    this.dentition = dentition;
    this.plan = plan;
    this.sheet = sheet;
    this.notation = notation;
  }

  /**
   * Draws.
   *
   * @param title of the cast
   * @param notation in which tooth numbers are written; {@code data-tooth} holds the FDI number
   * @return an SVG document
   */
  public static String svg(
      Arch arch, Dentition dentition, Plan plan, String title, Sheet sheet, Notation notation) {
    return new PlanDrawing(arch, dentition, plan, sheet, notation).draw(title);
  }

  private String draw(String title) {
    double margin = sheet.marginMm();
    double inner = sheet.widthMm() - 2 * margin;
    double pads = 2 * sheet.numberMm();
    double y = margin + 6;
    svg.append(text(margin, y - 2, sheet.titleMm(), title + ", " + plan.kennedy()));
    double aboveWidth = sheet.sidesBeside() ? inner * sheet.aboveShare() : inner;
    PlanPanel above = panel(View.occlusal(arch.frame()), margin, aboveWidth, true, _ -> true).at(y);
    double aboveScale = fitting(sheet.fromAbove(), aboveWidth - pads, above.extent());
    double end = above.draw(aboveScale, "from above");
    svg.append(above.svg());
    double left = sheet.sidesBeside() ? margin + aboveWidth + GAP_MM : margin;
    double half = (sheet.widthMm() - margin - left - GAP_MM) / 2;
    List<PlanPanel> sides = new ArrayList<>();
    List<String> names = new ArrayList<>();
    Vec3 x = arch.frame().x().times(plan.jaw() == Jaw.LOWER ? -1 : 1);
    // The patient's right looks in the direction of his left, and is seen from the right.
    for (boolean facial : new boolean[] {true, false}) {
      for (Side side : Side.values()) {
        boolean right = side == Side.RIGHT;
        sides.add(
            panel(
                View.side(arch.frame(), right == facial ? x : x.times(-1)),
                right ? left : left + half + GAP_MM,
                half,
                false,
                t -> t.side() == side));
        names.add((right ? "right" : "left") + (facial ? ", facial" : ", lingual"));
      }
    }
    double sideScale =
        fitting(
            sheet.fromSide(),
            half - pads,
            sides.stream().mapToDouble(PlanPanel::extent).max().orElse(0));
    double next = sheet.sidesBeside() ? y : end + 3;
    for (int row = 0; row < sides.size(); row += 2) {
      double top = next;
      for (int i = row; i < row + 2; i++) {
        next = Math.max(next, sides.get(i).at(top).draw(sideScale, names.get(i)));
        svg.append(sides.get(i).svg());
      }
      next += 3;
    }
    y = legend(margin, Math.max(end, next) + 2, inner);
    String[] below = {
      String.format(
          Locale.ROOT,
          "Scale %.2f : 1 from above, %.2f : 1 from the sides. Patient's right on the viewer's left.",
          aboveScale,
          sideScale),
      "An aid: the prescriber decides and signs."
    };
    for (String line : below) {
      y += 1.6 * sheet.smallMm();
      svg.append(text(margin, y, sheet.smallMm(), line));
    }
    double height = y + 1 + margin;
    return String.format(
            Locale.ROOT,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0fmm\" height=\"%.0fmm\""
                + " viewBox=\"0 0 %.0f %.0f\" font-family=\"%s\">%n<title>%s</title>%n"
                + "<rect width=\"100%%\" height=\"100%%\" fill=\"#fff\"/>%n",
            sheet.widthMm(),
            height,
            sheet.widthMm(),
            height,
            sheet.font(),
            escaped(title))
        + Look.hatchings()
        + svg
        + "</svg>\n";
  }

  private PlanPanel panel(
      View view, double left, double width, boolean above, Predicate<ToothNumber> shown) {
    return new PlanPanel(
        arch, dentition, plan, sheet, notation, view, left, 0, width, above, shown);
  }

  /** The scale wanted, or the greatest at which an extent fits a width. */
  private static double fitting(double wanted, double width, double extent) {
    double most = extent > 0 ? width / extent : wanted;
    return most >= wanted ? wanted : Math.floor(most / SCALE_STEP) * SCALE_STEP;
  }

  /** Draws the legend in as many columns as its words allow, and says where it ends. */
  private double legend(double left, double top, double wide) {
    double longest =
        Arrays.stream(Look.values()).mapToDouble(look -> wide(look.words())).max().orElse(0);
    int columns = Math.max(1, (int) (wide / (SAMPLE_MM + longest + GAP_MM)));
    double width = wide / columns;
    double step = 1.7 * sheet.smallMm();
    int i = 0;
    for (Look look : Look.values()) {
      double x = left + width * (i % columns);
      double y = top + step * (i / columns);
      svg.append(look.sample(x, y, SAMPLE_MM - 1.5, sheet.smallMm()));
      svg.append(text(x + SAMPLE_MM, y + 0.9 * sheet.smallMm(), sheet.smallMm(), look.words()));
      i++;
    }
    return top + step * ((Look.values().length + columns - 1) / columns);
  }

  /** How wide words get at most [mm]. */
  private double wide(String words) {
    return sheet.letterShare() * sheet.smallMm() * words.length();
  }

  static String text(double x, double y, double size, String words) {
    return String.format(
        Locale.ROOT,
        "<text x=\"%.2f\" y=\"%.2f\" font-size=\"%.1f\">%s</text>%n",
        x,
        y,
        size,
        escaped(words));
  }

  private static String escaped(String words) {
    return words.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
