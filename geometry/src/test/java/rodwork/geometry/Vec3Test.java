package rodwork.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class Vec3Test {
  @Test
  void crossOfXAndYIsZ() {
    assertThat(Vec3.X.cross(Vec3.Y)).isEqualTo(Vec3.Z);
  }

  @Test
  void smallAnglesKeepTheirDigits() {
    Vec3 tilted = new Vec3(1e-9, 0, 1);
    assertThat(Math.toRadians(Vec3.Z.angleDegTo(tilted))).isCloseTo(1e-9, within(1e-15));
  }

  @Test
  void noDirectionInNothing() {
    assertThatThrownBy(Vec3.ZERO::unit).isInstanceOf(IllegalArgumentException.class);
  }
}
