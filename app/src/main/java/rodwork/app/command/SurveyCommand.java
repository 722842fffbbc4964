package rodwork.app.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import rodwork.anatomy.Jaw;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.RunSurvey;
import rodwork.app.operation.SurveyedCast;
import rodwork.app.operation.WantedPath;
import rodwork.app.report.FieldFile;
import rodwork.app.report.PictureFile;
import rodwork.app.report.SurveyJson;
import rodwork.app.report.SurveyTable;
import rodwork.geometry.Vec3;
import rodwork.survey.Gauges;
import rodwork.survey.Tilt;

/** {@code rodwork survey}: one cast at one path. */
@Command(
    name = "survey",
    description = {
      "Surveys a cast at one path: undercut, survey lines, gauge marks.",
      "Without --axis or --tilt at the reference orientation: occlusal plane horizontal."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class SurveyCommand implements Runnable {
  @Spec
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private CastMixin cast;

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
      names = "--gauges",
      paramLabel = "MM,MM",
      converter = GaugesOption.class,
      defaultValue = "0.25,0.50,0.75",
      description = "Sizes of the undercut gauges in mm; without it: ${DEFAULT-VALUE}.")
  @SuppressWarnings("NullAway.Init")
  private Gauges gauges;

  @Option(
      names = "--json",
      paramLabel = "FILE|-",
      description = "Write everything as JSON; - writes it to stdout, instead of the table.")
  private @Nullable String json;

  @Option(
      names = "--field",
      paramLabel = "FILE.ply",
      description =
          "Write the cast with undercut_mm and flags at each vertex as binary PLY. Flags: 1 capped,"
              + " 2 unsure, 4 no gauge reaches, 8 base.")
  private @Nullable Path field;

  @Option(
      names = "--picture",
      paramLabel = "FILE.png",
      description = "Draw the surveyed cast along the path and from four sides.")
  private @Nullable Path picture;

  @Override
  public void run() {
    CastOptions options = cast.options();
    WantedPath wanted = wanted(options.jaw());
    PrintWriter out = spec.commandLine().getOut();
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      SurveyedCast surveyed =
          RunSurvey.of(OpenCast.of(cast.file(), options, watch), wanted, gauges, watch);
      if (field != null) {
        FieldFile.write(field, surveyed, watch);
      }
      if (picture != null) {
        PictureFile.write(picture, surveyed, watch);
      }
      if (json != null) {
        JsonOutput.write(json, SurveyJson.of(surveyed, watch), out);
      }
      if (!JsonOutput.STDOUT.equals(json)) {
        SurveyTable.of(surveyed, watch).forEach(out::println);
      }
    }
  }

  private WantedPath wanted(Jaw jaw) {
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
