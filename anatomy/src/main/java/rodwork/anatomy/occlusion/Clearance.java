package rodwork.anatomy.occlusion;

import rodwork.anatomy.Arch;
import rodwork.geometry.Parallel;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.registration.RigidMotion;

/**
 * The room between an arch and the opposing teeth, along the occlusal direction of the arch.
 *
 * <p>At a point it is the way up to the first surface of the opposing scan, seen from {@link
 * #MOST_OVERLAP_MM} below the point: so where the two scans run into each other it is negative.
 * Immutable; safe for several threads.
 */
public final class Clearance {
  /** Deeper overlaps of the two scans are not looked for [mm]. */
  public static final double MOST_OVERLAP_MM = 2;

  /** Farther apart is told as not known: the opposing scan does not cover this place [mm]. */
  public static final double MOST_MM = 30;

  private final Arch arch;
  private final TriangleTree opposing;
  private final RigidMotion toOpposing;

  private Clearance(Arch arch, TriangleTree opposing, RigidMotion toOpposing) {
    this.arch = arch;
    this.opposing = opposing;
    this.toOpposing = toOpposing;
  }

  /**
   * To an opposing scan.
   *
   * @param opposing in its own frame
   * @param toArch lays it on the arch as the teeth bite; {@link RigidMotion#NONE} where both scans
   *     share one frame
   */
  public static Clearance of(Arch arch, TriangleMesh opposing, RigidMotion toArch) {
    return new Clearance(arch, TriangleTree.of(opposing), toArch.inverse());
  }

  /** The same opposing scan over the same cast in another arch frame. */
  public Clearance over(Arch other) {
    return new Clearance(other, opposing, toOpposing);
  }

  /** The room above a point of the arch [mm]; NaN where it is not known. */
  public double at(Vec3 point) {
    Vec3 up = arch.frame().z();
    Vec3 start = toOpposing.point(point.minus(up.times(MOST_OVERLAP_MM)));
    return opposing
        .firstHit(start, toOpposing.direction(up), MOST_MM + MOST_OVERLAP_MM)
        .map(hit -> hit.distance() - MOST_OVERLAP_MM)
        .orElse(Double.NaN);
  }

  /** The room above every vertex of the arch [mm]; NaN where it is not known. */
  public float[] map(Watch watch) {
    TriangleMesh mesh = arch.mesh();
    float[] map = new float[mesh.vertexCount()];
    Parallel.chunks(
        map.length,
        1 << 11,
        watch,
        (from, to) -> {
          for (int v = from; v < to; v++) {
            map[v] = (float) at(mesh.vertex(v));
          }
        });
    return map;
  }
}
