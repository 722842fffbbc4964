package rodwork.design.load;

import java.util.SplittableRandom;

/**
 * Draws of what is unknown, by its name: a Latin hypercube. The range of each unknown is cut into
 * as many equal parts as there are draws and each part is met once, in an order that depends on the
 * name alone. So two plans of one mouth meet the same tissues, draw by draw, whatever parts they
 * have, and the same question has the same answer always.
 *
 * @param count of draws
 */
public record Draws(int count) {
  /** Any number; another one makes other draws. */
  private static final long SEED = 0x726F64776F726BL;

  public Draws {
    if (count < 1) {
      throw new IllegalArgumentException(count + " draws");
    }
  }

  /**
   * The draws of one unknown.
   *
   * @param name of it, such as "tooth 35"
   * @return from 0 to 1, one a draw
   */
  public double[] of(String name) {
    long seed = SEED;
    for (int i = 0; i < name.length(); i++) {
      seed = 0x100000001B3L * (seed ^ name.charAt(i));
    }
    SplittableRandom random = new SplittableRandom(seed);
    double[] draws = new double[count];
    for (int i = 0; i < count; i++) {
      int j = random.nextInt(i + 1);
      draws[i] = draws[j];
      draws[j] = (i + 0.5) / count;
    }
    return draws;
  }
}
