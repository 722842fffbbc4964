package rodwork.app.picture;

import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * A parallel projection of the scan frame onto a panel of the picture.
 *
 * <p>x runs to the right and y down [px of the panel], z towards the viewer [mm].
 *
 * @param right unit vector to the viewer's right
 * @param up unit vector to the panel's upper edge
 * @param toViewer unit vector out of the panel
 * @param pxPerMm scale
 * @param shiftX added to x [px]
 * @param shiftY added to y [px]
 */
record Projection(
    Vec3 right, Vec3 up, Vec3 toViewer, double pxPerMm, double shiftX, double shiftY) {

  /**
   * The largest view of a mesh that fits a panel.
   *
   * @param toViewer unit vector from the cast to the eye
   * @param upward direction that is up in the panel; only its part across the view counts
   * @param width of the panel [px]
   * @param height of the panel [px]
   * @param margin kept free on each side [px]
   */
  static Projection fit(
      TriangleMesh mesh, Vec3 toViewer, Vec3 upward, int width, int height, int margin) {
    Vec3 up = upward.across(toViewer).unit();
    Vec3 right = up.cross(toViewer);
    double left = Double.POSITIVE_INFINITY;
    double low = Double.POSITIVE_INFINITY;
    double rightmost = Double.NEGATIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vec3 p = mesh.vertex(v);
      double x = p.dot(right);
      double y = p.dot(up);
      left = Math.min(left, x);
      rightmost = Math.max(rightmost, x);
      low = Math.min(low, y);
      high = Math.max(high, y);
    }
    double scale =
        Math.min((width - 2 * margin) / (rightmost - left), (height - 2 * margin) / (high - low));
    return new Projection(
        right,
        up,
        toViewer,
        scale,
        width / 2.0 - scale * (left + rightmost) / 2,
        height / 2.0 + scale * (low + high) / 2);
  }

  /**
   * A view with a place in its middle.
   *
   * @param toViewer unit vector from the place to the eye
   * @param upward direction that is up in the panel; only its part across the view counts
   * @param pxPerMm scale
   * @param width of the panel [px]
   * @param height of the panel [px]
   */
  static Projection about(
      Vec3 place, Vec3 toViewer, Vec3 upward, double pxPerMm, int width, int height) {
    Vec3 up = upward.across(toViewer).unit();
    Vec3 right = up.cross(toViewer);
    return new Projection(
        right,
        up,
        toViewer,
        pxPerMm,
        width / 2.0 - pxPerMm * place.dot(right),
        height / 2.0 + pxPerMm * place.dot(up));
  }

  double x(Vec3 p) {
    return shiftX + pxPerMm * p.dot(right);
  }

  double y(Vec3 p) {
    return shiftY - pxPerMm * p.dot(up);
  }

  double z(Vec3 p) {
    return p.dot(toViewer);
  }
}
