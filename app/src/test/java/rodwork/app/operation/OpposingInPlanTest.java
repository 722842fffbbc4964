package rodwork.app.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.occlusion.Clearance;
import rodwork.casework.rulebook.Rulebook;
import rodwork.design.abutment.Abutment;
import rodwork.design.abutment.Answers;
import rodwork.design.clasp.Fact;
import rodwork.design.plan.Choices;
import rodwork.design.plan.Part;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.registration.RigidMotion;
import rodwork.rules.Finding;
import rodwork.rules.Reading;
import rodwork.rules.Verdict;
import rodwork.survey.Tilt;

/**
 * Rules of a plan that ask for the room to the opposing teeth. Truth: level planes over the lower
 * demo cast, the room to which is a difference of heights.
 */
class OpposingInPlanTest {
  private static final Rulebook BOOK = Rulebook.shipped();
  private static final double CLEARANCE_MM = BOOK.plan().rests().clearance().value();

  /** Two scans, each as exact as the rulebook says. */
  private static final double KNOWN_TO_MM = Math.sqrt(2) * BOOK.survey().scanAccuracy().value();

  private static final CastTeeth TEETH =
      FindTeeth.of(
          OpenDemo.of(Jaw.LOWER, Watch.NONE),
          new WantedTeeth(
              Stream.of(35, 36, 37, 45, 46).map(ToothNumber::of).collect(Collectors.toSet()),
              null,
              List.of()),
          Watch.NONE);
  private static final ArchFrame FRAME = TEETH.arch().frame();
  private static final Chart CHART = TEETH.dentition().chart();

  private static double height(Vec3 p) {
    return p.minus(FRAME.origin()).dot(FRAME.z());
  }

  /** A level plane over all of the cast, or over one side of it. */
  private static OpposingScan plane(double height, double fromX) {
    double[] xyz = new double[12];
    for (int k = 0; k < 4; k++) {
      Vec3 p =
          FRAME
              .origin()
              .plus(FRAME.x().times(k == 0 || k == 3 ? fromX : 100))
              .plus(FRAME.y().times(k < 2 ? -100 : 100))
              .plus(FRAME.z().times(height));
      xyz[3 * k] = p.x();
      xyz[3 * k + 1] = p.y();
      xyz[3 * k + 2] = p.z();
    }
    TriangleMesh mesh = TriangleMesh.of(xyz, new int[] {0, 1, 2, 0, 2, 3});
    return new OpposingScan("a plane", null, Clearance.of(TEETH.arch(), mesh, RigidMotion.NONE), 1);
  }

  private static MakePlan.Planned plan(@Nullable OpposingScan opposing, Chart chart) {
    return MakePlan.of(
        TEETH,
        new JudgeAbutments.Wanted(
                new WantedPath.AtTilt(Tilt.REFERENCE), new TreeSet<>(), chart, Answers.NONE)
            .with(opposing),
        Choices.NONE,
        BOOK,
        Watch.NONE);
  }

  private static List<Finding> asked(MakePlan.Planned planned, String what) {
    return planned.plan().findings().stream().filter(f -> f.what().startsWith(what)).toList();
  }

  private static double value(Finding finding) {
    assertThat(finding.reading()).isInstanceOf(Reading.Measured.class);
    return ((Reading.Measured) finding.reading()).value();
  }

  private static Finding overSeat(MakePlan.Planned planned, Part.Rest rest) {
    Vec3 at = rest.middle();
    return asked(planned, "room to the opposing tooth over the seat").stream()
        .filter(
            f -> {
              var spot = f.place().spot().orElseThrow();
              return new Vec3(spot.x(), spot.y(), spot.z()).distance(at) < 1e-9;
            })
        .findFirst()
        .orElseThrow();
  }

  @Test
  void withoutAScanAndAWordNothingIsKnown() {
    MakePlan.Planned planned = plan(null, CHART);
    assertThat(planned.plan().rests()).hasSizeGreaterThan(3);
    for (Part.Rest rest : planned.plan().rests()) {
      assertThat(overSeat(planned, rest).reading().words())
          .contains("no opposing scan, and the chart does not say");
    }
    assertThat(asked(planned, "room to the opposing teeth over")).isEmpty();
  }

  @Test
  void aLaidScanTellsTheRoomOverSeatsArmsCrossingsAndBases() {
    double high = height(TEETH.dentition().tooth(34).orElseThrow().centroid()) + 12;
    MakePlan.Planned planned = plan(plane(high, -100), CHART);
    assertThat(planned.plan().rests()).hasSizeGreaterThan(3);
    assertThat(planned.plan().bases()).isNotEmpty();
    assertThat(planned.plan().minorConnectors()).isNotEmpty();
    assertThat(planned.plan().clasps()).anyMatch(c -> c.course().isPresent());
    for (Part.Rest rest : planned.plan().rests()) {
      Finding finding = overSeat(planned, rest);
      // The floor lies no deeper than the seat under its highest place, and no less than half way.
      double over =
          high
              - Stream.concat(rest.outline().points().stream(), Stream.of(rest.middle()))
                  .mapToDouble(OpposingInPlanTest::height)
                  .max()
                  .orElseThrow();
      double lowest =
          high
              - Stream.concat(rest.outline().points().stream(), Stream.of(rest.middle()))
                  .mapToDouble(OpposingInPlanTest::height)
                  .min()
                  .orElseThrow();
      assertThat(value(finding))
          .as("over the seat of %s", rest.tooth())
          .isBetween(over, lowest + rest.depthMm());
      assertThat(((Reading.Measured) finding.reading()).uncertainty())
          .isCloseTo(KNOWN_TO_MM, within(1e-9));
      assertThat(finding.verdict()).isEqualTo(Verdict.MET);
    }
    List<Finding> bases = asked(planned, "space from the ridge");
    assertThat(bases).hasSameSizeAs(planned.plan().bases());
    for (int i = 0; i < bases.size(); i++) {
      double crest =
          planned.plan().bases().get(i).space().crest().stream()
              .mapToDouble(OpposingInPlanTest::height)
              .max()
              .orElseThrow();
      assertThat(value(bases.get(i))).isCloseTo(high - crest, within(1e-6));
    }
    assertThat(asked(planned, "room to the opposing teeth over the arms"))
        .allSatisfy(f -> assertThat(f.rule()).isEqualTo("arm-clearance-least"))
        .hasSize(
            (int) planned.plan().clasps().stream().filter(c -> c.course().isPresent()).count());
    List<Finding> crossings = asked(planned, "room to the opposing teeth over the minor");
    assertThat(crossings).hasSameSizeAs(planned.plan().minorConnectors());
    for (int i = 0; i < crossings.size(); i++) {
      double top =
          planned.plan().minorConnectors().get(i).line().points().stream()
              .mapToDouble(OpposingInPlanTest::height)
              .max()
              .orElseThrow();
      assertThat(value(crossings.get(i))).isCloseTo(high - top, within(1e-6));
    }
  }

  @Test
  void aBiteThatReachesIntoTheSeatBreaksTheRuleAndTakesTheRestAway() {
    Part.Rest rest =
        plan(null, CHART).plan().rests().stream()
            .filter(r -> r.kind() == Part.RestKind.OCCLUSAL)
            .findFirst()
            .orElseThrow();
    // Deep enough that even the cut seat keeps less than the rule wants.
    double low = height(rest.middle()) - rest.depthMm() + CLEARANCE_MM - 0.2;
    MakePlan.Planned planned = plan(plane(low, -100), CHART);
    assertThat(planned.judged().abutments()).isNotEmpty();
    planned.plan().rests().stream()
        .filter(r -> r.tooth().equals(rest.tooth()) && r.side() == rest.side())
        .forEach(r -> assertThat(overSeat(planned, r).verdict()).isEqualTo(Verdict.NOT_MET));
    Abutment abutment =
        planned.judged().abutments().stream()
            .filter(a -> a.tooth().number().equals(rest.tooth()))
            .findFirst()
            .orElseThrow();
    Fact fact = rest.side() == abutment.side() ? Fact.NEAR_REST : Fact.FAR_REST;
    assertThat(abutment.judgement().facts().reading(fact)).isEqualTo(Reading.yes(false));
    assertThat(abutment.judgement().facts().reading(Fact.OCCLUSAL_ROOM))
        .isInstanceOf(Reading.Measured.class);
  }

  @Test
  void theChartsOwnWordGoesBefore() {
    ToothNumber tooth = plan(null, CHART).plan().rests().getFirst().tooth();
    Chart said =
        CHART.change(
            tooth,
            e ->
                new ToothEntry(
                    e.presence(),
                    e.replace(),
                    e.spaceClosed(),
                    e.abutment(),
                    e.mobility(),
                    e.crownToRoot(),
                    e.restoration(),
                    e.aestheticZone(),
                    new ToothEntry.Opposing(
                        ToothEntry.Opposing.Kind.TOOTH, Answer.NO, OptionalDouble.of(4))));
    double high = height(TEETH.dentition().tooth(34).orElseThrow().centroid()) + 15;
    MakePlan.Planned planned = plan(plane(high, -100), said);
    assertThat(planned.plan().rests())
        .anyMatch(rest -> rest.tooth().equals(tooth))
        .anyMatch(rest -> !rest.tooth().equals(tooth));
    for (Part.Rest rest : planned.plan().rests()) {
      double value = value(overSeat(planned, rest));
      if (rest.tooth().equals(tooth)) {
        assertThat(value).isCloseTo(4 + rest.depthMm(), within(1e-9));
      } else {
        assertThat(value).isGreaterThan(8);
      }
    }
  }

  @Test
  void beyondTheScanTheRoomIsNotKnown() {
    double high = height(TEETH.dentition().tooth(34).orElseThrow().centroid()) + 12;
    MakePlan.Planned planned = plan(plane(high, 0), CHART);
    for (Part.Rest rest : planned.plan().rests()) {
      double x = rest.middle().minus(FRAME.origin()).dot(FRAME.x());
      Finding finding = overSeat(planned, rest);
      if (x > 3) {
        assertThat(finding.verdict()).isEqualTo(Verdict.MET);
      } else if (x < -3) {
        assertThat(finding.reading().words()).contains("does not lie over this place");
      }
    }
  }
}
