package rodwork.rules;

/**
 * Where a module gets the thresholds that it declares. The rulebook implements it; what is missing
 * or in another unit is refused there, with the line.
 */
@FunctionalInterface
public interface Thresholds {
  /**
   * The threshold of that id.
   *
   * @param unit the unit that the asker counts in
   */
  Threshold get(String id, String unit);
}
