package rodwork.app.command;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.FindTeeth;
import rodwork.app.operation.JudgeAbutments;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenDemo;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.SearchPath;
import rodwork.app.operation.WantedPath;
import rodwork.app.operation.WantedTeeth;
import rodwork.app.operation.WritePrescription;
import rodwork.app.report.Json;
import rodwork.app.report.OutputFile;
import rodwork.app.report.PathJson;
import rodwork.app.report.PrescriptionFolder;
import rodwork.casework.prescription.Order;
import rodwork.casework.prescription.Paper;
import rodwork.casework.rulebook.Rulebook;
import rodwork.casework.store.Part;
import rodwork.demo.DemoCast;
import rodwork.design.abutment.Answers;
import rodwork.design.plan.Choices;
import rodwork.survey.Tilt;

/** {@code rodwork demo}: the whole job without a screen. */
@Command(
    name = "demo",
    description = {
      "Does the whole job on a demo cast, without a screen, and leaves it in one folder: teeth,"
          + " path, survey, abutments, plan with its drawing, mouth preparation with the prepared"
          + " cast, prescription, and the cast at its path."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class DemoCommand implements Runnable {
  private static final double CONE_DEG = 10;

  @Spec
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @Option(names = "--out", paramLabel = "DIR", required = true, description = "Folder to write to.")
  @SuppressWarnings("NullAway.Init")
  private Path out;

  @Option(
      names = "--jaw",
      paramLabel = "upper|lower",
      converter = JawOption.class,
      defaultValue = "upper",
      description = "Which demo cast; without it: ${DEFAULT-VALUE}.")
  @SuppressWarnings("NullAway.Init")
  private Jaw jaw;

  @Override
  public void run() {
    PrintWriter say = spec.commandLine().getOut();
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      watch.progress("making the cast", 0);
      String name = jaw == Jaw.UPPER ? "demo-upper.ply" : "demo-lower.ply";
      byte[] content = OpenDemo.file(jaw, watch);
      OpenedCast opened =
          OpenCast.of(content, name, new CastOptions(jaw, FrameHints.NONE, Optional.empty()), watch)
              .by(Rulebook.shipped());
      WantedTeeth wanted =
          new WantedTeeth(
              DemoCast.missing(jaw).stream().map(ToothNumber::of).collect(Collectors.toSet()),
              null,
              List.of());
      CastTeeth teeth = FindTeeth.of(opened, wanted, watch);
      SearchPath.Found found =
          SearchPath.prepare(teeth, Rulebook.shipped(), SearchPath.InTheWay.ANATOMY, watch)
              .found(CONE_DEG, watch);
      Tilt tilt = found.best().tilt();
      WritePrescription.Ask ask =
          new WritePrescription.Ask(
              "demo-" + (jaw == Jaw.UPPER ? "upper" : "lower"),
              LocalDate.now(ZoneId.systemDefault()),
              Order.BLANK,
              name,
              Part.of(content).hash(),
              null);
      WritePrescription.Written written =
          WritePrescription.of(
              teeth,
              new JudgeAbutments.Wanted(
                  new WantedPath.AtTilt(tilt), new TreeSet<>(), null, Answers.NONE),
              Choices.NONE,
              Rulebook.shipped(),
              ask,
              watch);
      PrescriptionFolder.write(out, written, name, ask.scanHash(), Paper.A4, Notation.FDI, watch);
      OutputFile.write(out.resolve(name), to -> to.write(content));
      OutputFile.write(
          out.resolve("path.json"),
          to ->
              to.write((Json.pretty(PathJson.of(found)) + "\n").getBytes(StandardCharsets.UTF_8)));
      say.printf(
          Locale.ROOT,
          "Best path: anterior tilt %.1f°, right tilt %.1f°%n",
          tilt.anteriorDeg(),
          tilt.rightDeg());
      say.println(
          "Written to " + out + ": prescription.pdf, prescription.json, plan.svg, plan.json,");
      say.println(
          "preparation.svg, prepared-cast.stl, picture.png, survey.csv, abutments.json,"
              + " path.json,");
      say.println(name + ", cast-at-path/");
    }
  }
}
