package rodwork.app.command;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.app.operation.CastOptions;
import rodwork.geometry.Vec3;
import rodwork.geometry.io.LengthUnit;

/** The cast that a command works on, and what is said about it. */
final class CastMixin {
  @Parameters(paramLabel = "CAST", description = ScanFile.FORMATS)
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private Path file;

  @Option(
      names = "--jaw",
      paramLabel = "upper|lower",
      converter = JawOption.class,
      description = "Which arch it is; its shape cannot tell surely.")
  private @Nullable Jaw jaw;

  @Option(
      names = "--up",
      paramLabel = "X,Y,Z",
      converter = Triple.class,
      description =
          "Direction to the occlusal side in the scan's own frame, instead of finding it.")
  private @Nullable Vec3 up;

  @Option(
      names = "--front",
      paramLabel = "X,Y,Z",
      converter = Triple.class,
      description = "Direction to the front in the scan's own frame, instead of finding it.")
  private @Nullable Vec3 front;

  @Option(
      names = "--unit",
      paramLabel = "mm|cm|m|in",
      converter = UnitOption.class,
      description = "Unit of length of the file, instead of finding it.")
  private @Nullable LengthUnit unit;

  Path file() {
    return file;
  }

  CastOptions options() {
    return new CastOptions(
        jaw == null ? Jaw.UNKNOWN : jaw, new FrameHints(up, front), Optional.ofNullable(unit));
  }
}
