package rodwork.app.command;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.occlusion.ToothRoom;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.FindTeeth;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.OpposingScan;
import rodwork.app.operation.RunSurvey;
import rodwork.app.operation.SurveyedCast;
import rodwork.app.operation.WantedPath;
import rodwork.app.operation.WantedTeeth;
import rodwork.app.report.FieldFile;
import rodwork.app.report.OpposingJson;
import rodwork.app.report.PictureFile;
import rodwork.app.report.SurveyJson;
import rodwork.app.report.SurveyTable;
import rodwork.app.report.ToothSurveyReport;
import rodwork.survey.Gauges;
import rodwork.survey.tooth.ToothSurvey;

/** {@code rodwork survey}: one cast at one path. */
@Command(
    name = "survey",
    description = {
      "Surveys a cast at one path: undercut, survey lines, gauge marks.",
      "Without --axis or --tilt at the reference orientation: occlusal plane horizontal.",
      "With --missing, --chart or --points the undercut is told by tooth as well."
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

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private PathMixin path;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private TeethMixin teeth;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private OpposingMixin opposing;

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
          "Write the cast with undercut_mm and flags at each vertex as binary PLY, and with"
              + " --opposing clearance_mm, NaN where not known. Flags: 1 capped, 2 unsure, 4 no"
              + " gauge reaches, 8 base.")
  private @Nullable Path field;

  @Option(
      names = "--picture",
      paramLabel = "FILE.png",
      description = "Draw the surveyed cast along the path and from four sides.")
  private @Nullable Path picture;

  @Override
  public void run() {
    CastOptions options = cast.options();
    WantedPath wanted = path.wanted(options.jaw());
    WantedTeeth wantedTeeth = teeth.wanted();
    PrintWriter out = spec.commandLine().getOut();
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      OpenedCast opened = OpenCast.of(cast.file(), options, watch);
      SurveyedCast surveyed =
          RunSurvey.of(
              opened, path.within(wanted, opened, opened.surveyor().rules()), gauges, watch);
      Dentition dentition =
          teeth.given() ? FindTeeth.of(opened, wantedTeeth, watch).dentition() : null;
      List<ToothSurvey> byTooth =
          dentition == null ? List.of() : ToothSurvey.all(surveyed.survey(), dentition, watch);
      OpposingScan other = opposing.over(opened, watch);
      List<ToothRoom> rooms =
          other == null || dentition == null
              ? List.of()
              : ToothRoom.of(other.clearance(), dentition, opened.mesh());
      if (field != null) {
        FieldFile.write(field, surveyed, other, watch);
      }
      if (picture != null) {
        PictureFile.write(picture, surveyed, watch);
      }
      if (json != null) {
        ObjectNode report = SurveyJson.of(surveyed, watch);
        if (teeth.given()) {
          report.set("teeth", ToothSurveyReport.json(byTooth));
        }
        if (other != null) {
          report.set("opposing", OpposingJson.of(other));
          report.set("room", OpposingJson.rooms(rooms));
        }
        JsonOutput.write(json, report, out);
      }
      if (!JsonOutput.STDOUT.equals(json)) {
        SurveyTable.of(surveyed, watch).forEach(out::println);
        if (teeth.given()) {
          ToothSurveyReport.table(byTooth, teeth.notation()).forEach(out::println);
        }
        if (other != null) {
          OpposingJson.table(other, rooms, teeth.notation()).forEach(out::println);
        }
      }
    }
  }
}
