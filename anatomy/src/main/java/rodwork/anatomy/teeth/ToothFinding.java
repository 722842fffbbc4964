package rodwork.anatomy.teeth;

import java.util.Map;

/**
 * The teeth of a cast.
 *
 * @param labels the tooth of each triangle
 * @param certainty of each tooth: the mean, over its area, of the walker's lead of the tooth over
 *     the next label [0 to 1]; an order of doubt, not a probability
 */
public record ToothFinding(ToothLabels labels, Map<Integer, Double> certainty) {
  public ToothFinding {
    certainty = Map.copyOf(certainty);
  }
}
