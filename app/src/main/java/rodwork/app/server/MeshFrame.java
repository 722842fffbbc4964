package rodwork.app.server;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import rodwork.anatomy.AnatomicSurface;
import rodwork.geometry.mesh.TriangleMesh;

/** The binary mesh of docs/protocol.md. */
final class MeshFrame {
  private static final int MAGIC = 0x314D5752;
  private static final int HEAD_BYTES = 16;

  private MeshFrame() {}

  static byte[] of(TriangleMesh mesh, AnatomicSurface surface) {
    int vertices = mesh.vertexCount();
    int triangles = mesh.triangleCount();
    ByteBuffer bytes =
        ByteBuffer.allocate(Math.addExact(HEAD_BYTES + 12 * vertices, 13 * triangles))
            .order(ByteOrder.LITTLE_ENDIAN);
    bytes.putInt(MAGIC).putInt(vertices).putInt(triangles).putInt(0);
    for (int v = 0; v < vertices; v++) {
      bytes.putFloat((float) mesh.x(v)).putFloat((float) mesh.y(v)).putFloat((float) mesh.z(v));
    }
    for (int t = 0; t < triangles; t++) {
      bytes.putInt(mesh.corner(t, 0)).putInt(mesh.corner(t, 1)).putInt(mesh.corner(t, 2));
    }
    for (int t = 0; t < triangles; t++) {
      bytes.put((byte) (surface.isBase(t) ? 1 : 0));
    }
    return bytes.array();
  }
}
