package rodwork.anatomy;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * A closed cast of simple forms, for tests: crowns as bumps along an arch, a ridge under them, a
 * palate or a tongue space, a land around it, walls and a floor. Occlusal is +Z, front is +Y.
 *
 * @param isBase which triangles are floor and walls, known by construction
 */
record ModelCast(TriangleMesh mesh, BitSet isBase) {

  /**
   * How the base is made.
   *
   * @param planar flat ground walls on a seven-sided outline; else walls that follow the arch
   * @param floorTiltDeg the floor against the occlusal plane, front down
   * @param wallLeanDeg the walls against the vertical, wider at the floor
   * @param noiseMm standard deviation of each coordinate
   * @param teeth places from the midline on each side that carry a tooth
   * @param palate vault behind the teeth; else a level tongue space
   */
  record Form(
      boolean planar,
      double floorTiltDeg,
      double wallLeanDeg,
      double noiseMm,
      List<Integer> teeth,
      boolean palate) {}

  private static final int ROUND = 560;
  private static final int RINGS = 90;
  private static final int WALL_ROWS = 30;
  private static final double LAND_MM = 14;

  static ModelCast of(Form form, long seed) {
    Random random = new Random(seed);
    List<Vec3> vertices = new ArrayList<>();
    double tilt = Math.tan(Math.toRadians(form.floorTiltDeg));
    double lean = Math.tan(Math.toRadians(form.wallLeanDeg));
    // The top as a wheel of rings around the middle, then walls, then the floor as a wheel again.
    for (int r = 0; r <= RINGS; r++) {
      for (int k = 0; k < ROUND; k++) {
        double[] rim = rim(form, k);
        double x = rim[0] * r / RINGS;
        double y = rim[1] * r / RINGS;
        vertices.add(new Vec3(x, y, height(form, x, y)));
      }
    }
    for (int w = 1; w <= WALL_ROWS; w++) {
      for (int k = 0; k < ROUND; k++) {
        double[] rim = rim(form, k);
        Vec3 top = vertices.get(RINGS * ROUND + k);
        Vec3 out = new Vec3(rim[0], rim[1], 0).unit();
        double share = (double) w / WALL_ROWS;
        double floor = tilt * rim[1] * -1;
        double drop = share * (top.z() - floor);
        vertices.add(
            new Vec3(
                top.x() + out.x() * lean * drop, top.y() + out.y() * lean * drop, top.z() - drop));
      }
    }
    int wallEnd = RINGS + WALL_ROWS;
    for (int r = RINGS - 1; r >= 0; r--) {
      for (int k = 0; k < ROUND; k++) {
        Vec3 foot = vertices.get(wallEnd * ROUND + k);
        vertices.add(new Vec3(foot.x() * r / RINGS, foot.y() * r / RINGS, foot.z() * r / RINGS));
      }
    }
    double[] xyz = new double[3 * vertices.size()];
    for (int v = 0; v < vertices.size(); v++) {
      // The middle of each wheel is one point given many times: one noise for all.
      boolean middle = v < ROUND || v >= vertices.size() - ROUND;
      xyz[3 * v] = vertices.get(v).x() + (middle ? 0 : form.noiseMm * random.nextGaussian());
      xyz[3 * v + 1] = vertices.get(v).y() + (middle ? 0 : form.noiseMm * random.nextGaussian());
      xyz[3 * v + 2] = vertices.get(v).z() + (middle ? 0 : form.noiseMm * random.nextGaussian());
    }
    int rows = vertices.size() / ROUND - 1;
    int[] corners = new int[6 * rows * ROUND];
    BitSet base = new BitSet();
    int t = 0;
    for (int r = 0; r < rows; r++) {
      for (int k = 0; k < ROUND; k++) {
        int a = r * ROUND + k;
        int b = r * ROUND + (k + 1) % ROUND;
        int c = a + ROUND;
        int d = b + ROUND;
        for (int[] triangle : new int[][] {{a, c, d}, {a, d, b}}) {
          if (r >= RINGS) {
            base.set(t / 3);
          }
          for (int corner : triangle) {
            // Weld the middles: every vertex of the first and last wheel is its first one.
            corners[t++] = corner < ROUND ? 0 : corner >= rows * ROUND ? rows * ROUND : corner;
          }
        }
      }
    }
    return new ModelCast(TriangleMesh.of(xyz, corners), base);
  }

  /** The outline around the middle of the arch: seven flat sides, or a smooth horseshoe's hull. */
  private static double[] rim(Form form, int k) {
    double angle = 2 * Math.PI * k / ROUND;
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    if (!form.planar) {
      double a = 37;
      double b = 34;
      double q = 3;
      double r =
          1 / Math.pow(Math.pow(Math.abs(cos / a), q) + Math.pow(Math.abs(sin / b), q), 1 / q);
      return new double[] {r * cos, r * sin};
    }
    // Sides by their normals: back, two heels, two sides, two front faces.
    double[][] sides = {{-90, 32}, {-140, 41}, {-40, 41}, {180, 36}, {0, 36}, {125, 36}, {55, 36}};
    double r = Double.POSITIVE_INFINITY;
    for (double[] side : sides) {
      double facing = Math.cos(angle - Math.toRadians(side[0]));
      if (facing > 1e-6) {
        r = Math.min(r, side[1] / facing);
      }
    }
    return new double[] {r * cos, r * sin};
  }

  /** Middles of the crowns: x to one side [mm], y to the front, and the half width of each. */
  private static final double[][] TEETH = {
    {4.3, 21.5, 4.0},
    {11.5, 19.2, 3.4},
    {17.0, 14.8, 3.8},
    {20.8, 8.6, 3.6},
    {23.4, 1.8, 3.6},
    {26.0, -6.6, 5.0},
    {28.0, -16.6, 5.0}
  };

  private static double height(Form form, double x, double y) {
    double side = Math.abs(x);
    double crown = 0;
    double ridge = 0;
    for (int i = 0; i < TEETH.length; i++) {
      double dx = side - TEETH[i][0];
      double dy = y - TEETH[i][1];
      double d = Math.hypot(dx, dy);
      double r = TEETH[i][2];
      ridge = Math.max(ridge, 4 * Math.exp(-d * d / 60));
      if (form.teeth.contains(i + 1)) {
        // Front teeth come to an edge, back teeth have a broad top with four cusps.
        double profile = 1 - Math.pow(d / (r + 0.6), i < 3 ? 2 : 6);
        double cusps = i < 3 ? 0 : 0.9 * Math.cos(dx * 1.6) * Math.cos(dy * 1.6);
        crown =
            Math.max(
                crown, profile <= 0 ? 0 : (i < 3 ? 8.8 : 8) * Math.sqrt(profile) + profile * cusps);
      }
    }
    double inside = Math.exp(-(Math.pow(x / 16, 4) + Math.pow((y + 8) / 20, 4)));
    double vault = form.palate ? -5 * inside : 0;
    return LAND_MM + ridge + vault + crown;
  }
}
