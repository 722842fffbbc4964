package rodwork.survey;

import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.VertexNormals;
import rodwork.geometry.overhang.Overhang;
import rodwork.geometry.overhang.OverhangReading;

/**
 * What the rod tells of one point.
 *
 * @param overhang depth, free line, contact and flags
 * @param uncertaintyMm of the depth: the mesh's part (edge² × curvature / 8) and the accuracy of
 *     the scan, in quadrature [mm]
 * @param fitsMm size of the gauge that fits [mm]; NaN if none
 * @param fitsText the same in words
 * @param belowSurveyLineMm how far the point lies below the contact, along the axis [mm]; 0 where
 *     it is free
 * @param convergenceDeg angle of gingival convergence [degrees]; NaN where the surface ends or the
 *     point is free
 * @param depthAtReferenceMm depth at the reference orientation [mm]; NaN where that is not known
 * @param tooCloseToCall whether the depth is within its uncertainty of the shallow limit, so that
 *     it cannot be said whether there is an undercut
 */
public record RodReading(
    OverhangReading overhang,
    double uncertaintyMm,
    double fitsMm,
    String fitsText,
    double belowSurveyLineMm,
    double convergenceDeg,
    double depthAtReferenceMm,
    boolean tooCloseToCall) {

  static RodReading of(
      Surveyor surveyor, Overhang overhang, Gauges gauges, Vec3 point, int triangle) {
    SurveyRules rules = surveyor.rules();
    OverhangReading reading = overhang.read(point);
    double depth = reading.depthMm();
    double uncertainty = Math.hypot(meshPart(surveyor, triangle), rules.scanAccuracy().value());
    Vec3 axis = overhang.axis();
    Vec3 out = reading.free().minus(point).across(axis);
    double convergence =
        out.length() < 1e-9
            ? Double.NaN
            : Convergence.angleDeg(
                surveyor.topology(), axis, point, triangle, out.unit(), rules.angleReach().value());
    Overhang reference = surveyor.reference();
    double fits = rules.fits().value();
    String text =
        depth == 0
            ? "no undercut"
            : reading.capped()
                ? "more than %.0f mm".formatted(depth)
                : gauges.describe(depth, fits);
    return new RodReading(
        reading,
        uncertainty,
        reading.flagged() ? Double.NaN : gauges.fitting(depth, fits),
        text,
        belowSurveyLine(surveyor, reading, axis, triangle),
        convergence,
        reference == null ? Double.NaN : reference.depthAt(point),
        depth > 0 && Math.abs(depth - rules.shallow().value()) < uncertainty);
  }

  /** The section is followed this far up to the survey line [mm]. */
  private static final double MOST_WAY_MM = 12;

  /** A point this little below the contact is on the survey line [mm]. */
  private static final double ON_LINE_MM = 0.05;

  private static double belowSurveyLine(
      Surveyor surveyor, OverhangReading reading, Vec3 axis, int triangle) {
    Vec3 point = reading.point();
    double toContact = reading.contact().minus(point).dot(axis);
    Vec3 out = reading.free().minus(point).across(axis);
    if (out.length() < 1e-9) {
      return toContact;
    }
    VertexNormals normals = surveyor.normals();
    double[] height = {toContact};
    double[] before = {-1, 0};
    boolean[] under = {false};
    new SectionWalk(surveyor.topology(), point, axis.cross(out).unit())
        .walk(
            triangle,
            axis,
            (q, a, b, s, t, length) -> {
              double sa = normals.normal(a).dot(axis);
              double sine = sa + s * (normals.normal(b).dot(axis) - sa);
              double rise = q.minus(point).dot(axis);
              // Beside the margin averaged normals look up with the gum: no survey line yet.
              boolean left = under[0] || rise >= toContact - ON_LINE_MM;
              if (sine >= 0 && length > 0 && left) {
                // Between the last crossing and this one; at once when the point is on the line.
                double share = before[0] / (before[0] - sine);
                height[0] = before[1] + share * (rise - before[1]);
                return false;
              }
              if (sine < 0) {
                under[0] = true;
                before[0] = sine;
                before[1] = rise;
              }
              return length < MOST_WAY_MM;
            });
    return height[0];
  }

  /** How far the flat triangle may lie from the curved tooth: edge² × curvature / 8 [mm]. */
  private static double meshPart(Surveyor surveyor, int triangle) {
    TriangleMesh mesh = surveyor.topology().mesh();
    VertexNormals normals = surveyor.normals();
    double worst = 0;
    for (int k = 0; k < 3; k++) {
      int a = mesh.corner(triangle, k);
      int b = mesh.corner(triangle, (k + 1) % 3);
      // Curvature along an edge is the turn of the normal over its length.
      double turn = normals.normal(a).distance(normals.normal(b));
      worst = Math.max(worst, turn * mesh.vertex(a).distance(mesh.vertex(b)) / 8);
    }
    return worst;
  }
}
