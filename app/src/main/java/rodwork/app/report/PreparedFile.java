package rodwork.app.report;

import java.nio.file.Path;
import rodwork.app.operation.MakePlan;
import rodwork.design.cut.PreparedCast;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;

/** The cast with the cuts of its mouth preparation, in the frame of the scan. */
public final class PreparedFile {
  private PreparedFile() {}

  /**
   * Writes it; the ending of the name says in which format.
   *
   * @throws rodwork.geometry.Refusal if the format is not known or the file cannot be written
   */
  public static void write(Path file, MakePlan.Planned planned, Watch watch) {
    MeshFiles.write(
        file,
        PreparedCast.mesh(planned.judged().teeth().arch().mesh(), planned.preparation().cuts()),
        watch);
  }
}
