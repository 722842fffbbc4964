package rodwork.anatomy.teeth;

import java.util.Arrays;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * A smooth mesh of four times the triangles (Loop, "Smooth subdivision surfaces based on
 * triangles", University of Utah, 1987): those of triangle t are 4t to 4t + 3.
 */
final class LoopSubdivision {
  private LoopSubdivision() {}

  static TriangleMesh of(TriangleMesh mesh) {
    MeshTopology topology = MeshTopology.of(mesh);
    int vertices = mesh.vertexCount();
    int edges = topology.edgeCount();
    Vec3[] at = new Vec3[vertices + edges];
    Vec3[] around = new Vec3[vertices];
    Vec3[] onRim = new Vec3[vertices];
    int[] valence = new int[vertices];
    int[] rims = new int[vertices];
    Arrays.fill(around, Vec3.ZERO);
    Arrays.fill(onRim, Vec3.ZERO);
    for (int e = 0; e < edges; e++) {
      int[] ends = {topology.edgeVertex(e, 0), topology.edgeVertex(e, 1)};
      Vec3 both = mesh.vertex(ends[0]).plus(mesh.vertex(ends[1]));
      boolean rim = topology.edgeTriangle(e, 1) < 0;
      for (int k = 0; k < 2; k++) {
        Vec3 other = mesh.vertex(ends[1 - k]);
        around[ends[k]] = around[ends[k]].plus(other);
        valence[ends[k]]++;
        onRim[ends[k]] = rim ? onRim[ends[k]].plus(other) : onRim[ends[k]];
        rims[ends[k]] += rim ? 1 : 0;
      }
      Vec3 across = Vec3.ZERO;
      for (int side = 0; side < 2 && !rim; side++) {
        int t = topology.edgeTriangle(e, side);
        Vec3 all = mesh.pointOn(t, 1.0 / 3, 1.0 / 3).times(3);
        across = across.plus(all.minus(both));
      }
      at[vertices + e] = rim ? both.times(0.5) : both.times(3.0 / 8).plus(across.times(1.0 / 8));
    }
    for (int v = 0; v < vertices; v++) {
      Vec3 here = mesh.vertex(v);
      if (rims[v] == 2) {
        at[v] = here.times(0.75).plus(onRim[v].times(0.125));
      } else if (rims[v] > 0 || valence[v] == 0) {
        at[v] = here;
      } else {
        double c = 3.0 / 8 + Math.cos(2 * Math.PI / valence[v]) / 4;
        double share = (5.0 / 8 - c * c) / valence[v];
        at[v] = here.times(1 - valence[v] * share).plus(around[v].times(share));
      }
    }
    double[] xyz = new double[3 * at.length];
    for (int v = 0; v < at.length; v++) {
      xyz[3 * v] = at[v].x();
      xyz[3 * v + 1] = at[v].y();
      xyz[3 * v + 2] = at[v].z();
    }
    int[] corners = new int[12 * mesh.triangleCount()];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      int a = vertices + topology.triangleEdge(t, 0);
      int b = vertices + topology.triangleEdge(t, 1);
      int c = vertices + topology.triangleEdge(t, 2);
      int[] four = {
        mesh.corner(t, 0), a, c, mesh.corner(t, 1), b, a, mesh.corner(t, 2), c, b, a, b, c
      };
      System.arraycopy(four, 0, corners, 12 * t, 12);
    }
    return TriangleMesh.of(xyz, corners);
  }
}
