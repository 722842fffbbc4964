package rodwork.geometry.registration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;

/** Truth: the motion that was applied; and, with noise, that no small change fits better. */
class MatchedPointsTest {
  private static final long SEED = 5;

  @Test
  void anAppliedMotionComesBack() {
    Random random = new Random(SEED);
    for (int i = 0; i < 500; i++) {
      RigidMotion motion = RigidMotionTest.random(random);
      List<Vec3> from = cloud(random, 3 + i % 8);
      List<Vec3> to = from.stream().map(motion::point).toList();
      RigidMotion found = MatchedPoints.fit(from, to);
      for (Vec3 p : from) {
        assertThat(found.point(p).distance(motion.point(p)))
            .as("seed %s, try %s", SEED, i)
            .isLessThan(1e-8);
      }
    }
  }

  @Test
  void withNoiseNoSmallChangeFitsBetter() {
    Random random = new Random(SEED);
    for (int i = 0; i < 100; i++) {
      List<Vec3> from = cloud(random, 6);
      RigidMotion motion = RigidMotionTest.random(random);
      List<Vec3> to = new ArrayList<>();
      for (Vec3 p : from) {
        to.add(
            motion
                .point(p)
                .plus(
                    new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian())));
      }
      RigidMotion found = MatchedPoints.fit(from, to);
      double best = squares(found, from, to);
      for (Vec3 axis : List.of(Vec3.X, Vec3.Y, Vec3.Z)) {
        for (double s : new double[] {-1e-3, 1e-3}) {
          assertThat(squares(RigidMotion.turn(axis, s).after(found), from, to))
              .as("seed %s, try %s", SEED, i)
              .isGreaterThan(best);
          assertThat(squares(RigidMotion.shift(axis.times(s)).after(found), from, to))
              .isGreaterThan(best);
        }
      }
    }
  }

  @Test
  void twoPointsAreTooFew() {
    assertThatThrownBy(() -> MatchedPoints.fit(List.of(Vec3.X, Vec3.Y), List.of(Vec3.X, Vec3.Y)))
        .hasMessageContaining("three or more");
  }

  private static List<Vec3> cloud(Random random, int n) {
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      points.add(
          new Vec3(
              20 * random.nextGaussian(), 20 * random.nextGaussian(), 5 * random.nextGaussian()));
    }
    return points;
  }

  private static double squares(RigidMotion m, List<Vec3> from, List<Vec3> to) {
    double sum = 0;
    for (int i = 0; i < from.size(); i++) {
      double d = m.point(from.get(i)).distance(to.get(i));
      sum += d * d;
    }
    return sum;
  }
}
