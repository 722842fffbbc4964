package rodwork.app.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.WantedPath;
import rodwork.app.report.TripodJson;
import rodwork.casework.rulebook.Rulebook;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.survey.Gauges;
import rodwork.survey.seating.SeatingKey;
import rodwork.survey.seating.SeatingRules;
import rodwork.survey.seating.TableWedge;
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
  private static final double LEAST_POST_MM = 1;
  private static final double MOST_POST_MM = 12;

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

  @Option(
      names = "--key",
      paramLabel = "FILE",
      description = {
        "Write a seating key to print: it stands on three biting surfaces of the plaster cast and"
            + " carries a post along the path.",
        "Post into the surveyor's chuck, cast into the key, table locked."
      })
  private @Nullable Path key;

  @Option(
      names = "--post",
      paramLabel = "MM",
      defaultValue = "3",
      description = "Diameter of the key's post in mm; without it: ${DEFAULT-VALUE}.")
  private double post;

  @Option(
      names = "--wedge",
      paramLabel = "FILE",
      description =
          "Write a wedge to print that lies between a level table and the flat base of the cast.")
  private @Nullable Path wedge;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private RulebookMixin rulebook;

  @Override
  public void run() {
    if (!(post >= LEAST_POST_MM && post <= MOST_POST_MM)) {
      throw new ParameterException(
          spec.commandLine(),
          String.format(
              Locale.ROOT,
              "--post is a diameter from %.0f to %.0f mm, not %s",
              LEAST_POST_MM,
              MOST_POST_MM,
              post));
    }
    CastOptions options = cast.options();
    WantedPath wanted = path.wanted(options.jaw());
    PrintWriter out = spec.commandLine().getOut();
    Rulebook book = rulebook.book();
    TripodRules rules = book.tripod();
    Tripod tripod;
    WantedPath.Resolved at;
    List<String> made = new ArrayList<>();
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      OpenedCast opened = OpenCast.of(cast.file(), options, watch).by(book.survey());
      at = wanted.on(opened);
      tripod =
          new TripodPlaces(
                  opened.surveyor(),
                  opened.surveyor().survey(at.axis(), Gauges.COMMON, watch),
                  t -> true,
                  rules)
              .best(watch);
      if (key != null) {
        made.add(key(key, opened, at.axis(), watch));
      }
      if (wedge != null) {
        made.add(wedge(wedge, opened, at.axis(), watch));
      }
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
      made.forEach(out::println);
    }
  }

  private String key(Path file, OpenedCast cast, Vec3 axis, Watch watch) {
    SeatingRules rules = SeatingRules.SHIPPED.withPost(post);
    SeatingKey made = SeatingKey.of(cast.surveyor(), cast.frame().z(), axis, rules, watch);
    MeshFiles.write(file, made.mesh(), watch);
    return String.format(
        Locale.ROOT,
        "Key %s: gap %.2f mm, post %.2f mm; its axis is within %.2f° where each pad seats to %.1f"
            + " mm.",
        file.getFileName(),
        made.gapMm(),
        made.postMm(),
        made.axisErrorDeg(),
        made.seatingErrorMm());
  }

  private static String wedge(Path file, OpenedCast cast, Vec3 axis, Watch watch) {
    TableWedge made = TableWedge.of(cast.mesh(), cast.surface(), axis);
    MeshFiles.write(file, made.mesh(), watch);
    return String.format(
        Locale.ROOT,
        "Wedge %s: %.2f° between its faces, %.1f to %.1f mm thick.",
        file.getFileName(),
        made.angleDeg(),
        made.thinnestMm(),
        made.thickestMm());
  }
}
