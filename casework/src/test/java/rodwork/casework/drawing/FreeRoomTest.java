package rodwork.casework.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

class FreeRoomTest {
  private static final double CELL_MM = 0.2;

  /**
   * Against every place there is, asked for its cost: 12 drawings with lines and fields in them.
   */
  @Test
  void theCheapestFreePlaceIsFound() {
    Random random = new Random(20261128);
    int found = 0;
    for (int round = 0; round < 12; round++) {
      FreeRoom room = new FreeRoom(5, 7, 30, 20);
      for (int i = 0; i < 12; i++) {
        double[] a = at(random);
        room.line(a, at(random));
        room.field(at(random), 3, 2);
      }
      double[] from = at(random);
      double[] hill = at(random);
      ToDoubleFunction<double[]> cost =
          p -> away(p, from) + (away(p, hill) < 4 ? 6 : 0) + (p[0] > 30 ? 1e9 : 0);
      double least = Double.POSITIVE_INFINITY;
      for (double x = 5 + 0.5 * CELL_MM; x < 35; x += 2 * CELL_MM) {
        for (double y = 7 + 0.5 * CELL_MM; y < 27; y += 2 * CELL_MM) {
          double[] p = {x, y};
          // A place is free where the search that may go nowhere else finds it.
          if (cost.applyAsDouble(p) < least
              && room.place(4, 2.5, p, q -> away(q, p) < 1e-6 ? 0 : Double.POSITIVE_INFINITY)
                  .isPresent()) {
            least = cost.applyAsDouble(p);
          }
        }
      }
      var place = room.place(4, 2.5, from, cost);
      assertThat(place.isPresent()).isEqualTo(Double.isFinite(least));
      if (place.isPresent()) {
        found++;
        assertThat(cost.applyAsDouble(place.get())).isCloseTo(least, within(1e-9));
      }
    }
    assertThat(found).isGreaterThan(6);
  }

  @Test
  void inAFullDrawingThereIsNone() {
    FreeRoom room = new FreeRoom(0, 0, 10, 10);
    room.field(new double[] {5, 5}, 10, 10);
    assertThat(room.place(2, 2, new double[] {5, 5}, p -> away(p, new double[] {5, 5}))).isEmpty();
  }

  private static double[] at(Random random) {
    return new double[] {5 + 30 * random.nextDouble(), 7 + 20 * random.nextDouble()};
  }

  private static double away(double[] a, double[] b) {
    return Math.hypot(a[0] - b[0], a[1] - b[1]);
  }
}
