package rodwork.survey.standoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rodwork.anatomy.AnatomicSurface;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.Reshape;
import rodwork.rules.Reading;
import rodwork.rules.Standing;
import rodwork.rules.Threshold;
import rodwork.survey.Gauges;
import rodwork.survey.Survey;
import rodwork.survey.SurveyRules;
import rodwork.survey.Surveyor;

/**
 * A tooth on a gum as a prism of known outline: margin at (1.2, 0), the tooth bulging to x = 2
 * above it, the gum to x = 1.8 at 2 mm down, back to x = 0.9 at 4.5 mm, and a floor 8 mm down.
 */
class StandOffTest {
  private static final StandOffRules RULES =
      StandOffRules.from(
          (id, unit) ->
              new Threshold(
                  id,
                  switch (id) {
                    case "stand-off-near" -> 3;
                    case "stand-off-far" -> 6;
                    case "vestibule-floor-rise" -> 1;
                    case "shallow-undercut" -> 0.05;
                    default -> 0.03;
                  },
                  unit,
                  "a test",
                  Standing.OWN_CHOICE));

  private static TriangleMesh cast(double bulge, double floor) {
    double[][] outline = {
      {-4, -12},
      {6, -12},
      {6, floor + 3},
      {4.5, floor + 3},
      {3, floor},
      {1.5, floor},
      {0.9, -4.5},
      {1.8, -2},
      {1.2, 0},
      {bulge, 4},
      {1, 7},
      {-4, 7}
    };
    return Bodies.prism(outline, -4, 4, 0.4);
  }

  private static StandOff measure(TriangleMesh mesh) {
    Survey survey =
        Surveyor.of(MeshTopology.of(mesh), AnatomicSurface.whole(mesh), null, SurveyRules.SHIPPED)
            .survey(Vec3.Z, Gauges.COMMON, Watch.NONE);
    SurfacePoint margin = TriangleTree.of(mesh).closest(new Vec3(1.2, 0.07, 0)).orElseThrow();
    return StandOff.of(survey, margin.point(), margin.triangle(), new Vec3(1, 0, 0.4), RULES);
  }

  private static double value(Reading reading) {
    return ((Reading.Measured) reading).value();
  }

  @Test
  void readingsAreThoseOfTheOutline() {
    StandOff got = measure(cast(2, -8));
    // Lengths along the outline: 2.088 mm to the bulge of the gum, 4.745 to its hollow.
    assertThat(value(got.near().total())).isCloseTo(2 - 1.4911, within(0.01));
    assertThat(value(got.near().tissue())).isCloseTo(1.8 - 1.4911, within(0.01));
    assertThat(value(got.near().mostTotal())).isCloseTo(0.8, within(0.01));
    assertThat(value(got.near().drop())).isCloseTo(2.858, within(0.01));
    assertThat(value(got.far().total())).isCloseTo(2 - 1.1120, within(0.01));
    assertThat(value(got.far().mostTotal())).isCloseTo(1.1, within(0.01));
    assertThat(value(got.far().tissue())).isCloseTo(1.8 - 1.1120, within(0.01));
    assertThat(value(got.far().mostTissue())).isCloseTo(0.9, within(0.01));
    assertThat(value(got.vestibuleDepth())).isCloseTo(8, within(0.01));
    assertThat(value(got.tissueStart())).isCloseTo(2.236, within(0.1));
  }

  /** A tooth that bulges more changes the total alone. */
  @Test
  void theToothCountsInTheTotalOnly() {
    StandOff less = measure(cast(2, -8));
    StandOff more = measure(cast(2.6, -8));
    assertThat(value(more.far().total()) - value(less.far().total())).isCloseTo(0.6, within(0.01));
    assertThat(value(more.far().tissue())).isCloseTo(value(less.far().tissue()), within(1e-6));
  }

  @Test
  void aShallowVestibuleHasNoRoom() {
    StandOff got = measure(cast(2, -5.2));
    assertThat(value(got.vestibuleDepth())).isCloseTo(5.2, within(0.01));
    assertThat(got.near().total()).isInstanceOf(Reading.Measured.class);
    assertThat(got.far().total()).isInstanceOf(Reading.NoRoom.class);
    assertThat(got.far().place()).isEmpty();
  }

  /**
   * The free gingiva rolls up by half a millimetre beside the margin: no floor of the vestibule.
   */
  @Test
  void theRollOfTheGumIsNoFloor() {
    double[][] outline = {
      {-4, -12},
      {6, -12},
      {6, -5},
      {4.5, -5},
      {3, -8},
      {1.5, -8},
      {0.9, -4.5},
      {1.8, -2},
      {1.6, 0.5},
      {1.2, 0},
      {2, 4},
      {1, 7},
      {-4, 7}
    };
    StandOff got = measure(Bodies.prism(outline, -4, 4, 0.4));
    assertThat(value(got.vestibuleDepth())).isCloseTo(8, within(0.01));
    assertThat(value(got.far().mostTotal())).isCloseTo(1.1, within(0.02));
  }

  @Test
  void whatTheScanDoesNotHoldIsNotKnown() {
    StandOff got = measure(Reshape.above(cast(2, -8), -4));
    assertThat(got.near().total()).isInstanceOf(Reading.Measured.class);
    assertThat(got.far().total()).isInstanceOf(Reading.NotKnown.class);
    assertThat(got.far().tissue().words()).contains("not captured");
    assertThat(got.vestibuleDepth()).isInstanceOf(Reading.AtLeast.class);
    assertThat(((Reading.AtLeast) got.vestibuleDepth()).value()).isBetween(3.2, 4.1);
  }

  @Test
  void aGumWithoutUndercutNeverStarts() {
    double[][] outline = {
      {-4, -12}, {6, -12}, {6, -5}, {5.5, -5}, {4, -9}, {3, -9}, {1.2, 0}, {2, 4}, {1, 7}, {-4, 7}
    };
    StandOff got = measure(Bodies.prism(outline, -4, 4, 0.4));
    assertThat(got.tissueStart()).isInstanceOf(Reading.AtLeast.class);
    assertThat(value(got.far().tissue())).isZero();
    assertThat(value(got.far().total())).isZero();
    // 0.8 mm at the margin under the bulge of the tooth.
    assertThat(value(got.far().mostTotal())).isCloseTo(0.8, within(0.02));
  }
}
