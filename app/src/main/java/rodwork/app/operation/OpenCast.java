package rodwork.app.operation;

import java.nio.file.Path;
import rodwork.geometry.Watch;
import rodwork.geometry.intake.Cast;
import rodwork.geometry.intake.Intake;
import rodwork.geometry.intake.IntakeOptions;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.io.RawMesh;

/** Takes a scan in, and finds its base and its arch frame. */
public final class OpenCast {
  private OpenCast() {}

  /**
   * Opens a file.
   *
   * @throws rodwork.geometry.Refusal if it cannot be read or mended; a frame that is not sure is no
   *     refusal here
   */
  public static OpenedCast of(Path file, CastOptions options, Watch watch) {
    return of(MeshFiles.read(file, watch), options, watch);
  }

  /** Opens a file that is in memory; {@code name} is what messages call it. */
  public static OpenedCast of(byte[] content, String name, CastOptions options, Watch watch) {
    return of(MeshFiles.read(content, name, watch), options, watch);
  }

  /** Opens what a reader has read, or what was made without a file. */
  static OpenedCast of(RawMesh raw, CastOptions options, Watch watch) {
    return understand(takeIn(raw, options, watch), options);
  }

  /** Takes a file in and reports, without asking for an arch. */
  public static Cast takeIn(Path file, CastOptions options, Watch watch) {
    return takeIn(MeshFiles.read(file, watch), options, watch);
  }

  /** The same with a file that is in memory; {@code name} is what messages call it. */
  public static Cast takeIn(byte[] content, String name, CastOptions options, Watch watch) {
    return takeIn(MeshFiles.read(content, name, watch), options, watch);
  }

  private static Cast takeIn(RawMesh raw, CastOptions options, Watch watch) {
    IntakeOptions usual = IntakeOptions.usual();
    return Intake.of(raw, options.unit().map(usual::withUnit).orElse(usual), watch);
  }

  private static OpenedCast understand(Cast cast, CastOptions options) {
    return OpenedCast.of(cast.report().file(), cast, options.jaw(), options.hints());
  }
}
