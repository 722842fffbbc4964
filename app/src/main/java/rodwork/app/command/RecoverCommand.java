package rodwork.app.command;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import rodwork.anatomy.FrameHints;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.report.Json;
import rodwork.app.report.JsonTriples;
import rodwork.app.report.TripodJson;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.survey.tripod.Recovery;
import rodwork.survey.tripod.Rescan;
import rodwork.survey.tripod.Tripod;
import rodwork.survey.tripod.TripodRules;

/** {@code rodwork recover}: a path that was kept, on another scan of the same cast. */
@Command(
    name = "recover",
    description = {
      "Finds a path again on another scan of the same cast.",
      "With --points: CAST is the scan that the three marks of --tripod were picked on. With"
          + " --rescan: CAST is the first scan; the rescan is laid on it, and the path (--axis,"
          + " --tilt, or the axis of --tripod) carried over."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class RecoverCommand implements Runnable {
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
      names = "--tripod",
      paramLabel = "FILE.json",
      description = "The marks that were kept, as rodwork tripod --json wrote them.")
  private @Nullable Path tripod;

  /** One way to find the path again. */
  static final class Again {
    @Option(
        names = "--points",
        paramLabel = "FILE.json",
        description =
            "The three marks picked on the other scan, in any order: [[x,y,z],[x,y,z],[x,y,z]] in"
                + " its own frame.")
    @Nullable Path points;

    @Option(
        names = "--rescan",
        paramLabel = "SCAN",
        description = "The other scan, in any pose; it may show less than CAST.")
    @Nullable Path rescan;
  }

  @ArgGroup(exclusive = true, multiplicity = "1")
  @SuppressWarnings("NullAway.Init")
  private Again again;

  @Option(
      names = "--json",
      paramLabel = "FILE|-",
      description = "Write the answer as JSON; - writes it to stdout, instead of the lines.")
  private @Nullable String json;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private RulebookMixin rulebook;

  @Override
  public void run() {
    PrintWriter out = spec.commandLine().getOut();
    TripodRules rules = rulebook.book().tripod();
    Tripod kept = tripod == null ? null : TripodJson.read(JsonTriples.file(tripod), name(tripod));
    ObjectNode answer = Json.object();
    answer.put("format", "rodwork recovery");
    answer.put("version", 1);
    List<String> lines;
    if (again.points != null) {
      lines = picked(again.points, kept, rules, answer);
    } else {
      lines = rescanned(kept, rules, answer);
    }
    if (json != null) {
      JsonOutput.write(json, answer, out);
    }
    if (!JsonOutput.STDOUT.equals(json)) {
      lines.forEach(out::println);
    }
  }

  private List<String> picked(
      Path points, @Nullable Tripod kept, TripodRules rules, ObjectNode answer) {
    if (kept == null) {
      throw new ParameterException(
          spec.commandLine(), "--points needs --tripod, the marks that were kept");
    }
    List<Vec3> places = JsonTriples.points(JsonTriples.file(points), name(points));
    Recovery found = Recovery.of(kept, places, rules);
    double off = 0;
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      TriangleTree tree =
          TriangleTree.of(OpenCast.takeIn(cast.file(), cast.options(), watch).mesh());
      for (Vec3 place : places) {
        off = Math.max(off, tree.closest(place).map(SurfacePoint::distance).orElse(0.0));
      }
    }
    answer.set("axis", Json.direction(found.axis()));
    Json.put(answer, "axisErrorDeg", found.boundDeg());
    Json.put(answer, "disagreementMm", found.disagreementMm());
    Json.put(answer, "offSurfaceMm", off);
    return List.of(
        axisLine(found.axis()),
        String.format(
            Locale.ROOT,
            "Within ± %.2f°, 95 times in 100; the distances agree to %.2f mm; the points lie on the"
                + " scan to %.2f mm.",
            found.boundDeg(),
            found.disagreementMm(),
            off));
  }

  private List<String> rescanned(@Nullable Tripod kept, TripodRules rules, ObjectNode answer) {
    Path other = again.rescan;
    if (other == null) {
      throw new ParameterException(spec.commandLine(), "--points or --rescan is needed");
    }
    CastOptions options = cast.options();
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      OpenedCast first = OpenCast.of(cast.file(), options, watch);
      OpenedCast second =
          OpenCast.of(
              other, new CastOptions(options.jaw(), FrameHints.NONE, Optional.empty()), watch);
      Vec3 axis = kept == null ? path.wanted(options.jaw()).on(first).axis() : kept.axis();
      Rescan laid = Rescan.of(side(first), side(second), rules, watch);
      Vec3 found = laid.axis(axis);
      answer.set("axis", Json.direction(found));
      Json.put(answer, "rmsMm", laid.match().rmsMm());
      Json.put(answer, "medianMm", laid.match().medianMm());
      Json.put(answer, "share", laid.match().share());
      return List.of(
          axisLine(found),
          String.format(
              Locale.ROOT,
              "%.0f %% of the rescan lies on the first scan, median distance %.3f mm, root mean"
                  + " square %.3f mm.",
              100 * laid.match().share(),
              laid.match().medianMm(),
              laid.match().rmsMm()));
    }
  }

  private static Rescan.Side side(OpenedCast cast) {
    return new Rescan.Side(
        cast.mesh(), cast.surface(), cast.finding() == null ? null : cast.finding().frame());
  }

  private static String axisLine(Vec3 axis) {
    return String.format(
        Locale.ROOT,
        "withdrawal axis %.6f,%.6f,%.6f in that scan's own frame",
        axis.x(),
        axis.y(),
        axis.z());
  }

  private static String name(Path file) {
    return String.valueOf(file.getFileName());
  }
}
