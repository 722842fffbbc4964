package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Vec3;

class PolygonTest {
  private final Budget budget = Budget.ofHeap("test");
  private final Polygon polygon = new Polygon();

  private int[] cut(double... xyz) {
    Doubles points = new Doubles(budget, 0);
    Ints ids = new Ints(budget, 0);
    Ints out = new Ints(budget, 0);
    for (int i = 0; i < xyz.length; i += 3) {
      points.add(xyz[i], xyz[i + 1], xyz[i + 2]);
      ids.add(i / 3);
    }
    polygon.cut(ids, 0, xyz.length / 3, points, out);
    return out.finish();
  }

  @Test
  void aConvexPolygonIsAFan() {
    assertThat(cut(0, 0, 0, 2, 0, 0, 3, 2, 0, 1, 3, 0, -1, 2, 0))
        .containsExactly(0, 1, 2, 0, 2, 3, 0, 3, 4);
  }

  @Test
  void aHollowPolygonIsCutInsideItself() {
    double[] hollow = {0, 0, 5, 4, 0, 5, 4, 4, 5, 2, 1, 5, 0, 4, 5};
    assertThat(areas(hollow, cut(hollow))).containsOnly(1).hasSize(3);
    double[] comb = {
      0, 0, 0, 6, 0, 0, 6, 5, 0, 5, 1, 0, 4, 5, 0, 3, 1, 0, 2, 5, 0, 1, 1, 0, 0, 5, 0
    };
    int[] signs = areas(comb, cut(comb));
    assertThat(signs).containsOnly(1).hasSize(7);
    assertThat(polygon.crossed()).isFalse();
  }

  @Test
  void cornersOnAStraightSideMakeNoEmptyTriangle() {
    double[] square = {0, 0, 0, 1, 0, 0, 2, 0, 0, 2, 2, 0, 0, 2, 0, 0, 1, 0};
    assertThat(areas(square, cut(square))).containsOnly(1).hasSize(4);
  }

  @Test
  void windingIsKeptInAnyPlane() {
    double[] xy = {0, 0, 4, 0, 4, 4, 2, 1, 0, 4};
    Random random = new Random(5);
    for (int trial = 0; trial < 200; trial++) {
      Vec3 n = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
      Vec3 u = n.anyPerpendicular();
      Vec3 v = n.cross(u);
      double[] xyz = new double[15];
      for (int i = 0; i < 5; i++) {
        Vec3 p = u.times(xy[2 * i]).plus(v.times(xy[2 * i + 1])).plus(n.times(7));
        xyz[3 * i] = p.x();
        xyz[3 * i + 1] = p.y();
        xyz[3 * i + 2] = p.z();
      }
      int[] cut = cut(xyz);
      Vec3 sum = Vec3.ZERO;
      for (int t = 0; t < cut.length; t += 3) {
        Vec3 area = area(xyz, cut, t);
        assertThat(area.dot(n)).as("seed 5, trial " + trial).isPositive();
        sum = sum.plus(area);
      }
      assertThat(sum.dot(n)).isCloseTo(2 * (16 - 6), within(1e-9));
    }
  }

  @Test
  void randomStarsKeepTheirArea() {
    Random random = new Random(11);
    for (int trial = 0; trial < 300; trial++) {
      int n = 4 + random.nextInt(60);
      double[] xyz = new double[3 * n];
      double twice = 0;
      for (int i = 0; i < n; i++) {
        double r = 1 + 9 * random.nextDouble();
        xyz[3 * i] = r * Math.cos(2 * Math.PI * i / n);
        xyz[3 * i + 1] = r * Math.sin(2 * Math.PI * i / n);
      }
      for (int i = 0, j = n - 1; i < n; j = i++) {
        twice += xyz[3 * j] * xyz[3 * i + 1] - xyz[3 * j + 1] * xyz[3 * i];
      }
      int[] cut = cut(xyz);
      assertThat(cut).hasSize(3 * (n - 2));
      double sum = 0;
      for (int t = 0; t < cut.length; t += 3) {
        double z = area(xyz, cut, t).z();
        assertThat(z).as("seed 11, trial " + trial).isGreaterThanOrEqualTo(0);
        sum += z;
      }
      assertThat(sum).isCloseTo(twice, within(1e-9 * twice));
    }
  }

  @Test
  void aPolygonThatCrossesItselfIsToldAndEndsSoon() {
    Random random = new Random(1);
    double[] tangle = new double[3 * Polygon.MAX_CORNERS];
    for (int i = 0; i < Polygon.MAX_CORNERS; i++) {
      tangle[3 * i] = random.nextDouble();
      tangle[3 * i + 1] = random.nextDouble();
    }
    assertThat(cut(tangle)).hasSize(3 * (Polygon.MAX_CORNERS - 2));
    assertThat(polygon.crossed()).as("seed 1").isTrue();
  }

  @Test
  void polygonsWithoutARightAnswerStillBecomeTriangles() {
    assertThat(cut(0, 0, 0, 1, 0, 0, 0, 1, 0, 1, 1, 0)).hasSize(6);
    double[] star = new double[15];
    for (int i = 0; i < 5; i++) {
      star[3 * i] = Math.cos(4 * Math.PI * i / 5);
      star[3 * i + 1] = Math.sin(4 * Math.PI * i / 5);
    }
    assertThat(cut(star)).hasSize(9);
    assertThat(cut(new double[15])).as("all corners at one place").hasSize(9);
    assertThat(cut(0, 0, 0, Double.NaN, 0, 0, 1, 1, 0, 0, 1, 0)).hasSize(6);
  }

  private static int[] areas(double[] xyz, int[] cut) {
    int[] signs = new int[cut.length / 3];
    for (int t = 0; t < cut.length; t += 3) {
      signs[t / 3] = (int) Math.signum(area(xyz, cut, t).z());
    }
    return signs;
  }

  /** Normal of a triangle, twice its area long. */
  private static Vec3 area(double[] xyz, int[] cut, int t) {
    Vec3 a = at(xyz, cut[t]);
    return at(xyz, cut[t + 1]).minus(a).cross(at(xyz, cut[t + 2]).minus(a));
  }

  private static Vec3 at(double[] xyz, int v) {
    return new Vec3(xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2]);
  }
}
