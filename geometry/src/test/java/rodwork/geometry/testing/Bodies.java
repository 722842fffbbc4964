package rodwork.geometry.testing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Bodies of closed form as meshes: closed, turned outward, welded, no edge longer than asked for.
 *
 * <p>Vertices lie on the true surface, so the triangles lie inside convex parts by at most edge² /
 * 6 radius. All lengths in mm; the axis of every body of revolution is z.
 */
public final class Bodies {
  private Bodies() {}

  /** A sphere about the origin: a subdivided icosahedron, edges within 20 % of one length. */
  public static TriangleMesh sphere(double radius, double maxEdgeMm) {
    double g = (1 + Math.sqrt(5)) / 2;
    double[][] p = {
      {-1, g, 0}, {1, g, 0}, {-1, -g, 0}, {1, -g, 0}, {0, -1, g}, {0, 1, g},
      {0, -1, -g}, {0, 1, -g}, {g, 0, -1}, {g, 0, 1}, {-g, 0, -1}, {-g, 0, 1}
    };
    int[][] faces = {
      {0, 11, 5}, {0, 5, 1}, {0, 1, 7}, {0, 7, 10}, {0, 10, 11}, {1, 5, 9}, {5, 11, 4},
      {11, 10, 2}, {10, 7, 6}, {7, 1, 8}, {3, 9, 4}, {3, 4, 2}, {3, 2, 6}, {3, 6, 8},
      {3, 8, 9}, {4, 9, 5}, {2, 4, 11}, {6, 2, 10}, {8, 6, 7}, {9, 8, 1}
    };
    // The longest edge lies at the middle of a face, 1.2 times the mean of arc 63.43° / n.
    int n = Math.max(1, (int) Math.ceil(1.2 * Math.toRadians(63.4349488) * radius / maxEdgeMm));
    Soup soup = new Soup();
    for (int[] face : faces) {
      Vec3[][] row = new Vec3[n + 1][];
      for (int i = 0; i <= n; i++) {
        row[i] = new Vec3[i + 1];
        for (int j = 0; j <= i; j++) {
          int[] weight = {n - i, i - j, j};
          Vec3 sum = Vec3.ZERO;
          // Summed in the order of the corner numbers, so that both faces at an edge agree exactly.
          for (int c : Arrays.stream(face).sorted().toArray()) {
            int k = face[0] == c ? 0 : face[1] == c ? 1 : 2;
            sum = sum.plus(new Vec3(p[c][0], p[c][1], p[c][2]).times(weight[k]));
          }
          row[i][j] = sum.unit().times(radius);
        }
      }
      for (int i = 0; i < n; i++) {
        for (int j = 0; j <= i; j++) {
          soup.add(row[i][j], row[i + 1][j], row[i + 1][j + 1]);
          if (j < i) {
            soup.add(row[i][j], row[i + 1][j + 1], row[i][j + 1]);
          }
        }
      }
    }
    return soup.mesh();
  }

  /** An ellipsoid about the origin with these half axes; edges no longer than asked for. */
  public static TriangleMesh ellipsoid(double a, double b, double c, double maxEdgeMm) {
    double[] xyz = sphere(1, maxEdgeMm / Math.max(a, Math.max(b, c))).copyOfCoordinates();
    int[] corners = sphere(1, maxEdgeMm / Math.max(a, Math.max(b, c))).copyOfCorners();
    double[] half = {a, b, c};
    for (int i = 0; i < xyz.length; i++) {
      xyz[i] *= half[i % 3];
    }
    return TriangleMesh.of(xyz, corners);
  }

  /** A torus about z: the circle of radius {@code tube} carried round at {@code radius}. */
  public static TriangleMesh torus(double radius, double tube, double maxEdgeMm) {
    double side = maxEdgeMm / Math.sqrt(2);
    int around = Math.max(3, (int) Math.ceil(2 * Math.PI * (radius + tube) / side));
    int across = Math.max(3, (int) Math.ceil(2 * Math.PI * tube / side));
    double[][] profile = new double[across + 1][];
    for (int i = 0; i <= across; i++) {
      double angle = 2 * Math.PI * (i % across) / across;
      profile[i] = new double[] {radius + tube * Math.cos(angle), tube * Math.sin(angle)};
    }
    return revolve(profile, around);
  }

  /**
   * A closed frustum from z = 0 to {@code height}; wider at the top it is the inverted cone.
   *
   * @param bottom radius at z = 0; 0 makes a point
   * @param top radius at z = height
   */
  public static TriangleMesh cone(double bottom, double top, double height, double maxEdgeMm) {
    double side = maxEdgeMm / Math.sqrt(2);
    int around = Math.max(3, (int) Math.ceil(2 * Math.PI * Math.max(bottom, top) / side));
    List<double[]> profile = new ArrayList<>();
    profile.add(new double[] {0, 0});
    if (bottom > 0) {
      line(profile, bottom, 0, side);
    }
    line(profile, top, height, side);
    if (top > 0) {
      line(profile, 0, height, side);
    }
    return revolve(profile.toArray(new double[0][]), around);
  }

  /** A closed cylinder about z from z = 0 to {@code height}. */
  public static TriangleMesh cylinder(double radius, double height, double maxEdgeMm) {
    return cone(radius, radius, height, maxEdgeMm);
  }

  /**
   * The surface that a profile sweeps round z.
   *
   * @param profile points (r, z) with the body on the left hand going along it in the (r, z) plane;
   *     begins and ends on the axis, or where it began
   * @param around number of steps round the axis
   */
  public static TriangleMesh revolve(double[][] profile, int around) {
    Soup soup = new Soup();
    Vec3[][] ring = new Vec3[profile.length][around];
    for (int i = 0; i < profile.length; i++) {
      for (int j = 0; j < around; j++) {
        double angle = 2 * Math.PI * j / around;
        double r = profile[i][0];
        // + 0.0 turns −0 into 0, so that points on the axis weld
        ring[i][j] =
            new Vec3(r * Math.cos(angle) + 0.0, r * Math.sin(angle) + 0.0, profile[i][1] + 0.0);
      }
    }
    for (int i = 0; i + 1 < profile.length; i++) {
      for (int j = 0; j < around; j++) {
        int k = (j + 1) % around;
        soup.add(ring[i][j], ring[i][k], ring[i + 1][k]);
        soup.add(ring[i][j], ring[i + 1][k], ring[i + 1][j]);
      }
    }
    return soup.mesh();
  }

  /** A closed box with its walls parallel to the axes. */
  public static TriangleMesh box(Vec3 low, Vec3 high, double maxEdgeMm) {
    double[][] profile = {
      {low.x(), low.z()}, {high.x(), low.z()}, {high.x(), high.z()}, {low.x(), high.z()}
    };
    return prism(profile, low.y(), high.y(), maxEdgeMm);
  }

  /**
   * An overhanging step: a post with a ledge on top that reaches out over a floor in +x.
   *
   * <p>The floor's top is z = 0 and spans x from −5 to 10; the post's wall is the plane x = 0; the
   * ledge reaches to x = {@code ledge} between z = {@code clear} and {@code clear} + 2; y from −8
   * to 8. So a floor point below the ledge at 0 ≤ x ≤ ledge has undercut depth ledge − x away from
   * the ends.
   */
  public static TriangleMesh step(double ledge, double clear, double maxEdgeMm) {
    double[][] profile = {
      {-5, -3},
      {10, -3},
      {10, 0},
      {0, 0},
      {0, clear},
      {ledge, clear},
      {ledge, clear + 2},
      {-5, clear + 2}
    };
    return prism(profile, -8, 8, maxEdgeMm);
  }

  /** A wall parallel to z, 2 mm thick in x, standing on z = 0. */
  public static TriangleMesh parallelWall(double height, double maxEdgeMm) {
    return box(new Vec3(-1, -5, 0), new Vec3(1, 5, height), maxEdgeMm);
  }

  /**
   * Two spheres of one radius on the x axis, their centres {@code apart}, as one mesh of two
   * bodies: neighbours that shade each other.
   */
  public static TriangleMesh twoSpheres(double radius, double apart, double maxEdgeMm) {
    TriangleMesh one = sphere(radius, maxEdgeMm);
    return join(moved(one, new Vec3(-apart / 2, 0, 0)), moved(one, new Vec3(apart / 2, 0, 0)));
  }

  /**
   * A closed prism along y.
   *
   * @param profile corners (x, z) of a simple polygon, counter-clockwise seen with x to the right
   *     and z up
   */
  public static TriangleMesh prism(double[][] profile, double y0, double y1, double maxEdgeMm) {
    double side = maxEdgeMm / Math.sqrt(2);
    List<double[]> outline = new ArrayList<>();
    outline.add(profile[0]);
    for (int i = 1; i <= profile.length; i++) {
      double[] next = profile[i % profile.length];
      line(outline, next[0], next[1], side);
    }
    outline.removeLast();
    int n = outline.size();
    int steps = Math.max(1, (int) Math.ceil((y1 - y0) / side));
    Soup soup = new Soup();
    for (int s = 0; s < steps; s++) {
      double ya = y0 + (y1 - y0) * s / steps;
      double yb = s + 1 == steps ? y1 : y0 + (y1 - y0) * (s + 1) / steps;
      for (int i = 0; i < n; i++) {
        double[] a = outline.get(i);
        double[] b = outline.get((i + 1) % n);
        Vec3 a0 = new Vec3(a[0], ya, a[1]);
        Vec3 b0 = new Vec3(b[0], ya, b[1]);
        Vec3 a1 = new Vec3(a[0], yb, a[1]);
        Vec3 b1 = new Vec3(b[0], yb, b[1]);
        soup.add(a0, b1, b0);
        soup.add(a0, a1, b1);
      }
    }
    for (int[] ear : ears(outline)) {
      Vec3[] near = new Vec3[3];
      Vec3[] far = new Vec3[3];
      for (int k = 0; k < 3; k++) {
        double[] q = outline.get(ear[k]);
        near[k] = new Vec3(q[0], y0, q[1]);
        far[k] = new Vec3(q[0], y1, q[1]);
      }
      soup.add(near[0], near[1], near[2]);
      soup.add(far[0], far[2], far[1]);
    }
    return soup.mesh();
  }

  /** The meshes side by side as one; vertices and triangles in the order given, nothing welded. */
  public static TriangleMesh join(TriangleMesh... meshes) {
    int vertices = Arrays.stream(meshes).mapToInt(TriangleMesh::vertexCount).sum();
    int triangles = Arrays.stream(meshes).mapToInt(TriangleMesh::triangleCount).sum();
    double[] xyz = new double[3 * vertices];
    int[] corners = new int[3 * triangles];
    int v = 0;
    int c = 0;
    for (TriangleMesh mesh : meshes) {
      int first = v / 3;
      for (int corner : mesh.copyOfCorners()) {
        corners[c++] = corner + first;
      }
      for (double x : mesh.copyOfCoordinates()) {
        xyz[v++] = x;
      }
    }
    return TriangleMesh.of(xyz, corners);
  }

  public static TriangleMesh moved(TriangleMesh mesh, Vec3 by) {
    return Reshape.each(mesh, by::plus);
  }

  private static void line(List<double[]> points, double x, double z, double side) {
    double[] from = points.getLast();
    int steps = Math.max(1, (int) Math.ceil(Math.hypot(x - from[0], z - from[1]) / side));
    for (int i = 1; i < steps; i++) {
      double s = (double) i / steps;
      points.add(new double[] {from[0] + s * (x - from[0]), from[1] + s * (z - from[1])});
    }
    points.add(new double[] {x, z});
  }

  /** Ear clipping that takes the fattest ear first; the outlines here have few hundred points. */
  private static List<int[]> ears(List<double[]> outline) {
    List<Integer> left = new ArrayList<>();
    for (int i = 0; i < outline.size(); i++) {
      left.add(i);
    }
    List<int[]> ears = new ArrayList<>();
    while (left.size() > 3) {
      int best = -1;
      double bestQuality = 0;
      for (int i = 0; i < left.size(); i++) {
        int a = left.get((i + left.size() - 1) % left.size());
        int b = left.get(i);
        int c = left.get((i + 1) % left.size());
        double quality = quality(outline, a, b, c);
        if (quality > bestQuality && isEar(outline, left, a, b, c)) {
          bestQuality = quality;
          best = i;
        }
      }
      if (best < 0) {
        throw new IllegalArgumentException("the outline is no simple counter-clockwise polygon");
      }
      ears.add(
          new int[] {
            left.get((best + left.size() - 1) % left.size()),
            left.get(best),
            left.get((best + 1) % left.size())
          });
      left.remove(best);
    }
    ears.add(new int[] {left.get(0), left.get(1), left.get(2)});
    return ears;
  }

  private static boolean isEar(List<double[]> outline, List<Integer> left, int a, int b, int c) {
    for (int q : left) {
      if (q != a
          && q != b
          && q != c
          && doubleArea(outline, a, b, q) >= -1e-12
          && doubleArea(outline, b, c, q) >= -1e-12
          && doubleArea(outline, c, a, q) >= -1e-12) {
        return false;
      }
    }
    return true;
  }

  private static double quality(List<double[]> outline, int a, int b, int c) {
    double longest =
        Math.max(square(outline, a, b), Math.max(square(outline, b, c), square(outline, c, a)));
    double quality = doubleArea(outline, a, b, c) / longest;
    return quality > 1e-9 ? quality : 0;
  }

  private static double square(List<double[]> outline, int a, int b) {
    double dx = outline.get(a)[0] - outline.get(b)[0];
    double dz = outline.get(a)[1] - outline.get(b)[1];
    return dx * dx + dz * dz;
  }

  private static double doubleArea(List<double[]> outline, int a, int b, int c) {
    double[] p = outline.get(a);
    double[] q = outline.get(b);
    double[] r = outline.get(c);
    return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  }

  /** Gathers triangles, welds corners of exactly equal place, drops collapsed ones. */
  private static final class Soup {
    private final Map<Vec3, Integer> numbers = new HashMap<>();
    private final List<Vec3> vertices = new ArrayList<>();
    private final List<int[]> triangles = new ArrayList<>();

    void add(Vec3 a, Vec3 b, Vec3 c) {
      int[] corners = {number(a), number(b), number(c)};
      if (corners[0] != corners[1] && corners[1] != corners[2] && corners[2] != corners[0]) {
        triangles.add(corners);
      }
    }

    private int number(Vec3 p) {
      Integer known = numbers.putIfAbsent(p, vertices.size());
      if (known != null) {
        return known;
      }
      vertices.add(p);
      return vertices.size() - 1;
    }

    TriangleMesh mesh() {
      double[] xyz = new double[3 * vertices.size()];
      int[] corners = new int[3 * triangles.size()];
      for (int v = 0; v < vertices.size(); v++) {
        xyz[3 * v] = vertices.get(v).x();
        xyz[3 * v + 1] = vertices.get(v).y();
        xyz[3 * v + 2] = vertices.get(v).z();
      }
      for (int t = 0; t < triangles.size(); t++) {
        System.arraycopy(triangles.get(t), 0, corners, 3 * t, 3);
      }
      return TriangleMesh.of(xyz, corners);
    }
  }
}
