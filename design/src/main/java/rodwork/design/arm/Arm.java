package rodwork.design.arm;

import java.util.ArrayList;
import java.util.List;
import rodwork.geometry.Vec3;

/**
 * An arm as it lies on the tooth: a curve on the surface from its rigid origin to its tip, and a
 * section that tapers evenly along it.
 *
 * @param line from origin to tip, on the tooth's side of the arm
 * @param root section at the origin, where the taper starts
 * @param tip section at the tip
 */
public record Arm(List<Station> line, Section root, Section tip) {
  /**
   * A point of the curve.
   *
   * @param point on the side of the arm that faces the tooth [mm]
   * @param outward unit normal of the tooth there
   */
  public record Station(Vec3 point, Vec3 outward) {}

  /** Points nearer to each other than this count as one [mm]. */
  private static final double SAME_PLACE_MM = 1e-6;

  public Arm {
    List<Station> apart = new ArrayList<>();
    for (Station station : line) {
      if (!station.point.isFinite() || !station.outward.isFinite()) {
        throw new IllegalArgumentException("a point of the arm is no number: " + station);
      }
      if (apart.isEmpty() || apart.getLast().point.distance(station.point) > SAME_PLACE_MM) {
        apart.add(new Station(station.point, station.outward.unit()));
      }
    }
    if (apart.size() < 2) {
      throw new IllegalArgumentException("an arm needs two points that lie apart");
    }
    line = List.copyOf(apart);
    // Fails at once where the two shapes differ.
    root.towards(tip, 0.5);
  }

  /** Length along the curve [mm]. */
  public double lengthMm() {
    double length = 0;
    for (int i = 1; i < line.size(); i++) {
      length += line.get(i).point.distance(line.get(i - 1).point);
    }
    return length;
  }

  /** The same curve with other sections. */
  public Arm with(Section newRoot, Section newTip) {
    return new Arm(line, newRoot, newTip);
  }

  /** The tip, where it touches the tooth. */
  public Station end() {
    return line.getLast();
  }
}
