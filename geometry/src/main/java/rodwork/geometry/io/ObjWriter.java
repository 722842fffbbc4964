package rodwork.geometry.io;

import java.io.IOException;
import java.io.OutputStream;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;

/** Writes OBJ: vertices and triangles in the mesh's order, nothing rounded. */
final class ObjWriter {
  private ObjWriter() {}

  static void write(OutputStream out, TriangleMesh mesh, Watch watch) throws IOException {
    TextOut text = new TextOut(out, watch);
    text.put("# Rodwork, lengths in mm\n");
    int vertices = mesh.vertexCount();
    for (int v = 0; v < vertices; v++) {
      text.put("v ").put(mesh.x(v)).put(" ").put(mesh.y(v)).put(" ").put(mesh.z(v)).put("\n");
      text.end(0.5 * v / vertices);
    }
    int triangles = mesh.triangleCount();
    for (int t = 0; t < triangles; t++) {
      text.put("f");
      for (int k = 0; k < 3; k++) {
        text.put(" ").put(mesh.corner(t, k) + 1L);
      }
      text.put("\n");
      text.end(0.5 + 0.5 * t / triangles);
    }
    text.flush();
  }
}
