package rodwork.survey.plane;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.Plane;
import rodwork.geometry.mesh.Section;
import rodwork.geometry.mesh.SectionLine;
import rodwork.geometry.mesh.TriangleTree;

/**
 * Cuts the sections of surfaces that could guide.
 *
 * <p>In the plane through a place that holds the occlusal and the outward direction, the line of
 * the cast nearest to the place is followed to both sides: up over the {@link MarginalRidge} and a
 * little beyond, and down to where the gum begins.
 */
public final class PlaneCutter {
  /** The line is kept this far behind the ridge [mm], to be drawn. */
  private static final double BEHIND_MM = 1.0;

  /** No crown is higher above its gum [mm]; Wheeler's tables end at 11, from memory. */
  private static final double HIGHEST_MM = 12;

  /** So far along the line its two ways tell which of them leads up [mm]. */
  private static final double ASIDE_MM = 1.0;

  private final MeshTopology topology;
  private final TriangleTree tree;
  private final Vec3 up;

  /**
   * A cutter of one cast.
   *
   * @param up to the occlusal side [unit vector]
   */
  public PlaneCutter(MeshTopology topology, TriangleTree tree, Vec3 up) {
    this.topology = topology;
    this.tree = tree;
    this.up = up;
  }

  /** Whether a point of the cast still belongs to the tooth. */
  @FunctionalInterface
  public interface OnTooth {
    boolean holds(int triangle);
  }

  /**
   * The section through a place of a tooth.
   *
   * @param place on the surface, below the ridge
   * @param outward away from the tooth
   * @param axis of the tooth, to occlusal; its part in the section counts
   * @param onTooth ends the section at the gum
   * @return none where no line of the cast passes the place
   */
  public Optional<PlaneSection> at(Vec3 place, Vec3 outward, Vec3 axis, OnTooth onTooth) {
    Vec3 out = outward.across(up).unit();
    Plane plane = Plane.through(place, up.cross(out));
    SectionLine best = null;
    int nearest = 0;
    double least = 1.0;
    for (SectionLine line : Section.of(topology, tree, plane)) {
      for (int i = 0; i < line.segmentCount(); i++) {
        double distance = line.point(i).distance(place);
        if (distance < least && onTooth.holds(line.triangle(i))) {
          least = distance;
          best = line;
          nearest = i;
        }
      }
    }
    if (best == null) {
      return Optional.empty();
    }
    Vec3 rise = axis.across(up.cross(out)).unit();
    return section(best, nearest, out.across(rise).unit(), rise, onTooth);
  }

  private Optional<PlaneSection> section(
      SectionLine line, int start, Vec3 outward, Vec3 rise, OnTooth onTooth) {
    // The wall leads down or outward, the top inward.
    Vec3 in = rise.minus(outward);
    double ahead = point(line, on(line, start, 1, onTooth)).dot(in);
    double back = point(line, on(line, start, -1, onTooth)).dot(in);
    int step = ahead >= back ? 1 : -1;
    // What sticks out most may be the ridge itself: the walk over it begins on the wall.
    int foot = on(line, start, -step, onTooth);
    List<Vec3> upper = upward(line, foot, step, outward, rise, onTooth);
    int ridge = MarginalRidge.of(upper, outward, rise);
    int behind = ridge;
    while (behind + 1 < upper.size() && upper.get(behind).distance(upper.get(ridge)) < BEHIND_MM) {
      behind++;
    }
    List<Vec3> all = new ArrayList<>(upper.subList(0, behind + 1).reversed());
    all.addAll(downward(line, foot, step, onTooth));
    return all.size() < 3 ? Optional.empty() : Optional.of(new PlaneSection(all, behind - ridge));
  }

  /** From a point of the wall up and over the top, as far as the ridge may lie and a little on. */
  private static List<Vec3> upward(
      SectionLine line, int start, int step, Vec3 outward, Vec3 rise, OnTooth onTooth) {
    List<Vec3> upper = new ArrayList<>();
    Vec3 half = outward.plus(rise);
    Vec3 first = point(line, start);
    Vec3 turn = first;
    for (int i = start, n = 0; n < line.pointCount() && !outside(line, i); i += step, n++) {
      Vec3 q = point(line, i);
      if (q.minus(first).dot(rise) > HIGHEST_MM
          || (n > 0 && !onTooth.holds(between(line, i - step, i)))) {
        break;
      }
      upper.add(q);
      if (turn.minus(q).dot(outward) > MarginalRidge.reachMm() + BEHIND_MM) {
        break;
      }
      turn = q.dot(half) > turn.dot(half) ? q : turn;
    }
    return upper;
  }

  /** What lies below a point of the wall, down to the gum. */
  private List<Vec3> downward(SectionLine line, int start, int step, OnTooth onTooth) {
    List<Vec3> down = new ArrayList<>();
    double deep = point(line, start).dot(up);
    for (int i = start - step, n = 0; n < line.pointCount() && !outside(line, i); i -= step, n++) {
      Vec3 q = point(line, i);
      if (!onTooth.holds(between(line, i + step, i)) || deep - q.dot(up) > HIGHEST_MM) {
        break;
      }
      down.add(q);
    }
    return down;
  }

  /** The point of a line that lies a little way on from another, or where it leaves the tooth. */
  private static int on(SectionLine line, int start, int step, OnTooth onTooth) {
    int i = start;
    double way = 0;
    for (int n = 0; n < line.pointCount() && way < ASIDE_MM && !outside(line, i + step); n++) {
      if (!onTooth.holds(between(line, i, i + step))) {
        break;
      }
      way += point(line, i).distance(point(line, i + step));
      i += step;
    }
    return i;
  }

  /** The triangle between two neighbouring points of a line. */
  private static int between(SectionLine line, int i, int j) {
    return line.triangle(Math.floorMod(Math.min(i, j), line.segmentCount()));
  }

  private static boolean outside(SectionLine line, int i) {
    return !line.closed() && (i < 0 || i >= line.pointCount());
  }

  private static Vec3 point(SectionLine line, int i) {
    return line.point(Math.floorMod(i, line.pointCount()));
  }
}
