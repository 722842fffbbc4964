package rodwork.anatomy.teeth;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rodwork.geometry.Vec3;
import rodwork.rules.Wording;

/**
 * The teeth of a cast.
 *
 * @param labels the tooth of each triangle
 * @param certainty of each tooth: the mean, over its area, of the walker's lead of the tooth over
 *     the next label [0 to 1]; an order of doubt, not a probability
 * @param numbering how sure the number and place of each tooth are, against the best other row of
 *     teeth [0 to 1]; 1 where a person gave the point
 * @param points a place on the biting surface of each tooth, in the scan frame [mm]
 * @param remarks what a person should look at
 */
public record ToothFinding(
    ToothLabels labels,
    Map<Integer, Double> certainty,
    Map<Integer, Double> numbering,
    Map<Integer, Vec3> points,
    List<Remark> remarks) {

  /** One thing to look at, with its stable code, what it is and what to do. */
  public record Remark(String code, Wording text, String advice) {}

  public ToothFinding {
    certainty = Map.copyOf(certainty);
    numbering = Map.copyOf(numbering);
    points = Map.copyOf(points);
    remarks = List.copyOf(remarks);
  }

  public ToothFinding(ToothLabels labels, Map<Integer, Double> certainty) {
    this(labels, certainty, Map.of(), Map.of(), List.of());
  }

  /** Hints that give this answer's teeth by their points, to be corrected from there. */
  public ToothHints asHints(ToothHints given) {
    List<ToothHints.Point> all =
        new TreeMap<>(points)
            .entrySet().stream().map(e -> new ToothHints.Point(e.getKey(), e.getValue())).toList();
    return new ToothHints(given.missing(), all, given.pins());
  }
}
