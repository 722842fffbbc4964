package rodwork.app.command;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.OpposingScan;
import rodwork.geometry.Watch;

/** The scan of the other jaw, and how it bites. */
final class OpposingMixin {
  @Spec(Spec.Target.MIXEE)
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @Option(
      names = "--opposing",
      paramLabel = "SCAN",
      description =
          "The scan of the opposing jaw, in the frame of CAST as they bite: the room to it is told;"
              + " not known without it.")
  private @Nullable Path opposing;

  @Option(
      names = "--bite",
      paramLabel = "SCAN",
      description =
          "A scan of both jaws in occlusion, which lays the opposing scan over CAST where the two"
              + " share no frame.")
  private @Nullable Path bite;

  /** Whether anything was said of it. */
  boolean given() {
    return opposing != null || bite != null;
  }

  /** The opposing scan over a cast; null: none was given. */
  @Nullable OpposingScan over(OpenedCast cast, Watch watch) {
    Path other = opposing;
    Path both = bite;
    if (other == null) {
      if (both != null) {
        throw new ParameterException(
            spec.commandLine(), "--bite needs --opposing, the scan of the opposing jaw");
      }
      return null;
    }
    return OpposingScan.of(
        cast,
        OpenCast.of(other, CastOptions.NONE, watch),
        both == null ? null : OpenCast.takeIn(both, CastOptions.NONE, watch),
        watch);
  }
}
