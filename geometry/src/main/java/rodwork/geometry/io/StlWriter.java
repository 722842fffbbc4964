package rodwork.geometry.io;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;

/** Writes STL; its numbers are floats, so coordinates are rounded to about 7 digits. */
final class StlWriter {
  private static final String HEADER = "Rodwork, lengths in mm";
  private static final int BATCH_RECORDS = 1024;

  private StlWriter() {}

  static void writeBinary(OutputStream out, TriangleMesh mesh, Watch watch) throws IOException {
    int triangles = mesh.triangleCount();
    ByteBuffer bytes =
        ByteBuffer.allocate(StlBinaryReader.RECORD_BYTES * BATCH_RECORDS)
            .order(ByteOrder.LITTLE_ENDIAN);
    bytes.put(HEADER.getBytes(StandardCharsets.US_ASCII)).position(80).putInt(triangles);
    for (int t = 0; t < triangles; t++) {
      if (bytes.remaining() < StlBinaryReader.RECORD_BYTES) {
        watch.check();
        watch.progress("writing", (double) t / triangles);
        out.write(bytes.array(), 0, bytes.position());
        bytes.clear();
      }
      put(bytes, normal(mesh, t));
      for (int k = 0; k < 3; k++) {
        put(bytes, mesh.vertex(mesh.corner(t, k)));
      }
      bytes.putShort((short) 0);
    }
    out.write(bytes.array(), 0, bytes.position());
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
