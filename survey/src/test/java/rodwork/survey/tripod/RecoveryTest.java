package rodwork.survey.tripod;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.registration.RigidMotion;

/** Truth: the motion applied to marks whose heights along the axis are equal by construction. */
class RecoveryTest {
  private static final long SEED = 17;
  private static final TripodRules RULES = TripodRules.SHIPPED;

  @Test
  void exactPicksGiveTheAxisBack() {
    Random random = new Random(SEED);
    for (int i = 0; i < 1000; i++) {
      Tripod kept = tripod(random);
      RigidMotion motion = motion(random);
      List<Vec3> picked =
          new ArrayList<>(kept.marks().stream().map(m -> motion.point(m.point())).toList());
      Collections.shuffle(picked, random);
      Recovery found = Recovery.of(kept, picked, RULES);
      assertThat(found.axis().angleDegTo(motion.direction(kept.axis())))
          .as("seed %s, try %s", SEED, i)
          .isLessThan(0.01);
      assertThat(found.disagreementMm()).isLessThan(1e-9);
    }
  }

  /**
   * Each mark is moved along its own plane, whose slope is the mark's and whose direction of slope
   * is any, by normal errors of 0.2 mm in both directions.
   */
  @Test
  void noisyPicksStayWithinTheBound95TimesIn100() {
    Random random = new Random(SEED);
    double sigma = RULES.picking().value();
    int within = 0;
    int tries = 0;
    int refused = 0;
    double tightness = 0;
    while (tries < 10_000) {
      Tripod kept = tripod(random);
      RigidMotion motion = motion(random);
      List<Vec3> picked = new ArrayList<>();
      for (TripodMark m : kept.marks()) {
        double s = Math.toRadians(m.slopeDeg());
        Vec3 away =
            RigidMotion.turn(kept.axis(), 2 * Math.PI * random.nextDouble())
                .direction(kept.axis().anyPerpendicular());
        Vec3 down = away.times(Math.cos(s)).minus(kept.axis().times(Math.sin(s)));
        Vec3 side = kept.axis().cross(away);
        picked.add(
            motion.point(
                m.point()
                    .plus(down.times(sigma * random.nextGaussian()))
                    .plus(side.times(sigma * random.nextGaussian()))));
      }
      Recovery found;
      try {
        found = Recovery.of(kept, picked, RULES);
      } catch (Refusal disagree) {
        refused++;
        assertThat(disagree.code()).isIn("tripod-distances-disagree", "tripod-ambiguous");
        continue;
      }
      tries++;
      double off = found.axis().angleDegTo(motion.direction(kept.axis()));
      tightness += off / found.boundDeg();
      if (off <= found.boundDeg()) {
        within++;
      }
    }
    assertThat(within).as("seed %s, of %s", SEED, tries).isGreaterThanOrEqualTo(9_500);
    // The bound is no idle one: the mean error is a third of it or more.
    assertThat(tightness / tries).isGreaterThan(0.3);
    assertThat(refused).as("picks refused with 0.2 mm noise").isLessThan(1_000);
  }

  @Test
  void anotherCastIsRefusedWithBothDistances() {
    Tripod kept = tripod(new Random(SEED));
    List<Vec3> picked =
        kept.marks().stream().map(TripodMark::point).map(p -> p.times(1.1)).toList();
    assertThatThrownBy(() -> Recovery.of(kept, picked, RULES))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("disagree")
        .hasMessageContaining("0.6 mm");
    assertThatThrownBy(() -> Recovery.of(kept, picked.subList(0, 2), RULES))
        .hasMessageContaining("2 were given");
  }

  @Test
  void likeDistancesPairInTwoWaysAndAreRefused() {
    List<TripodMark> marks =
        List.of(mark(new Vec3(0, 0, 3)), mark(new Vec3(40, 0, 3)), mark(new Vec3(20.1, 30, 3)));
    Tripod kept = new Tripod(Vec3.Z, 3, marks);
    assertThatThrownBy(
            () -> Recovery.of(kept, marks.stream().map(TripodMark::point).toList(), RULES))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("two ways");
  }

  private static TripodMark mark(Vec3 p) {
    return new TripodMark(p, 0, 45);
  }

  private static RigidMotion motion(Random random) {
    Vec3 axis = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    return RigidMotion.shift(new Vec3(random.nextGaussian() * 30, 5, -40))
        .after(RigidMotion.turn(axis, random.nextDouble() * Math.PI));
  }

  private static Tripod tripod(Random random) {
    Vec3 axis = new Vec3(0.2 * random.nextGaussian(), 0.2 * random.nextGaussian(), 1).unit();
    Vec3 e1 = axis.anyPerpendicular();
    Vec3 e2 = axis.cross(e1);
    double height = 10 * random.nextGaussian();
    while (true) {
      List<TripodMark> marks = new ArrayList<>();
      for (int k = 0; k < 3; k++) {
        Vec3 p =
            axis.times(height)
                .plus(e1.times(50 * random.nextDouble() - 25))
                .plus(e2.times(40 * random.nextDouble() - 20));
        marks.add(new TripodMark(p, 0, 20 + 50 * random.nextDouble()));
      }
      Tripod tripod = new Tripod(axis, height, marks);
      double[] d = tripod.distancesMm();
      if (tripod.leastDifferenceMm() >= RULES.differ().value()
          && Math.min(d[0], Math.min(d[1], d[2])) > 15
          && tripod.axisErrorDeg(0.2) < 3) {
        return tripod;
      }
    }
  }
}
