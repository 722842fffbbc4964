package rodwork.app.report;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.app.operation.OpposingScan;
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
   * @param opposing its clearance is written as {@code float clearance_mm}, NaN where it is not
   *     known; null: none was given
   * @throws rodwork.geometry.Refusal {@code file-unwritable}
   */
  public static void write(
      Path file, SurveyedCast surveyed, @Nullable OpposingScan opposing, Watch watch) {
    List<VertexProperty> properties = new ArrayList<>();
    properties.add(new VertexProperty.OfFloat("undercut_mm", surveyed.survey().copyOfDepths()));
    properties.add(new VertexProperty.OfByte("flags", surveyed.survey().copyOfFlags(watch)));
    if (opposing != null) {
      properties.add(new VertexProperty.OfFloat("clearance_mm", opposing.clearance().map(watch)));
    }
    MeshFiles.writePly(file, surveyed.cast().mesh(), properties, watch);
  }
}
