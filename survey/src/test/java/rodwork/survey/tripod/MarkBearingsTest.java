package rodwork.survey.tripod;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.geometry.Vec3;

/** Truth: two circles in a plane, and dividers that err at random. */
class MarkBearingsTest {
  private static final long SEED = 41;
  private static final double PICKING_MM = 0.2;

  private static Landmark at(double x, double y, double z) {
    return new Landmark(
        Landmark.Kind.CUSP, ToothNumber.of(13), Optional.empty(), new Vec3(x, y, z));
  }

  private static Optional<MarkBearings> of(Vec3 point, Landmark... landmarks) {
    TripodMark mark = new TripodMark(point, 0, 40);
    return MarkBearings.of(mark, Vec3.Z, List.of(landmarks), PICKING_MM);
  }

  @Test
  void distancesAreStraightAndTheNearerComesFirst() {
    MarkBearings found = of(Vec3.ZERO, at(0, 12, 5), at(3, 0, 4)).orElseThrow();
    assertThat(found.first().distanceMm()).isCloseTo(5, within(1e-12));
    assertThat(found.second().distanceMm()).isCloseTo(13, within(1e-12));
  }

  @Test
  void theErrorIsWhatErringDividersGive() {
    Random random = new Random(SEED);
    Vec3[][] cases = {
      {new Vec3(10, 0, 0), new Vec3(0, 12, 0)},
      {new Vec3(10, 3, 0), new Vec3(11, -9, 0)},
      {new Vec3(-14, 5, 0), new Vec3(2, 8, 0)}
    };
    for (Vec3[] c : cases) {
      MarkBearings found =
          of(Vec3.ZERO, at(c[0].x(), c[0].y(), 0), at(c[1].x(), c[1].y(), 0)).orElseThrow();
      Vec3 a = found.first().landmark().point();
      Vec3 b = found.second().landmark().point();
      double sum = 0;
      int tries = 20_000;
      for (int i = 0; i < tries; i++) {
        double ra = found.first().distanceMm() + PICKING_MM * random.nextGaussian();
        double rb = found.second().distanceMm() + PICKING_MM * random.nextGaussian();
        sum += Math.pow(crossing(a, ra, b, rb).length(), 2);
      }
      assertThat(found.errorMm())
          .as("seed %s, landmarks %s and %s", SEED, a, b)
          .isCloseTo(Math.sqrt(sum / tries), within(0.1 * found.errorMm()));
    }
  }

  /** The crossing of two circles in the plane z = 0 that lies nearer to the origin. */
  private static Vec3 crossing(Vec3 a, double ra, Vec3 b, double rb) {
    Vec3 way = b.minus(a);
    double d = way.length();
    double along = (ra * ra - rb * rb + d * d) / (2 * d);
    double aside = Math.sqrt(Math.max(0, ra * ra - along * along));
    Vec3 foot = a.plus(way.times(along / d));
    Vec3 across = Vec3.Z.cross(way).times(aside / d);
    Vec3 one = foot.plus(across);
    Vec3 two = foot.minus(across);
    return one.length() < two.length() ? one : two;
  }

  @Test
  void landmarksAtARightAngleArePreferredToTwoInOneDirection() {
    MarkBearings found = of(Vec3.ZERO, at(8, 0, 0), at(9, 2.5, 0), at(0, 11, 0)).orElseThrow();
    assertThat(found.first().landmark().point()).isEqualTo(new Vec3(8, 0, 0));
    assertThat(found.second().landmark().point()).isEqualTo(new Vec3(0, 11, 0));
    assertThat(found.errorMm()).isCloseTo(PICKING_MM * Math.sqrt(2), within(1e-12));
  }

  @Test
  void whereTwoDistancesAllowASecondPlaceNearByThereAreNone() {
    // The mark lies 1 mm beside the line through both: the mirrored place is 2 mm away.
    assertThat(of(Vec3.ZERO, at(-8, 1, 0), at(9, 1, 0))).isEmpty();
    assertThat(of(Vec3.ZERO, at(-8, 2.5, 0), at(9, 2.5, 0))).isPresent();
    // Too near and too far for dividers.
    assertThat(of(Vec3.ZERO, at(2, 0, 0), at(0, 70, 0), at(0, 10, 0))).isEmpty();
  }

  @Test
  void aLandmarkStraightAboveTellsNothingOfThePlace() {
    // Seen along the normal it lies over the mark: its distance does not change on the surface.
    Optional<MarkBearings> found = of(Vec3.ZERO, at(0.01, 0, 9), at(8, 1, 0), at(1, 9, 0));
    assertThat(found.orElseThrow().both()).noneMatch(bearing -> bearing.landmark().point().z() > 1);
  }
}
