package rodwork.anatomy.teeth;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import rodwork.geometry.Vec3;

/**
 * What a person knows of the teeth of a cast.
 *
 * <p>With points, the teeth that have one are found and no others; without, all that stand are
 * looked for. Corrections begin from {@link ToothFinding#asHints}, which has the point of every
 * tooth found, and make new hints; what a person pinned stays, the rest adapts.
 *
 * @param missing FDI numbers of the missing teeth; empty where that is not known
 * @param points one point on the occlusal side of each tooth, in the scan frame [mm]
 * @param pins places whose tooth a person has fixed, the later over the earlier
 */
public record ToothHints(Set<Integer> missing, List<Point> points, List<Pin> pins) {
  public static final ToothHints NONE = new ToothHints(Set.of(), List.of());

  /** A place on a tooth, in the scan frame [mm]. */
  public record Point(int fdi, Vec3 at) {
    public Point {
      if (!ToothLabels.isFdi(fdi)) {
        throw new IllegalArgumentException("no FDI number of a permanent tooth: " + fdi);
      }
      if (!at.isFinite()) {
        throw new IllegalArgumentException("the point of tooth " + fdi + " is not finite: " + at);
      }
    }
  }

  /**
   * A place that is surely a tooth or the gum; a dragged margin is a row of them.
   *
   * @param fdi a tooth, or {@link ToothLabels#GUM}
   * @param at in the scan frame [mm]
   * @param radius of the surface about it that is meant [mm], above 0 to 5
   */
  public record Pin(int fdi, Vec3 at, double radius) {
    private static final double LARGEST_MM = 5;

    public Pin {
      if (fdi != ToothLabels.GUM && !ToothLabels.isFdi(fdi)) {
        throw new IllegalArgumentException("neither a tooth nor 0 for gum: " + fdi);
      }
      if (!at.isFinite() || !(radius > 0 && radius <= LARGEST_MM)) {
        throw new IllegalArgumentException(
            "a pin needs a finite place and a radius above 0 to 5 mm: " + at + ", " + radius);
      }
    }
  }

  public ToothHints {
    missing = Set.copyOf(missing);
    points = List.copyOf(points);
    pins = List.copyOf(pins);
    Set<Integer> seen = new HashSet<>();
    for (Point point : points) {
      if (!seen.add(point.fdi())) {
        throw new IllegalArgumentException("tooth " + point.fdi() + " has two points");
      }
      if (missing.contains(point.fdi())) {
        throw new IllegalArgumentException(
            "tooth " + point.fdi() + " has a point and is called missing");
      }
    }
  }

  public ToothHints(Set<Integer> missing, List<Point> points) {
    this(missing, points, List.of());
  }

  /** A tooth added, or moved to another point. */
  public ToothHints with(Point point) {
    Set<Integer> still = new TreeSet<>(missing);
    still.remove(point.fdi());
    List<Point> moved = new ArrayList<>(points);
    moved.removeIf(p -> p.fdi() == point.fdi());
    moved.add(point);
    return new ToothHints(still, moved, pins);
  }

  /** A tooth taken out; it counts as missing. */
  public ToothHints without(int fdi) {
    Set<Integer> more = new TreeSet<>(missing);
    more.add(fdi);
    return new ToothHints(
        more,
        points.stream().filter(p -> p.fdi() != fdi).toList(),
        pins.stream().filter(p -> p.fdi() != fdi).toList());
  }

  /** A place fixed, as where a margin is dragged to. */
  public ToothHints with(Pin pin) {
    List<Pin> more = new ArrayList<>(pins);
    more.add(pin);
    return new ToothHints(missing, points, more);
  }

  /** Two teeth that are one: what was found as the second is of the first. */
  public ToothHints merged(int kept, int gone, double radius) {
    ToothHints one = without(gone);
    for (Point point : points) {
      one = point.fdi() == gone ? one.with(new Pin(kept, point.at(), radius)) : one;
    }
    Set<Integer> still = new TreeSet<>(one.missing);
    if (!missing.contains(gone)) {
      still.remove(gone);
    }
    return new ToothHints(still, one.points, one.pins);
  }

  /** One tooth that is two: each has its point from now on. */
  public ToothHints split(Point first, Point second) {
    return with(first).with(second);
  }

  /**
   * Other numbers, all at once, so that two teeth can change theirs.
   *
   * @param to the new number by the old; teeth that are not in it keep theirs
   * @throws IllegalArgumentException where two teeth would have one number
   */
  public ToothHints renumbered(Map<Integer, Integer> to) {
    List<Point> moved =
        points.stream().map(p -> new Point(to.getOrDefault(p.fdi(), p.fdi()), p.at())).toList();
    Set<Integer> still = new TreeSet<>(missing);
    moved.forEach(p -> still.remove(p.fdi()));
    return new ToothHints(
        still,
        moved,
        pins.stream()
            .map(p -> new Pin(to.getOrDefault(p.fdi(), p.fdi()), p.at(), p.radius()))
            .toList());
  }
}
