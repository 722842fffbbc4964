package rodwork.benchmarks;

import rodwork.geometry.mesh.TriangleMesh;

/**
 * A made-up cast of an arch's size in any number of triangles: a ridge that is swept along half an
 * ellipse, waisted below fourteen bulges as crowns are at their necks, with a little roughness. An
 * open shell, about 56 × 56 × 16 mm, teeth towards +z, front towards +y; the same on every run.
 *
 * <p>With 270,000 triangles its edges are 0.19 mm long, like those of a real dense scan.
 */
final class MadeCast {
  private static final double HALF_WIDTH_MM = 23;
  private static final double LENGTH_MM = 44;
  private static final double HEIGHT_MM = 16;
  private static final double HALF_SPREAD_RAD = 1.75;
  private static final double SIDE_RAD = Math.toRadians(120);
  private static final int CROWNS = 14;

  /** Columns along the arch for each row across it, so that the triangles are even. */
  private static final double ALONG_PER_ACROSS = 2.7;

  private MadeCast() {}

  /**
   * A cast of about so many triangles: at most 2 % off from 2,000 upwards.
   *
   * @param triangles how many [at least 200]
   */
  static TriangleMesh of(int triangles) {
    int across = (int) Math.round(Math.sqrt(triangles / 2.0 / ALONG_PER_ACROSS));
    int along = (int) Math.round(triangles / 2.0 / across);
    double[] xyz = new double[3 * (along + 1) * (across + 1)];
    int at = 0;
    for (int i = 0; i <= along; i++) {
      for (int j = 0; j <= across; j++, at += 3) {
        place((double) i / along, 2.0 * j / across - 1, xyz, at);
      }
    }
    int[] corners = new int[6 * along * across];
    int c = 0;
    for (int i = 0; i < along; i++) {
      for (int j = 0; j < across; j++) {
        int a = i * (across + 1) + j;
        int b = a + across + 1;
        // Outer sides point away from the ridge; diagonals alternate, so that no direction is
        // favoured.
        int[] two =
            (i + j) % 2 == 0
                ? new int[] {a, b, b + 1, a, b + 1, a + 1}
                : new int[] {a, b, a + 1, b, b + 1, a + 1};
        System.arraycopy(two, 0, corners, c, 6);
        c += 6;
      }
    }
    return TriangleMesh.of(xyz, corners);
  }

  /**
   * A point of the surface.
   *
   * @param s along the arch [0 to 1]
   * @param t across the ridge, from the tongue's side to the cheek's [−1 to 1]
   */
  private static void place(double s, double t, double[] xyz, int at) {
    double angle = HALF_SPREAD_RAD * (2 * s - 1);
    double side = t * SIDE_RAD;
    double up = (Math.cos(side) + 0.5) / 1.5;
    double crown = 0.5 - 0.5 * Math.cos(2 * Math.PI * CROWNS * s);
    double half = 6.2 - 1.2 * up - 1.6 * bump(up, 0.3, 0.12) + (0.2 + crown) * bump(up, 0.62, 0.15);
    double out = half * Math.sin(side) + roughness(19 * angle, 7 * side);
    double z = HEIGHT_MM * up * (1 - 0.12 * (1 - crown) * up) + roughness(17 * angle + 2, 9 * side);
    // Outwards from the centre line, across it.
    double nx = LENGTH_MM * Math.sin(angle);
    double ny = HALF_WIDTH_MM * Math.cos(angle);
    double length = Math.hypot(nx, ny);
    xyz[at] = HALF_WIDTH_MM * Math.sin(angle) + out * nx / length;
    xyz[at + 1] = LENGTH_MM * Math.cos(angle) + out * ny / length;
    xyz[at + 2] = z;
  }

  private static double bump(double at, double middle, double width) {
    double d = (at - middle) / width;
    return Math.exp(-d * d);
  }

  /** At most 0.06 mm, in waves of several lengths [mm]. */
  private static double roughness(double a, double b) {
    return 0.05 * Math.sin(a) * Math.sin(b) + 0.01 * Math.sin(7.3 * a + b) * Math.sin(6.1 * b - a);
  }
}
