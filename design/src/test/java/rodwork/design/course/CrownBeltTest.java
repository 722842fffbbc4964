package rodwork.design.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.Arch;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.survey.testing.BallTooth;

/** Truth: a ball that stands over a level gum, read in half planes through its middle. */
class CrownBeltTest {
  private static final Arch ARCH = BallTooth.arch();
  private static final Tooth TOOTH = BallTooth.dentition(ARCH).tooth(44).orElseThrow();
  private static final CrownBelt BELT = new CrownBelt(ARCH.mesh(), TOOTH, Vec3.Z);

  @Test
  void theSurveyLineOfABallIsItsEquator() {
    for (int deg = 0; deg < 360; deg += 15) {
      CrownBelt.Outline outline = Objects.requireNonNull(BELT.at(deg));
      assertThat(outline.low()).isCloseTo(0, within(0.1));
      assertThat(outline.contour()).isCloseTo(BallTooth.RISE, within(0.1));
      assertThat(outline.radiusMm()).isCloseTo(BallTooth.RADIUS, within(0.06));
      for (double h : new double[] {0.5, 1.5, 2.5, 4, 5.5}) {
        double radius = Math.sqrt(Math.pow(BallTooth.RADIUS, 2) - Math.pow(h - BallTooth.RISE, 2));
        assertThat(outline.radius(h)).as("%d°, %s mm up", deg, h).isCloseTo(radius, within(0.08));
      }
    }
  }

  @Test
  void anglesRunFromMesialOverFacialToLingual() {
    for (Surface face :
        new Surface[] {Surface.MESIAL, Surface.FACIAL, Surface.DISTAL, Surface.LINGUAL}) {
      Vec3 out = TOOTH.axes().origin().plus(TOOTH.axes().outOf(face).times(4));
      double off = Math.abs(BELT.angleDeg(out) - CrownBelt.middleDeg(face));
      assertThat(Math.min(off, 360 - off)).as(face.toString()).isLessThan(8);
    }
    Vec3 point = BELT.point(75, 4, 2);
    assertThat(BELT.angleDeg(point)).isCloseTo(75, within(1e-9));
    assertThat(BELT.height(point)).isCloseTo(2, within(1e-9));
  }
}
