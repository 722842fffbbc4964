package rodwork.geometry.io;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Writes binary little-endian PLY: vertices and faces in the mesh's order, nothing rounded.
 * Coordinates are {@code float} where all of them are floats already, else {@code double}.
 */
final class PlyWriter {
  private static final int FACE_BYTES = 13;

  private PlyWriter() {}

  static void write(
      OutputStream out, TriangleMesh mesh, List<VertexProperty> properties, Watch watch)
      throws IOException {
    Set<String> names = new HashSet<>();
    for (VertexProperty property : properties) {
      if (property.count() != mesh.vertexCount() || !names.add(property.name())) {
        throw new IllegalArgumentException(
            property.name() + ": one value a vertex and one property a name are needed");
      }
    }
    boolean floats = allFloats(mesh);
    out.write(header(mesh, properties, floats).getBytes(StandardCharsets.US_ASCII));
    BytesOut records = new BytesOut(out, watch);
    int recordBytes = 24 + 4 * properties.size();
    for (int v = 0; v < mesh.vertexCount(); v++) {
      ByteBuffer bytes = records.room(recordBytes, 0.5 * v / mesh.vertexCount());
      put(bytes, mesh.x(v), floats);
      put(bytes, mesh.y(v), floats);
      put(bytes, mesh.z(v), floats);
      for (VertexProperty property : properties) {
        switch (property) {
          case VertexProperty.OfFloat p -> bytes.putFloat(p.values()[v]);
          case VertexProperty.OfByte p -> bytes.put(p.values()[v]);
        }
      }
    }
    for (int t = 0; t < mesh.triangleCount(); t++) {
      ByteBuffer bytes = records.room(FACE_BYTES, 0.5 + 0.5 * t / mesh.triangleCount());
      bytes.put((byte) 3);
      bytes.putInt(mesh.corner(t, 0)).putInt(mesh.corner(t, 1)).putInt(mesh.corner(t, 2));
    }
    records.flush();
  }

  private static String header(TriangleMesh mesh, List<VertexProperty> properties, boolean floats) {
    String type = floats ? "float" : "double";
    StringBuilder text = new StringBuilder();
    text.append("ply\nformat binary_little_endian 1.0\ncomment Rodwork, lengths in mm\n");
    text.append("element vertex ").append(mesh.vertexCount()).append('\n');
    for (String axis : List.of("x", "y", "z")) {
      text.append("property ").append(type).append(' ').append(axis).append('\n');
    }
    for (VertexProperty property : properties) {
      String kind = property instanceof VertexProperty.OfFloat ? "float " : "uchar ";
      text.append("property ").append(kind).append(property.name()).append('\n');
    }
    text.append("element face ").append(mesh.triangleCount()).append('\n');
    text.append("property list uchar int vertex_indices\nend_header\n");
    return text.toString();
  }

  private static void put(ByteBuffer bytes, double value, boolean asFloat) {
    if (asFloat) {
      bytes.putFloat((float) value);
    } else {
      bytes.putDouble(value);
    }
  }

  private static boolean allFloats(TriangleMesh mesh) {
    for (int v = 0; v < mesh.vertexCount(); v++) {
      if ((float) mesh.x(v) != mesh.x(v)
          || (float) mesh.y(v) != mesh.y(v)
          || (float) mesh.z(v) != mesh.z(v)) {
        return false;
      }
    }
    return true;
  }
}
