package rodwork.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.testing.Bodies;

/** Areas, volumes and deepest places against closed forms of the sphere and the step. */
class SurveyFiguresTest {
  /**
   * On a sphere u exceeds 0.05 mm where ρ &lt; R − 0.05 below the equator: a cap of height R − √(R²
   * − (R − 0.05)²), area 2πR times that. The space below it down to its lowest point is a cylinder
   * less half a ball: πR³/3.
   */
  @Test
  void sphere() {
    double r = 3.5;
    SurveyFigures figures = Surveys.of(Bodies.sphere(r, 0.2), Vec3.Z).figures(Watch.NONE);
    double height = r - Math.sqrt(r * r - (r - 0.05) * (r - 0.05));
    assertThat(figures.areaMm2())
        .isCloseTo(2 * Math.PI * r * height, within(0.01 * 2 * Math.PI * r * height));
    assertThat(figures.volumeMm3())
        .isCloseTo(Math.PI * r * r * r / 3, within(0.02 * Math.PI * r * r * r / 3));
    assertThat(figures.deepest().getFirst().depthMm()).isCloseTo(r, within(0.02));
  }

  /** Under a ledge: reach × clearance × width, to the floor. */
  @Test
  void spaceUnderALedge() {
    SurveyFigures figures = Surveys.of(Bodies.step(3, 4, 0.4), Vec3.Z).figures(Watch.NONE);
    double under = 3 * 4 * 16;
    // The plate's own underside hangs over nothing: its border is its own level, so it adds none.
    assertThat(figures.volumeMm3()).isCloseTo(under, within(0.03 * under));
  }
}
