package rodwork.geometry.mesh;

import java.util.Arrays;

/**
 * The connected parts of a mesh: triangles that share an edge belong together, those that share
 * only a vertex do not.
 *
 * <p>Components are numbered from 0 in the order of their first triangle. A triangle with two equal
 * corners has no edges and is a component of its own.
 */
public final class Components {
  private final int[] ofTriangle;
  private final int[] sizes;
  private final double[] areas;

  private Components(int[] ofTriangle, int[] sizes, double[] areas) {
    this.ofTriangle = ofTriangle;
    this.sizes = sizes;
    this.areas = areas;
  }

  public static Components of(MeshTopology topology) {
    TriangleMesh mesh = topology.mesh();
    int triangles = mesh.triangleCount();
    int[] ofTriangle = new int[triangles];
    Arrays.fill(ofTriangle, -1);
    int[] parent = new int[triangles];
    for (int t = 0; t < triangles; t++) {
      parent[t] = t;
    }
    // By triangle and not by edge: the third triangle at an edge is known to itself alone.
    for (int t = 0; t < triangles; t++) {
      for (int k = 0; k < 3; k++) {
        int other = topology.neighbour(t, k);
        if (other >= 0 && other != t) {
          int a = root(parent, t);
          int b = root(parent, other);
          // The lower number becomes the root, which keeps the order of first triangles.
          if (a < b) {
            parent[b] = a;
          } else {
            parent[a] = b;
          }
        }
      }
    }
    int count = 0;
    for (int t = 0; t < triangles; t++) {
      int root = root(parent, t);
      ofTriangle[t] = root == t ? count++ : ofTriangle[root];
    }
    int[] sizes = new int[count];
    double[] areas = new double[count];
    for (int t = 0; t < triangles; t++) {
      sizes[ofTriangle[t]]++;
      areas[ofTriangle[t]] += mesh.area(t);
    }
    return new Components(ofTriangle, sizes, areas);
  }

  private static int root(int[] parent, int t) {
    int at = t;
    while (parent[at] != at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  }

  public int count() {
    return sizes.length;
  }

  /** The component of a triangle. */
  public int of(int triangle) {
    return ofTriangle[triangle];
  }

  /** Number of triangles in a component. */
  public int size(int component) {
    return sizes[component];
  }

  /** Area of a component [mm²]. */
  public double areaMm2(int component) {
    return areas[component];
  }

  /** The component of greatest area; of equals the first; −1 in an empty mesh. */
  public int largest() {
    int best = -1;
    for (int c = 0; c < sizes.length; c++) {
      if (best < 0 || areas[c] > areas[best]) {
        best = c;
      }
    }
    return best;
  }
}
