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
 * the cast nearest to the place is followed to both sides: up to the first ridge (a height from
 * which it falls by {@link #FALL_MM}) and a little beyond, and down to where the gum begins.
 */
public final class PlaneCutter {
  /** A ridge is where the line falls by this much behind it [mm]. */
  private static final double FALL_MM = 0.15;

  /** The line is kept this far behind the ridge [mm]: as far as a tilt may move it. */
  private static final double BEHIND_MM = 1.0;

  /** No crown is higher above its gum [mm]; handbook section 8. */
  private static final double HIGHEST_MM = 12;

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
   * @param onTooth ends the section at the gum
   * @return none where no line of the cast passes the place
   */
  public Optional<PlaneSection> at(Vec3 place, Vec3 outward, OnTooth onTooth) {
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
    return best == null ? Optional.empty() : section(best, nearest, onTooth);
  }

  private Optional<PlaneSection> section(SectionLine line, int start, OnTooth onTooth) {
    int step = rises(line, start);
    List<Vec3> upper = new ArrayList<>();
    int ridge = 0;
    double way = 0;
    double top = Double.NEGATIVE_INFINITY;
    Vec3 last = point(line, start);
    for (int i = start, n = 0; n < line.pointCount(); i += step, n++) {
      if (outside(line, i)) {
        break;
      }
      Vec3 q = point(line, i);
      double h = q.dot(up);
      way += q.distance(last);
      last = q;
      upper.add(q);
      if (h > top) {
        top = h;
        ridge = upper.size() - 1;
        way = 0;
      } else if (top - h > FALL_MM && way > BEHIND_MM) {
        break;
      }
      if (upper.size() > 1 && h - upper.getFirst().dot(up) > HIGHEST_MM) {
        break;
      }
    }
    List<Vec3> down = new ArrayList<>();
    last = upper.getFirst();
    double deep = last.dot(up);
    for (int i = start - step, n = 0; n < line.pointCount(); i -= step, n++) {
      if (outside(line, i)) {
        break;
      }
      Vec3 q = point(line, i);
      // The segment between this point and the one above it tells whose surface this is.
      int segment = Math.floorMod(step > 0 ? i : i - 1, line.segmentCount());
      if (!onTooth.holds(line.triangle(segment)) || deep - q.dot(up) > HIGHEST_MM) {
        break;
      }
      down.add(q);
    }
    List<Vec3> all = new ArrayList<>(upper.reversed());
    all.addAll(down);
    return all.size() < 3
        ? Optional.empty()
        : Optional.of(new PlaneSection(all, upper.size() - 1 - ridge));
  }

  private int rises(SectionLine line, int start) {
    int ahead = outside(line, start + 1) ? start : start + 1;
    int behind = outside(line, start - 1) ? start : start - 1;
    return point(line, ahead).dot(up) >= point(line, behind).dot(up) ? 1 : -1;
  }

  private static boolean outside(SectionLine line, int i) {
    return !line.closed() && (i < 0 || i >= line.pointCount());
  }

  private static Vec3 point(SectionLine line, int i) {
    return line.point(Math.floorMod(i, line.pointCount()));
  }
}
