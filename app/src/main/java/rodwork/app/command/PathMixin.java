package rodwork.app.command;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import rodwork.anatomy.Jaw;
import rodwork.app.operation.WantedPath;
import rodwork.geometry.Vec3;
import rodwork.survey.Tilt;

/** The path that a command works at: an axis, a tilt, or without either the reference. */
final class PathMixin {
  @Spec(Spec.Target.MIXEE)
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  /** One way to say the path. */
  static final class PathChoice {
    @Option(
        names = "--axis",
        paramLabel = "X,Y,Z",
        converter = Triple.class,
        description =
            "Withdrawal axis, from tissue to the occlusal side, in the scan file's own frame.")
    @Nullable Vec3 axis;

    @Option(
        names = "--tilt",
        paramLabel = "ANTERIOR,RIGHT",
        converter = TiltOption.class,
        description = {
          "Tilt in degrees against the reference orientation: ANTERIOR > 0 lowers the front of the"
              + " cast, RIGHT > 0 the patient's right side.",
          "A RIGHT other than 0 needs --jaw."
        })
    @Nullable Tilt tilt;
  }

  @ArgGroup(exclusive = true, multiplicity = "0..1")
  private @Nullable PathChoice path;

  boolean given() {
    return path != null;
  }

  WantedPath wanted(Jaw jaw) {
    if (path == null) {
      return WantedPath.reference();
    }
    if (path.axis != null) {
      return new WantedPath.AlongAxis(path.axis);
    }
    Tilt tilt = path.tilt;
    if (tilt == null) {
      return WantedPath.reference();
    }
    if (tilt.rightDeg() != 0 && jaw == Jaw.UNKNOWN) {
      throw new ParameterException(
          spec.commandLine(),
          "--tilt with a right tilt of "
              + tilt.rightDeg()
              + "° needs --jaw upper or --jaw lower, for the shape cannot tell right from left");
    }
    return new WantedPath.AtTilt(tilt);
  }
}
