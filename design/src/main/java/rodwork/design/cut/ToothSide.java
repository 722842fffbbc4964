package rodwork.design.cut;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.PatchTree;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleMesh;

/** One side of a crown seen across the path: how far out it stands at each place. Immutable. */
public final class ToothSide {
  /** Heights are looked at this far apart [mm]. */
  private static final double STEP_MM = 0.05;

  private static final double OUTSIDE_MM = 15;

  /** No crown reaches farther from its middle at the margin [mm]. */
  public static final double HIGHEST_MM = 13;

  /** How far below its facial margin a crown may begin elsewhere [mm]. */
  private static final double LOWEST_MM = -5;

  /** A line shorter than this is no side of a crown [mm]. */
  private static final double REST_MM = 1;

  /** Of the places of a third so large a share lies on its ragged ends. */
  private static final double RAGGED = 0.05;

  /** The way along a surface over which its direction is taken, to each side [mm]. */
  private static final double TANGENT_MM = 0.4;

  public final CutFrame frame;
  private final TriangleMesh mesh;
  private final PatchTree tree;

  public ToothSide(TriangleMesh mesh, Tooth tooth, Vec3 outward, Vec3 axis) {
    this.frame = CutFrame.of(tooth.axes().origin(), outward, axis);
    this.mesh = mesh;
    this.tree = PatchTree.of(mesh, tooth.copyOfTriangles());
  }

  /**
   * A third of a surface, square to what the crown has of it there.
   *
   * @param side its directions
   * @param from across where it begins [mm]
   * @param to across where it ends [mm]
   */
  public record OfThird(ToothSide side, double from, double to) {}

  /** A third of a surface; empty where the crown has nothing of it. */
  public static Optional<OfThird> third(
      TriangleMesh mesh, Tooth tooth, Surface surface, AcrossThird third, Vec3 axis) {
    List<Vec3> places = new ArrayList<>();
    Vec3 out = Vec3.ZERO;
    for (int t : tooth.trianglesOf(surface)) {
      Vec3 p = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
      if (tooth.place(p).across() == third) {
        places.add(p);
        out = out.plus(mesh.doubleAreaNormal(t).across(axis));
      }
    }
    if (places.isEmpty() || out.length() == 0) {
      return Optional.empty();
    }
    ToothSide side = new ToothSide(mesh, tooth, out, axis);
    double[] across = places.stream().mapToDouble(p -> side.frame.local(p).x()).sorted().toArray();
    return Optional.of(new OfThird(side, share(across, RAGGED), share(across, 1 - RAGGED)));
  }

  private static double share(double[] sorted, double share) {
    return sorted[(int) Math.round(share * (sorted.length - 1))];
  }

  private ToothSide(CutFrame frame, TriangleMesh mesh, PatchTree tree) {
    this.frame = frame;
    this.mesh = mesh;
    this.tree = tree;
  }

  /**
   * The same side, square to the surface at a place.
   *
   * @param across from the origin [mm]
   */
  public ToothSide squareAt(double across) {
    Line line = line(across, HIGHEST_MM);
    if (line.isEmpty()) {
      return this;
    }
    double h = line.height().get(line.widest());
    OptionalDouble a = out(across - TANGENT_MM, h);
    OptionalDouble b = out(across + TANGENT_MM, h);
    if (a.isEmpty() || b.isEmpty()) {
      return this;
    }
    double slope = (b.getAsDouble() - a.getAsDouble()) / (2 * TANGENT_MM);
    Vec3 normal = frame.out().minus(frame.across().times(slope));
    Vec3 origin = frame.scan(across, 0, 0);
    return new ToothSide(CutFrame.of(origin, normal, frame.axis()), mesh, tree);
  }

  /**
   * How far out the crown stands; empty where this side has nothing at that height. Below the
   * margin of this side a ray passes under the crown's edge and meets the far side from within:
   * that is no place of this side.
   */
  public OptionalDouble out(double across, double height) {
    return tree.firstHit(
            frame.scan(across, OUTSIDE_MM, height), frame.out().times(-1), 2 * OUTSIDE_MM)
        .filter(q -> mesh.doubleAreaNormal(q.triangle()).dot(frame.out()) > 0)
        .map(SurfacePoint::point)
        .map(p -> OptionalDouble.of(frame.local(p).y()))
        .orElse(OptionalDouble.empty());
  }

  /**
   * The line of the side in one upright section.
   *
   * @param height along the path, rising [mm]
   * @param out of each [mm]
   */
  public record Line(List<Double> height, List<Double> out) {
    public boolean isEmpty() {
      return height.isEmpty();
    }

    /** Where it stands out farthest: the survey line. */
    public int widest() {
      int best = 0;
      for (int i = 1; i < out.size(); i++) {
        best = out.get(i) > out.get(best) ? i : best;
      }
      return best;
    }

    /** How far out it stands at a height; NaN beyond its ends. */
    public double at(double h) {
      for (int i = 1; i < height.size(); i++) {
        if (h >= height.get(i - 1) && h <= height.get(i)) {
          double share = (h - height.get(i - 1)) / (height.get(i) - height.get(i - 1));
          return out.get(i - 1) + share * (out.get(i) - out.get(i - 1));
        }
      }
      return Double.NaN;
    }
  }

  /** The line from the gum up to a height. */
  public Line line(double across, double upTo) {
    List<Double> heights = new ArrayList<>();
    List<Double> outs = new ArrayList<>();
    for (double h = LOWEST_MM; h <= Math.min(upTo, HIGHEST_MM); h += STEP_MM) {
      OptionalDouble t = out(across, h);
      if (t.isPresent()) {
        heights.add(h);
        outs.add(t.getAsDouble());
      } else if (heights.size() * STEP_MM > REST_MM) {
        break;
      } else {
        // What ends below a gap was a stray corner of the margin.
        heights.clear();
        outs.clear();
      }
    }
    return new Line(heights, outs);
  }
}
