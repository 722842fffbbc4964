package rodwork.app.command;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.JudgeAbutments;
import rodwork.app.operation.MakePlan;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.SearchPath;
import rodwork.app.operation.WantedPath;
import rodwork.app.report.OutputFile;
import rodwork.app.report.PathJson;
import rodwork.app.report.PathPictureFile;
import rodwork.app.report.PathTable;
import rodwork.casework.rulebook.Rulebook;
import rodwork.design.abutment.Answers;
import rodwork.design.plan.Choices;
import rodwork.survey.path.PathRules;

/** {@code rodwork path}: every tilt tried, and the few worth choosing between. */
@Command(
    name = "path",
    description = {
      "Tries every tilt within a cone, and says which path offers most: guiding planes, retention,"
          + " what is in the way, what shows, and the tilt itself.",
      "Its figures are means in mm, and less is better: enamel that guiding planes take; what the"
          + " weaker side is short of the gauge wanted; undercut where rigid parts pass; survey line"
          + " and dead space on teeth that show.",
      "The teeth are found as rodwork teeth finds them, or read from --labels."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class PathCommand implements Runnable {
  private static final double WIDEST_CONE_DEG = 30;

  @Spec
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private CastMixin cast;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private KnownTeethMixin teeth;

  @Option(
      names = "--cone",
      paramLabel = "DEG",
      description = "Widest total tilt tried; without it: 15 degrees.")
  private @Nullable Double cone;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private InTheWayMixin inTheWay;

  @Option(
      names = "--json",
      paramLabel = "FILE|-",
      description = "Write everything as JSON; - writes it to stdout, instead of the table.")
  private @Nullable String json;

  @Option(
      names = "--map",
      paramLabel = "FILE.csv",
      description = "Write every tilt tried, one a line.")
  private @Nullable Path map;

  @Option(
      names = "--picture",
      paramLabel = "FILE.png",
      description = "Draw the tilt map, the darker the better.")
  private @Nullable Path picture;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private RulebookMixin rulebook;

  @Override
  public void run() {
    Rulebook book = rulebook.book();
    PathRules rules = book.path();
    double widest = cone == null ? rules.cone().value() : cone;
    if (!(widest >= rules.step().value() && widest <= WIDEST_CONE_DEG)) {
      throw new ParameterException(
          spec.commandLine(),
          "--cone is an angle from "
              + rules.step().value()
              + " to "
              + WIDEST_CONE_DEG
              + " degrees, not "
              + widest);
    }
    PrintWriter out = spec.commandLine().getOut();
    SearchPath.Found found;
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      OpenedCast opened = OpenCast.of(cast.file(), cast.options(), watch).by(book);
      CastTeeth known = teeth.on(opened, watch);
      SearchPath.InTheWay way = new SearchPath.InTheWay(inTheWay.leftOut(), null);
      found = SearchPath.prepare(known, book, way, watch).found(widest, watch);
      if (inTheWay.planned()) {
        WantedPath there = new WantedPath.AtTilt(found.best().tilt());
        JudgeAbutments.Wanted wanted =
            new JudgeAbutments.Wanted(there, new TreeSet<>(), null, Answers.NONE);
        MakePlan.Planned made = MakePlan.of(known, wanted, Choices.NONE, book, watch);
        way = new SearchPath.InTheWay(inTheWay.leftOut(), made.plan());
        found = SearchPath.prepare(known, book, way, watch).found(widest, watch);
      }
    }
    if (map != null) {
      String csv = PathTable.csv(found);
      OutputFile.write(map, file -> file.write(csv.getBytes(StandardCharsets.UTF_8)));
    }
    if (picture != null) {
      PathPictureFile.write(picture, found);
    }
    if (json != null) {
      JsonOutput.write(json, PathJson.of(found), out);
    }
    if (!JsonOutput.STDOUT.equals(json)) {
      PathTable.of(found, teeth.notation()).forEach(out::println);
    }
  }
}
