package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rodwork.geometry.Watch;

class BudgetTest {
  @Test
  void arraysBeyondTheLimitAreRefusedBeforeTheyAreMade() {
    Budget budget = new Budget("scan.stl", 1_000_000);
    Ints list = new Ints(budget, 0);
    Refused.with(
        IoProblem.TOO_LARGE,
        () -> {
          for (int i = 0; i < 1_000_000; i++) {
            list.add(i);
          }
        });
    assertThat(list.size()).isBetween(50_000, 250_000);
  }

  @Test
  void aReadingStaysWithinItsBudget() {
    Input in = new Input("scan.stl", new EndlessStl(), -1, Watch.NONE);
    Refused.with(
        IoProblem.TOO_LARGE, () -> StlBinaryReader.read(in, new Budget("scan.stl", 20L << 20)));
  }

  /** A binary STL without end, its corners all different. */
  private static final class EndlessStl extends java.io.InputStream {
    private long at;

    @Override
    public int read() {
      long n = at++;
      return (int) ((n * 0x9E3779B97F4A7C15L) >>> 58); // small exponents: finite floats
    }

    @Override
    public int read(byte[] into, int from, int length) {
      for (int i = 0; i < length; i++) {
        into[from + i] = (byte) read();
      }
      return length;
    }
  }
}
