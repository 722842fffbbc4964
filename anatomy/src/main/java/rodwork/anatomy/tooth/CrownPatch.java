package rodwork.anatomy.tooth;

import java.util.Arrays;
import java.util.BitSet;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The triangles of one crown: the largest connected piece that has its label. Immutable.
 *
 * @param topology of the whole cast
 * @param triangles in rising order
 * @param within one bit a triangle of the cast
 * @param areaMm2 of the patch
 * @param strayMm2 area of smaller pieces with the same label, left out
 * @param centroid of its area [mm]
 */
record CrownPatch(
    MeshTopology topology,
    int[] triangles,
    BitSet within,
    double areaMm2,
    double strayMm2,
    Vec3 centroid) {

  /** The patches of all labels, at the index of their FDI number; null where there is none. */
  static CrownPatch[] all(MeshTopology topology, ToothLabels labels) {
    TriangleMesh mesh = topology.mesh();
    int n = mesh.triangleCount();
    int[] piece = new int[n];
    Arrays.fill(piece, -1);
    int[] stack = new int[n];
    CrownPatch[] best = new CrownPatch[49];
    double[] allArea = new double[49];
    for (int seed = 0; seed < n; seed++) {
      int label = labels.of(seed);
      if (label == ToothLabels.GUM || piece[seed] >= 0) {
        continue;
      }
      int count = 1;
      stack[0] = seed;
      piece[seed] = seed;
      double area = 0;
      double x = 0;
      double y = 0;
      double z = 0;
      for (int i = 0; i < count; i++) {
        int t = stack[i];
        double a = mesh.area(t);
        area += a;
        Vec3 c = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
        x += a * c.x();
        y += a * c.y();
        z += a * c.z();
        for (int k = 0; k < 3; k++) {
          int other = topology.neighbour(t, k);
          if (other >= 0 && piece[other] < 0 && labels.of(other) == label) {
            piece[other] = seed;
            stack[count++] = other;
          }
        }
      }
      allArea[label] += area;
      if (area > 0 && (best[label] == null || area > best[label].areaMm2)) {
        int[] triangles = Arrays.copyOf(stack, count);
        Arrays.sort(triangles);
        best[label] =
            new CrownPatch(
                topology, triangles, new BitSet(), area, 0, new Vec3(x / area, y / area, z / area));
      }
    }
    for (int label = 0; label < best.length; label++) {
      CrownPatch found = best[label];
      if (found != null) {
        BitSet within = new BitSet(n);
        for (int t : found.triangles) {
          within.set(t);
        }
        best[label] =
            new CrownPatch(
                topology,
                found.triangles,
                within,
                found.areaMm2,
                allArea[label] - found.areaMm2,
                found.centroid);
      }
    }
    return best;
  }

  /** Vertices of which every triangle belongs to the crown, in rising order. */
  int[] innerVertices() {
    TriangleMesh mesh = topology.mesh();
    BitSet all = new BitSet();
    BitSet border = new BitSet();
    for (int t : triangles) {
      for (int k = 0; k < 3; k++) {
        all.set(mesh.corner(t, k));
        int other = topology.neighbour(t, k);
        if (other < 0 || !within.get(other)) {
          border.set(mesh.corner(t, k));
          border.set(mesh.corner(t, (k + 1) % 3));
        }
      }
    }
    BitSet inner = (BitSet) all.clone();
    inner.andNot(border);
    return (inner.isEmpty() ? all : inner).stream().toArray();
  }
}
