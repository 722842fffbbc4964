package rodwork.app.report;

import java.nio.file.Path;
import java.util.List;
import rodwork.app.operation.SurveyedCast;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.io.VertexProperty;

/**
 * The undercut field as binary little-endian PLY: vertices and faces in the file's order, exact
 * duplicates welded; {@code float undercut_mm}, {@code uchar flags} at each vertex.
 */
public final class FieldFile {
  private FieldFile() {}

  /**
   * Writes the field.
   *
   * @throws rodwork.geometry.Refusal {@code file-unwritable}
   */
  public static void write(Path file, SurveyedCast surveyed, Watch watch) {
    MeshFiles.writePly(
        file,
        surveyed.cast().mesh(),
        List.of(
            new VertexProperty.OfFloat("undercut_mm", surveyed.survey().copyOfDepths()),
            new VertexProperty.OfByte("flags", surveyed.survey().copyOfFlags(watch))),
        watch);
  }
}
