package rodwork.geometry.registration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;

class RigidMotionTest {
  private static final long SEED = 11;

  static RigidMotion random(Random random) {
    Vec3 axis = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    RigidMotion turn = RigidMotion.turn(axis, random.nextDouble() * Math.PI);
    Vec3 by = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    return RigidMotion.shift(by.times(30)).after(turn);
  }

  @Test
  void aQuarterTurnAboutUpTakesRightToFront() {
    Vec3 turned = RigidMotion.turn(Vec3.Z, Math.PI / 2).point(new Vec3(2, 0, 5));
    assertThat(turned.distance(new Vec3(0, 2, 5))).isLessThan(1e-12);
    assertThat(RigidMotion.turn(Vec3.Z, 0.3).angleDeg())
        .isCloseTo(Math.toDegrees(0.3), within(1e-9));
  }

  @Test
  void inverseAndProductAreWhatTheySay() {
    Random random = new Random(SEED);
    for (int i = 0; i < 1000; i++) {
      RigidMotion a = random(random);
      RigidMotion b = random(random);
      Vec3 p = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
      assertThat(b.after(a).point(p).distance(b.point(a.point(p))))
          .as("seed %s, try %s", SEED, i)
          .isLessThan(1e-9);
      assertThat(a.inverse().point(a.point(p)).distance(p)).isLessThan(1e-9);
    }
  }
}
