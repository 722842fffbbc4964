package rodwork.survey.seating;

import java.util.List;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.Thinning;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.overhang.Overhang;
import rodwork.geometry.solid.Blend;
import rodwork.geometry.solid.Field;
import rodwork.geometry.solid.IsoSurface;
import rodwork.survey.Surveyor;

/**
 * A solid that stands on three biting surfaces of the plaster cast and carries a post along the
 * path: post into the surveyor's chuck, cast into the key, table locked.
 *
 * <p>It holds nothing below the cast's upper envelope at the path, grown by the gap; so it lifts
 * off along the path, whatever the teeth do below.
 *
 * @param mesh the key, closed, in the scan frame [mm]
 * @param axis the path [unit vector, scan frame]
 * @param seats the highest places under its three pads [scan frame, mm]
 * @param gapMm between pads and cast
 * @param postMm diameter of the post
 * @param axisErrorDeg greatest angle by which the axis is off when each pad sits up to {@link
 *     #seatingErrorMm} too high or too low [degrees]
 * @param seatingErrorMm that error of seating [mm]
 */
public record SeatingKey(
    TriangleMesh mesh,
    Vec3 axis,
    List<Vec3> seats,
    double gapMm,
    double postMm,
    double axisErrorDeg,
    double seatingErrorMm) {
  private static final double CELL_MM = 0.15;

  /** Thickness of the bars that join the pads [mm]. */
  private static final double BAR_MM = 4;

  /** Bars run this far above everything else of the cast [mm]. */
  private static final double CLEAR_MM = 1.5;

  private static final double FILLET_MM = 1;

  private static final double THINNING_MM = 0.003;

  /**
   * Makes a key.
   *
   * @param occlusal the occlusal normal [unit vector], to tell biting surfaces
   * @param axis the path, from tissue to the occlusal side
   * @throws rodwork.geometry.Refusal where the cast offers no three seats
   */
  public static SeatingKey of(
      Surveyor surveyor, Vec3 occlusal, Vec3 axis, SeatingRules rules, Watch watch) {
    Overhang overhang = surveyor.probe(axis, watch);
    Vec3 p = overhang.axis();
    Vec3 e1 = p.anyPerpendicular();
    Vec3 e2 = p.cross(e1);
    double radius = rules.padRadius().value();
    List<Vec3> seats = Seats.find(surveyor, occlusal, overhang, radius);
    double gap = rules.gap().value();
    List<Pad> pads =
        seats.stream().map(seat -> new Pad(overhang, e1, e2, seat, radius, gap)).toList();
    watch.check();
    TriangleMesh cast = surveyor.topology().mesh();
    double top = Double.NEGATIVE_INFINITY;
    for (int v = 0; v < cast.vertexCount(); v++) {
      top = Math.max(top, cast.vertex(v).dot(p));
    }
    double low = top + CLEAR_MM;
    double high = low + BAR_MM;
    double mx = pads.stream().mapToDouble(pad -> pad.x).average().orElse(0);
    double my = pads.stream().mapToDouble(pad -> pad.y).average().orElse(0);
    double post = rules.post().value() / 2;
    double end = high + rules.postLength().value();
    Field body =
        (x, y, z) -> {
          double joined = Math.max(Math.hypot(x - mx, y - my) - post, Math.max(low - z, z - end));
          for (Pad pad : pads) {
            double bar = bar(x - mx, y - my, pad.x - mx, pad.y - my) - radius / 2;
            bar = Math.max(bar, Math.max(low - z, z - high));
            double upright = Math.max(pad.at(x, y, z), z - high);
            joined = Blend.union(joined, Math.min(bar, upright), z > low ? FILLET_MM : 0);
          }
          return joined;
        };
    TriangleMesh fine =
        IsoSurface.of(body, CELL_MM, (x, y, z, half) -> true, new Vec3(mx, my, (low + high) / 2));
    // Flat faces need few triangles, and where edges meet the cells leave some without any area.
    TriangleMesh upright = Thinning.of(fine, THINNING_MM, watch);
    return new SeatingKey(
        toScan(upright, e1, e2, p),
        p,
        seats,
        gap,
        rules.post().value(),
        axisErrorDeg(seats, p, rules.seatingError().value()),
        rules.seatingError().value());
  }

  /** Horizontal distance from the middle line of a bar that starts at the middle. */
  private static double bar(double x, double y, double ex, double ey) {
    double along = Math.clamp((x * ex + y * ey) / (ex * ex + ey * ey), 0, 1);
    return Math.hypot(x - along * ex, y - along * ey);
  }

  private static TriangleMesh toScan(TriangleMesh mesh, Vec3 e1, Vec3 e2, Vec3 p) {
    double[] xyz = mesh.copyOfCoordinates();
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vec3 q = e1.times(mesh.x(v)).plus(e2.times(mesh.y(v))).plus(p.times(mesh.z(v)));
      xyz[3 * v] = q.x();
      xyz[3 * v + 1] = q.y();
      xyz[3 * v + 2] = q.z();
    }
    return TriangleMesh.of(xyz, mesh.copyOfCorners());
  }

  /** The worst of all ways in which three seats can be off along the axis. */
  static double axisErrorDeg(List<Vec3> seats, Vec3 axis, double errorMm) {
    Vec3 flat = normal(seats.get(0), seats.get(1), seats.get(2), axis);
    double worst = 0;
    for (int way = 0; way < 8; way++) {
      Vec3 a = seats.get(0).plus(axis.times((way & 1) == 0 ? errorMm : -errorMm));
      Vec3 b = seats.get(1).plus(axis.times((way & 2) == 0 ? errorMm : -errorMm));
      Vec3 c = seats.get(2).plus(axis.times((way & 4) == 0 ? errorMm : -errorMm));
      worst = Math.max(worst, normal(a, b, c, axis).angleDegTo(flat));
    }
    return worst;
  }

  private static Vec3 normal(Vec3 a, Vec3 b, Vec3 c, Vec3 axis) {
    Vec3 n = b.minus(a).cross(c.minus(a)).unit();
    return n.dot(axis) < 0 ? n.times(-1) : n;
  }
}
