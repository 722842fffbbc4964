package rodwork.app.operation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.casework.rulebook.Rulebook;
import rodwork.design.abutment.Answers;
import rodwork.design.plan.Choices;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;
import rodwork.geometry.Watch;
import rodwork.survey.Tilt;

/** Plans of the lower demo cast, whose making tells what must be there. */
class MakePlanTest {
  private static final Rulebook BOOK = Rulebook.shipped();

  /** Common practice: a framework is one piece, so a bar and each base connector touch. */
  @Test
  void aLingualBarKeepsItsHeightAndReachesEveryBase() {
    CastTeeth teeth =
        FindTeeth.of(
            OpenDemo.of(Jaw.LOWER, Watch.NONE),
            new WantedTeeth(
                Stream.of(35, 36, 37, 45, 46).map(ToothNumber::of).collect(Collectors.toSet()),
                null,
                List.of()),
            Watch.NONE);
    Plan plan =
        MakePlan.of(
                teeth,
                new JudgeAbutments.Wanted(
                    new WantedPath.AtTilt(Tilt.REFERENCE), new TreeSet<>(), null, Answers.NONE),
                Choices.NONE,
                BOOK,
                Watch.NONE)
            .plan();
    Part.MajorConnector bar = plan.majorConnector().orElseThrow();
    assertThat(bar.kind()).isEqualTo(Part.ConnectorKind.LINGUAL_BAR);
    assertThat(bar.leastWidthMm()).isGreaterThan(BOOK.plan().lower().barHeight().value() - 0.2);
    assertThat(plan.bases()).hasSize(2);
    for (Part.DentureBase base : plan.bases()) {
      assertThat(bar.outline().distanceMm(base.finishLine()))
          .as("bar to the base of %s", base.space().missing())
          .isLessThan(0.5);
    }
  }
}
