package rodwork.app.command;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import rodwork.anatomy.Jaw;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.WantedPath;
import rodwork.casework.rulebook.Rulebook;
import rodwork.geometry.Vec3;
import rodwork.survey.SurveyRules;
import rodwork.survey.Tilt;
import rodwork.survey.TotalTilt;

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

  @Option(
      names = "--past-limit",
      description =
          "Go on where the total tilt passes tilt-limit of the rulebook, which is refused else.")
  private boolean pastLimit;

  /**
   * The same path, where it keeps to the limit or a person said that it may pass.
   *
   * @throws rodwork.geometry.Refusal {@code tilt-past-limit}
   */
  WantedPath within(WantedPath wanted, OpenedCast cast, SurveyRules rules) {
    if (!pastLimit && cast.finding() != null) {
      TotalTilt total = TotalTilt.of(wanted.on(cast).axis(), cast.finding().frame());
      if (total.passes(rules.tiltLimit())) {
        throw AppRefusal.TILT_PAST_LIMIT.with(
            String.format(Locale.ROOT, "%.1f", total.deg()),
            String.format(Locale.ROOT, "%.0f", rules.tiltLimit().value()));
      }
    }
    return wanted;
  }

  /** The same on a cast whose teeth tell its jaw, by the limit of a rulebook. */
  WantedPath within(WantedPath wanted, CastTeeth teeth, Rulebook book) {
    return within(wanted, teeth.jawed(), book.survey());
  }

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
