package rodwork.app.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.dentition.Dentition;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.ProposeTripod;
import rodwork.app.operation.WantedPath;
import rodwork.app.report.TripodJson;
import rodwork.app.report.TripodPictureFile;
import rodwork.casework.rulebook.Rulebook;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.survey.Gauges;
import rodwork.survey.seating.SeatingKey;
import rodwork.survey.seating.SeatingRules;
import rodwork.survey.seating.TableWedge;
import rodwork.survey.tripod.MarkBearings;
import rodwork.survey.tripod.Tripod;
import rodwork.survey.tripod.TripodMark;
import rodwork.survey.tripod.TripodPlaces;
import rodwork.survey.tripod.TripodRules;

/** {@code rodwork tripod}: three marks by which a path is found again. */
@Command(
    name = "tripod",
    description = {
      "Proposes tripod marks for a path: three places at one height that a rod touches, from which"
          + " the path is found again most surely, off the teeth that will likely be prepared.",
      "Each is told with its distances from two landmarks, to be set on plaster with dividers.",
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

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private KnownTeethMixin teeth;

  @Option(
      names = "--json",
      paramLabel = "FILE|-",
      description = "Write the marks as JSON; - writes them to stdout, instead of the lines.")
  private @Nullable String json;

  @Option(
      names = "--picture",
      paramLabel = "FILE.png",
      description =
          "Draw the marks on the cast, each near by with its distances from two landmarks.")
  private @Nullable Path picture;

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
      description = "Diameter of the key's post in mm; without it that of the rulebook.")
  private @Nullable Double post;

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
    if (post != null && !(post >= LEAST_POST_MM && post <= MOST_POST_MM)) {
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
    List<Optional<MarkBearings>> bearings;
    WantedPath.Resolved at;
    List<String> made = new ArrayList<>();
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      OpenedCast opened = OpenCast.of(cast.file(), options, watch).by(book);
      at = wanted.on(opened);
      Dentition dentition = dentition(opened, made, watch);
      TripodPlaces places =
          new TripodPlaces(
              opened.surveyor(), opened.surveyor().survey(at.axis(), Gauges.COMMON, watch), rules);
      tripod = ProposeTripod.of(opened, places, dentition, watch);
      bearings = ProposeTripod.bearings(opened, tripod, dentition, rules);
      if (picture != null) {
        TripodPictureFile.write(picture, opened, tripod, bearings);
      }
      if (key != null) {
        made.add(key(key, opened, at.axis(), watch));
      }
      if (wedge != null) {
        made.add(wedge(wedge, opened, at.axis(), watch));
      }
    }
    if (json != null) {
      JsonOutput.write(json, TripodJson.of(tripod, at.tilt(), bearings, rules), out);
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
        bearings.get(i).ifPresent(from -> from.both().forEach(b -> out.println(line(b))));
      }
      double[] d = tripod.distancesMm();
      out.printf(Locale.ROOT, "1–2 %.2f mm, 2–3 %.2f mm, 3–1 %.2f mm%n", d[0], d[1], d[2]);
      out.printf(
          Locale.ROOT,
          "Found again within ± %.2f°, 95 times in 100, where marks are picked to %.1f mm.%n",
          tripod.axisErrorDeg(rules.picking().value()),
          rules.picking().value());
      made.forEach(out::println);
    }
  }

  private static String line(MarkBearings.Bearing bearing) {
    return String.format(
        Locale.ROOT, "        %5.2f mm from the %s", bearing.distanceMm(), bearing.landmark());
  }

  /** The teeth, as far as they are known; what keeps them from being so is said. */
  private @Nullable Dentition dentition(OpenedCast opened, List<String> said, Watch watch) {
    String why = "the jaw is not known";
    boolean given = teeth.given() || teeth.labelled();
    if (given || opened.jaw() != Jaw.UNKNOWN) {
      try {
        return teeth.on(opened, watch).dentition();
      } catch (Refusal refused) {
        if (given) {
          throw refused;
        }
        why = refused.getMessage();
      }
    }
    said.add("The teeth are not known (" + why + "): a mark may lie where the mouth will be");
    said.add("prepared, so look at each; no landmarks are told.");
    return null;
  }

  private String key(Path file, OpenedCast cast, Vec3 axis, Watch watch) {
    SeatingRules own = rulebook.book().seatingKey();
    SeatingRules rules = post == null ? own : own.withPost(post);
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
