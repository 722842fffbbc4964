package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class WelderTest {
  /** Truth: a hash map of the three numbers. */
  @Test
  void numbersPlacesAsAMapDoes() {
    Budget budget = Budget.ofHeap("test");
    Doubles xyz = new Doubles(budget, 0);
    Welder welder = new Welder(budget, xyz, 0);
    Map<List<Double>, Integer> known = new HashMap<>();
    Random random = new Random(17);
    for (int i = 0; i < 300_000; i++) {
      double x = (float) (random.nextInt(60) * 0.1);
      double y = random.nextInt(60);
      double z = (float) (random.nextInt(60) * 1e-3);
      int expected = known.computeIfAbsent(List.of(x, y, z), place -> known.size());
      if (welder.vertex(x, y, z) != expected) {
        fail("seed 17: " + x + " " + y + " " + z + " is not number " + expected);
      }
    }
    assertThat(known).hasSizeGreaterThan(100_000);
    assertThat(xyz.size()).isEqualTo(3 * known.size());
  }

  @Test
  void minusZeroIsZero() {
    Budget budget = Budget.ofHeap("test");
    Doubles xyz = new Doubles(budget, 0);
    Welder welder = new Welder(budget, xyz, 0);
    assertThat(welder.vertex(-0.0, 0.0, -0.0)).isEqualTo(welder.vertex(0, -0.0, 0));
    assertThat(Double.doubleToRawLongBits(xyz.get(0))).isZero();
    assertThat(welder.vertex(Double.NaN, 0, 0)).isEqualTo(welder.vertex(Double.NaN, 0, 0));
  }
}
