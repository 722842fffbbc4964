package rodwork.geometry.overhang;

import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The edges of a mesh as flat arrays for the loops of this package, made once a mesh.
 *
 * <p>{@code ends[2e], ends[2e + 1]} are the vertices of edge e; {@code opposite[2e], opposite[2e +
 * 1]} the corners across it in its first and second triangle, −1 where there is no second.
 */
final class EdgeTable {
  final int count;
  final int[] corners;
  final int[] ends;
  final int[] opposite;
  final boolean[] nonManifold;
  final double meanLengthMm;

  EdgeTable(MeshTopology topology) {
    TriangleMesh mesh = topology.mesh();
    this.count = topology.edgeCount();
    this.corners = mesh.copyOfCorners();
    this.ends = new int[2 * count];
    this.opposite = new int[2 * count];
    this.nonManifold = new boolean[count];
    double sum = 0;
    for (int e = 0; e < count; e++) {
      int a = topology.edgeVertex(e, 0);
      int b = topology.edgeVertex(e, 1);
      ends[2 * e] = a;
      ends[2 * e + 1] = b;
      nonManifold[e] = topology.isNonManifold(e);
      sum += mesh.vertex(a).distance(mesh.vertex(b));
      for (int side = 0; side < 2; side++) {
        int t = topology.edgeTriangle(e, side);
        int across = -1;
        for (int k = 0; t >= 0 && k < 3; k++) {
          int v = corners[3 * t + k];
          if (v != a && v != b) {
            across = v;
          }
        }
        opposite[2 * e + side] = across;
      }
    }
    this.meanLengthMm = count == 0 ? 1 : sum / count;
  }
}
