package rodwork.app.operation;

import java.nio.file.Path;
import rodwork.app.AppRefusal;
import rodwork.geometry.Watch;
import rodwork.geometry.io.FileFacts;
import rodwork.geometry.io.LengthUnit;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.io.RawMesh;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Converts a mesh file into another format, triangle by triangle; nothing is mended.
 *
 * <p>Formats that declare a unit are brought to mm; of all others the numbers stay as they are.
 */
public final class ConvertMesh {
  private ConvertMesh() {}

  /**
   * What was written.
   *
   * @param facts what was noticed while reading
   * @param vertices how many vertices were written
   * @param triangles how many triangles were written
   * @param coloursLeftOut whether the file had colours, which are not written
   */
  public record Converted(FileFacts facts, int vertices, int triangles, boolean coloursLeftOut) {}

  /**
   * Reads one file and writes the other; a failure leaves an old file as it was.
   *
   * @throws rodwork.geometry.Refusal if the one cannot be read or the other not written
   */
  public static Converted run(Path from, Path to, Watch watch) {
    MeshFiles.formatOf(to);
    RawMesh raw = MeshFiles.read(from, watch);
    TriangleMesh mesh = inMillimetres(raw);
    MeshFiles.write(to, mesh, watch);
    return new Converted(
        raw.facts(),
        mesh.vertexCount(),
        mesh.triangleCount(),
        raw.hasVertexColours() || raw.hasFaceColours());
  }

  private static TriangleMesh inMillimetres(RawMesh raw) {
    if (!raw.allFinite()) {
      throw AppRefusal.NOT_FINITE.with(raw.facts().name());
    }
    double scale = raw.facts().declaredUnit().map(LengthUnit::millimetres).orElse(1.0);
    if (scale == 1) {
      return raw.toMesh();
    }
    double[] xyz = raw.copyOfCoordinates();
    for (int i = 0; i < xyz.length; i++) {
      xyz[i] *= scale;
    }
    return TriangleMesh.of(xyz, raw.copyOfCorners());
  }
}
