package rodwork.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.ComparePlans;
import rodwork.app.operation.FindTeeth;
import rodwork.app.operation.JudgeAbutments;
import rodwork.app.operation.MakePlan;
import rodwork.app.operation.OpenDemo;
import rodwork.app.operation.WantedPath;
import rodwork.app.operation.WantedTeeth;
import rodwork.casework.drawing.PlanDrawing;
import rodwork.casework.drawing.Sheet;
import rodwork.casework.rulebook.Rulebook;
import rodwork.design.abutment.Answers;
import rodwork.design.plan.Choices;
import rodwork.geometry.Watch;
import rodwork.rules.Finding;
import rodwork.rules.Wording;
import rodwork.survey.Tilt;

/**
 * Tooth numbers of everything that a person reads of a plan, in each notation. What is 35 in FDI is
 * 20 in the universal system of the American Dental Association, whose 33 and more do not exist; so
 * a number that was not put into the notation is found out.
 */
class NotationInTablesTest {
  private static CastTeeth teeth;
  private static MakePlan.Planned planned;
  private static List<ComparePlans.Compared> compared;

  @BeforeAll
  static void plan() {
    teeth =
        FindTeeth.of(
            OpenDemo.of(Jaw.LOWER, Watch.NONE),
            new WantedTeeth(
                Stream.of(35, 36, 37, 45, 46).map(ToothNumber::of).collect(Collectors.toSet()),
                null,
                List.of()),
            Watch.NONE);
    planned =
        MakePlan.of(
            teeth,
            new JudgeAbutments.Wanted(
                new WantedPath.AtTilt(Tilt.REFERENCE), new TreeSet<>(), null, Answers.NONE),
            Choices.NONE,
            Rulebook.shipped(),
            Watch.NONE);
    Choices without =
        ChoicesReader.of(Json.object().set("notUsed", Json.array().add(34)), "the test");
    compared =
        ComparePlans.of(
            List.of(
                new ComparePlans.Named("A", planned),
                new ComparePlans.Named("B", MakePlan.by(planned, without, Watch.NONE))),
            null,
            Watch.NONE);
  }

  private static List<String> lines(Notation notation) {
    return Stream.of(
            PlanTable.of(planned, notation),
            AbutmentsTable.of(planned.judged(), notation),
            TeethTable.of(teeth, notation),
            ComparisonTable.of(compared, notation))
        .flatMap(List::stream)
        .toList();
  }

  @ParameterizedTest
  @EnumSource(Notation.class)
  void everyFindingAndQuestionNamesItsToothInTheNotation(Notation notation) {
    int named = 0;
    for (Finding finding : planned.plan().findings()) {
      for (Wording.Piece piece : finding.place().wording().pieces()) {
        if (piece instanceof Wording.Piece.Tooth(int fdi)) {
          assertThat(finding.sentence(notation)).contains(ToothNumber.of(fdi).in(notation));
          named++;
        }
      }
    }
    assertThat(named).isGreaterThan(20);
    assertThat(planned.plan().questions()).isNotEmpty();
  }

  /** The tables say the same in each notation, but for the numbers of teeth. */
  @Test
  void theTablesDifferInToothNumbersAlone() {
    List<String> fdi = lines(Notation.FDI);
    List<String> universal = lines(Notation.UNIVERSAL);
    assertThat(universal).hasSameSizeAs(fdi);
    Pattern tooth =
        Pattern.compile(
            "(?<=tooth |teeth |at |of |on |molar |show )([34][3-8])\\b(?![.°]| (?:mm|MPa|N|teeth|rules))");
    int numbers = 0;
    for (int i = 0; i < fdi.size(); i++) {
      Matcher left = tooth.matcher(universal.get(i));
      assertThat(left.find()).as(universal.get(i)).isFalse();
      numbers += fdi.get(i).equals(universal.get(i)) ? 0 : 1;
    }
    assertThat(numbers).isGreaterThan(30);
  }

  /** Each number of the drawing is that of the tooth that it says it is. */
  @ParameterizedTest
  @EnumSource(Notation.class)
  void theDrawingNamesTeethInTheNotation(Notation notation) {
    String svg =
        PlanDrawing.svg(
            teeth.arch(), teeth.dentition(), planned.plan(), "demo", Sheet.WHOLE, notation);
    Matcher number = Pattern.compile("<text data-tooth=\"(\\d\\d)\"[^>]*>([^<]*)<").matcher(svg);
    int found = 0;
    while (number.find()) {
      assertThat(number.group(2))
          .isEqualTo(ToothNumber.of(Integer.parseInt(number.group(1))).in(notation));
      found++;
    }
    assertThat(found).isGreaterThan(20);
  }

  @Test
  void filesKeepFdiAndTellTheTeethApart() {
    JsonNode json = PlanJson.of(planned);
    Set<Integer> seen = new TreeSet<>();
    for (JsonNode finding : json.get("findings")) {
      StringBuilder words = new StringBuilder();
      for (JsonNode piece : finding.get("place").get("pieces")) {
        words.append(piece.asText());
        if (piece.isInt()) {
          seen.add(piece.asInt());
        }
      }
      assertThat(words.toString()).isEqualTo(finding.get("place").get("words").asText());
    }
    assertThat(seen).contains(34, 44);
    assertThat(json.get("questionPieces")).hasSameSizeAs(json.get("questions"));
  }

  /** A finding that a cut puts right names the step that does; what stays open names none. */
  @Test
  void filesTellWhatThePreparationPutsRight() throws java.io.IOException {
    JsonNode json = PlanJson.of(planned);
    assertThat(Schemas.errors("plan", json)).isEmpty();
    int steps = json.at("/preparation/steps").size();
    int righted = 0;
    for (JsonNode finding : json.get("findings")) {
      JsonNode right = finding.get("putRight");
      if (!right.isNull()) {
        assertThat(finding.get("verdict").asText()).isNotEqualTo("met");
        assertThat(right.get("step").asInt()).isBetween(1, steps);
        assertThat(right.at("/after/kind").asText()).isEqualTo("measured");
        righted++;
      }
    }
    assertThat(righted).isBetween(1, json.get("findings").size() - 1);
  }
}
