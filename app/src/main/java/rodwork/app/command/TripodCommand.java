package rodwork.app.command;

import java.io.PrintWriter;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.WantedPath;
import rodwork.app.report.TripodJson;
import rodwork.geometry.Vec3;
import rodwork.survey.Gauges;
import rodwork.survey.tripod.Tripod;
import rodwork.survey.tripod.TripodMark;
import rodwork.survey.tripod.TripodPlaces;
import rodwork.survey.tripod.TripodRules;

/** {@code rodwork tripod}: three marks by which a path is found again. */
@Command(
    name = "tripod",
    description = {
      "Proposes tripod marks for a path: three places at one height that a rod touches, from which"
          + " the path is found again most surely.",
      "Keep the file of --json: rodwork recover takes it."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class TripodCommand implements Runnable {
  @Spec
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private CastMixin cast;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private PathMixin path;

  @Option(
      names = "--json",
      paramLabel = "FILE|-",
      description = "Write the marks as JSON; - writes them to stdout, instead of the lines.")
  private @Nullable String json;

  @Override
  public void run() {
    CastOptions options = cast.options();
    WantedPath wanted = path.wanted(options.jaw());
    PrintWriter out = spec.commandLine().getOut();
    TripodRules rules = TripodRules.SHIPPED;
    Tripod tripod;
    WantedPath.Resolved at;
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      OpenedCast opened = OpenCast.of(cast.file(), options, watch);
      at = wanted.on(opened);
      tripod =
          new TripodPlaces(
                  opened.surveyor(),
                  opened.surveyor().survey(at.axis(), Gauges.COMMON, watch),
                  t -> true,
                  rules)
              .best(watch);
    }
    if (json != null) {
      JsonOutput.write(json, TripodJson.of(tripod, at.tilt(), rules), out);
    }
    if (!JsonOutput.STDOUT.equals(json)) {
      for (int i = 0; i < 3; i++) {
        TripodMark mark = tripod.marks().get(i);
        Vec3 p = mark.point();
        out.printf(
            Locale.ROOT,
            "mark %d  %9.2f %9.2f %9.2f mm, slope %.0f°%n",
            i + 1,
            p.x(),
            p.y(),
            p.z(),
            mark.slopeDeg());
      }
      double[] d = tripod.distancesMm();
      out.printf(Locale.ROOT, "1–2 %.2f mm, 2–3 %.2f mm, 3–1 %.2f mm%n", d[0], d[1], d[2]);
      out.printf(
          Locale.ROOT,
          "Found again within ± %.2f°, 95 times in 100, where marks are picked to %.1f mm.%n",
          tripod.axisErrorDeg(rules.picking().value()),
          rules.picking().value());
      out.println("Move a mark that lies where the mouth will be prepared.");
    }
  }
}
