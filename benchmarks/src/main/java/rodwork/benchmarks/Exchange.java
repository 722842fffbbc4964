package rodwork.benchmarks;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import rodwork.geometry.mesh.TriangleMesh;

/** The plain binary files through which all who are measured get the same numbers. */
final class Exchange {
  private Exchange() {}

  /**
   * Vertex count, triangle count, then x y z of each vertex as floats [mm], then the corners; all
   * little-endian, 4 bytes each.
   */
  static void writeMesh(Path file, TriangleMesh mesh) throws IOException {
    double[] xyz = mesh.copyOfCoordinates();
    int[] corners = mesh.copyOfCorners();
    byte[] bytes = new byte[8 + 4 * xyz.length + 4 * corners.length];
    ByteBuffer out = little(bytes);
    out.putInt(mesh.vertexCount()).putInt(mesh.triangleCount());
    for (double c : xyz) {
      out.putFloat((float) c);
    }
    out.asIntBuffer().put(corners);
    Files.write(file, bytes);
  }

  static TriangleMesh readMesh(Path file) throws IOException {
    ByteBuffer in = little(Files.readAllBytes(file));
    double[] xyz = new double[3 * in.getInt()];
    int[] corners = new int[3 * in.getInt()];
    for (int i = 0; i < xyz.length; i++) {
      xyz[i] = in.getFloat();
    }
    in.asIntBuffer().get(corners);
    return TriangleMesh.of(xyz, corners);
  }

  static void writeFloats(Path file, float[] values) throws IOException {
    byte[] bytes = new byte[4 * values.length];
    little(bytes).asFloatBuffer().put(values);
    Files.write(file, bytes);
  }

  static float[] readFloats(Path file) throws IOException {
    FloatBuffer in = little(Files.readAllBytes(file)).asFloatBuffer();
    float[] values = new float[in.remaining()];
    in.get(values);
    return values;
  }

  private static ByteBuffer little(byte[] bytes) {
    return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
  }
}
