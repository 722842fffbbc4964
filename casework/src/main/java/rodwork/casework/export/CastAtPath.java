package rodwork.casework.export;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.survey.Survey;

/**
 * The cast at its path, as other programs and printers take it: STL and PLY of the cast, survey
 * lines and gauge marks as DXF and OBJ, and the matrix back to the scan.
 */
public final class CastAtPath {
  public static final String FORMAT = "rodwork cast at path";

  private CastAtPath() {}

  /**
   * Writes the files {@code cast.stl}, {@code cast.ply}, {@code lines.dxf}, {@code lines.obj} and
   * {@code path.json} into a folder, which is made where it is not there.
   *
   * @param scan name of the scan file
   * @param scanHash its SHA-256, 64 hexadecimal digits
   * @throws rodwork.geometry.Refusal if they cannot be written
   */
  public static void write(
      Path folder, Survey survey, PathFrame frame, String scan, String scanHash, Watch watch) {
    TriangleMesh mesh = frame.mesh(survey.surveyor().topology().mesh());
    List<NamedCurve> curves = NamedCurve.of(survey, frame);
    try {
      Files.createDirectories(folder);
      MeshFiles.write(folder.resolve("cast.stl"), mesh, watch);
      MeshFiles.writePly(folder.resolve("cast.ply"), mesh, SurveyColours.of(mesh, curves), watch);
      Files.writeString(folder.resolve("lines.dxf"), CurveFiles.dxf(curves));
      Files.writeString(folder.resolve("lines.obj"), CurveFiles.obj(curves));
      Files.write(
          folder.resolve("path.json"),
          (json(frame, scan, scanHash).toPrettyString() + "\n").getBytes(StandardCharsets.UTF_8));
    } catch (IOException failure) {
      throw ExportProblem.UNWRITABLE.with(folder, failure);
    }
  }

  private static ObjectNode json(PathFrame frame, String scan, String scanHash) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    json.put("version", 1);
    json.put("scan", scan);
    json.put("scanSha256", scanHash);
    json.put("unit", "mm");
    json.put(
        "frame",
        "+Z: withdrawal axis, from tissue to the occlusal side; +Y: front; X = Y x Z; origin: that of the"
            + " arch frame, near the middle of the arch");
    json.put("convention", "rows of a matrix for column vectors: path = scanToPath * (x, y, z, 1)");
    json.set("scanToPath", matrix(frame.rowMajor()));
    json.set("pathToScan", matrix(inverse(frame.rowMajor())));
    return json;
  }

  /** Of a rigid motion: the transpose, and the origin turned back. */
  static double[] inverse(double[] m) {
    double[] back = new double[16];
    for (int i = 0; i < 3; i++) {
      for (int k = 0; k < 3; k++) {
        back[4 * i + k] = m[4 * k + i];
        back[4 * i + 3] -= m[4 * k + i] * m[4 * k + 3];
      }
    }
    back[15] = 1;
    return back;
  }

  private static ArrayNode matrix(double[] m) {
    ArrayNode rows = JsonNodeFactory.instance.arrayNode();
    for (int i = 0; i < 4; i++) {
      ArrayNode row = rows.addArray();
      for (int k = 0; k < 4; k++) {
        row.add(m[4 * i + k] + 0.0);
      }
    }
    return rows;
  }
}
