package rodwork.geometry.io;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Writes STL. Binary STL holds floats, so coordinates are rounded to about 7 digits; the text holds
 * them as they are. Either knows no shared vertices: readers weld equal corners again.
 */
final class StlWriter {
  private static final String HEADER = "Rodwork, lengths in mm";

  private StlWriter() {}

  static void writeBinary(OutputStream out, TriangleMesh mesh, Watch watch) throws IOException {
    int triangles = mesh.triangleCount();
    BytesOut records = new BytesOut(out, watch);
    records
        .room(StlBinaryReader.HEADER_BYTES, 0)
        .put(Arrays.copyOf(HEADER.getBytes(StandardCharsets.US_ASCII), 80))
        .putInt(triangles);
    for (int t = 0; t < triangles; t++) {
      ByteBuffer bytes = records.room(StlBinaryReader.RECORD_BYTES, (double) t / triangles);
      put(bytes, normal(mesh, t));
      for (int k = 0; k < 3; k++) {
        put(bytes, mesh.vertex(mesh.corner(t, k)));
      }
      bytes.putShort((short) 0);
    }
    records.flush();
  }

  static void writeText(OutputStream out, TriangleMesh mesh, Watch watch) throws IOException {
    TextOut text = new TextOut(out, watch);
    int triangles = mesh.triangleCount();
    text.put("solid rodwork_mm\n");
    for (int t = 0; t < triangles; t++) {
      put(text.put(" facet normal"), normal(mesh, t));
      text.put("  outer loop\n");
      for (int k = 0; k < 3; k++) {
        put(text.put("   vertex"), mesh.vertex(mesh.corner(t, k)));
      }
      text.put("  endloop\n endfacet\n");
      text.end((double) t / triangles);
    }
    text.put("endsolid rodwork_mm\n").flush();
  }

  private static void put(TextOut text, Vec3 v) {
    text.put(" ").put(v.x()).put(" ").put(v.y()).put(" ").put(v.z()).put("\n");
  }

  /** The outer side of a triangle; zero where it has no area, as the format's readers expect. */
  private static Vec3 normal(TriangleMesh mesh, int triangle) {
    Vec3 n = mesh.doubleAreaNormal(triangle);
    double length = n.length();
    return length > 0 && length < Double.POSITIVE_INFINITY ? n.times(1 / length) : Vec3.ZERO;
  }

  private static void put(ByteBuffer bytes, Vec3 v) {
    bytes.putFloat((float) v.x()).putFloat((float) v.y()).putFloat((float) v.z());
  }
}
