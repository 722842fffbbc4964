package rodwork.design.load;

import rodwork.rules.Threshold;

/**
 * A property that is known to lie between two numbers of the rulebook.
 *
 * @param least the lesser end, above 0
 * @param most the greater end, in the same unit
 */
public record Between(Threshold least, Threshold most) {
  public Between {
    if (!least.unit().equals(most.unit())
        || !(least.value() > 0)
        || !(least.value() <= most.value())) {
      throw new IllegalArgumentException(
          least.id() + " " + least.value() + " to " + most.id() + " " + most.value());
    }
  }

  /**
   * A value of it: even on a logarithmic scale, since what is uncertain is a factor.
   *
   * @param share 0 for the lesser end, 1 for the greater
   */
  public double at(double share) {
    return least.value() * Math.pow(most.value() / least.value(), share);
  }
}
