package rodwork.app.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CaseCast;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.WantedTeeth;
import rodwork.app.report.CaseOpposing;
import rodwork.app.report.CaseSaid;
import rodwork.app.report.ChartJson;
import rodwork.app.report.ChartReader;
import rodwork.app.report.ChoicesReader;
import rodwork.app.report.JsonTriples;
import rodwork.casework.rulebook.Rulebook;
import rodwork.casework.store.CaseCode;
import rodwork.casework.store.CaseEdit;
import rodwork.casework.store.CaseFile;
import rodwork.casework.store.PartKind;
import rodwork.casework.store.PartName;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.survey.Tilt;

/** What may be put into a case. */
final class CasePartsMixin {
  @Spec(Spec.Target.MIXEE)
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @Option(names = "--upper", paramLabel = "SCAN", description = "Scan of the upper cast.")
  private @Nullable Path upper;

  @Option(names = "--lower", paramLabel = "SCAN", description = "Scan of the lower cast.")
  private @Nullable Path lower;

  @Option(
      names = "--opposing",
      paramLabel = "SCAN",
      description =
          "Scan of the jaw that bites against it, in its frame unless --bite lays it: plan and"
              + " prescription then know the room to it.")
  private @Nullable Path opposing;

  @Option(
      names = "--bite",
      paramLabel = "SCAN",
      description = "Scan of both jaws in occlusion, which lays the opposing one.")
  private @Nullable Path bite;

  @Option(
      names = "--missing",
      paramLabel = "FDI,FDI",
      converter = TeethMixin.TeethOption.class,
      description = "Missing teeth of one jaw by their FDI numbers: makes its chart.")
  private @Nullable Set<ToothNumber> missing;

  @Option(
      names = "--chart",
      paramLabel = "FILE",
      description = "The chart of one jaw, as docs/schema/chart.schema.json says.")
  private @Nullable Path chart;

  @Option(
      names = "--tilt",
      paramLabel = "ANTERIOR,RIGHT",
      converter = TiltOption.class,
      description = "The chosen path, as rodwork survey --tilt says it.")
  private @Nullable Tilt tilt;

  @Option(
      names = "--choices",
      paramLabel = "FILE",
      description = "What a person chose in the plan, as docs/schema/choices.schema.json has it.")
  private @Nullable Path choices;

  @Option(
      names = "--jaw",
      paramLabel = "upper|lower",
      converter = JawOption.class,
      description =
          "Which jaw path, choices and opposing scan are for, where the case has scans of both.")
  private @Nullable Jaw jaw;

  @Option(
      names = "--rulebook",
      paramLabel = "FILE",
      description = "The rulebook that the case goes by; without it the shipped one.")
  private @Nullable Path rulebook;

  /** The words for what is put in, for the history. */
  String action() {
    List<String> words = new ArrayList<>();
    if (upper != null) {
      words.add("upper scan " + upper.getFileName());
    }
    if (lower != null) {
      words.add("lower scan " + lower.getFileName());
    }
    if (opposing != null) {
      words.add("opposing scan " + opposing.getFileName());
    }
    if (missing != null || chart != null) {
      words.add("chart");
    }
    if (tilt != null) {
      words.add("path");
    }
    if (choices != null) {
      words.add("choices");
    }
    if (rulebook != null) {
      words.add("rulebook");
    }
    return String.join(", ", words);
  }

  /**
   * The edit; scans, chart and rulebook are read before, so that what cannot be used is refused
   * here.
   *
   * @param code of the case
   * @param on the case as it stands; null: it is new, and needs a rulebook in any case
   */
  CaseEdit edit(CaseCode code, @Nullable CaseFile on, Watch watch) {
    CaseEdit edit = CaseEdit.NONE;
    if (upper != null) {
      edit = edit.put(name(PartKind.SCAN, Jaw.UPPER, upper), scan(upper, watch));
    }
    if (lower != null) {
      edit = edit.put(name(PartKind.SCAN, Jaw.LOWER, lower), scan(lower, watch));
    }
    if (opposing == null && bite != null) {
      throw new ParameterException(
          spec.commandLine(), "--bite needs --opposing, the scan of the opposing jaw");
    }
    if (opposing != null) {
      CaseOpposing kept =
          new CaseOpposing(given(opposing, watch), bite == null ? null : given(bite, watch));
      edit = CaseOpposing.edit(edit, on, jaw(code, on), kept);
    }
    if (missing != null || chart != null) {
      Chart read =
          chart == null
              ? null
              : ChartReader.read(JsonTriples.text(chart), String.valueOf(chart.getFileName()));
      WantedTeeth wanted = new WantedTeeth(missing == null ? Set.of() : missing, read, List.of());
      Chart whole = wanted.chart(wanted.jaw(Jaw.UNKNOWN));
      edit = edit.put(CaseSaid.What.CHART.of(whole.jaw()), CaseSaid.bytes(ChartJson.of(whole)));
    }
    if (tilt != null) {
      Jaw of = jaw(code, on);
      edit = edit.put(CaseSaid.What.PATH.of(of), CaseSaid.bytes(CaseSaid.path(tilt, null)));
    }
    if (choices != null) {
      ChoicesReader.read(choices);
      Jaw of = jaw(code, on);
      edit = edit.put(CaseSaid.What.CHOICES.of(of), CaseSaid.bytes(JsonTriples.file(choices)));
    }
    if (rulebook != null || on == null) {
      Rulebook book = rulebook == null ? Rulebook.shipped() : Rulebook.read(rulebook);
      edit = edit.put(CaseCast.RULEBOOK, utf8(book.text()));
    }
    return edit;
  }

  /** The jaw that path, choices and opposing scan are for. */
  private Jaw jaw(CaseCode code, @Nullable CaseFile on) {
    if (jaw != null) {
      return jaw;
    }
    Set<Jaw> scans = new TreeSet<>();
    if (upper != null) {
      scans.add(Jaw.UPPER);
    }
    if (lower != null) {
      scans.add(Jaw.LOWER);
    }
    if (on != null) {
      on.parts(PartKind.SCAN).forEach(scan -> scans.add(scan.getKey().jaw()));
    }
    if (scans.size() != 1) {
      throw AppRefusal.CASE_NEEDS_SCAN.with(code, scans.size());
    }
    return scans.iterator().next();
  }

  private static PartName name(PartKind kind, Jaw jaw, Path file) {
    return new PartName(kind, jaw, String.valueOf(file.getFileName()));
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static CaseOpposing.ScanFile given(Path file, Watch watch) {
    return new CaseOpposing.ScanFile(
        String.valueOf(file.getFileName()), scan(file, watch), CastOptions.NONE);
  }

  private static byte[] scan(Path file, Watch watch) {
    byte[] content;
    try {
      content = Files.readAllBytes(file);
    } catch (IOException failure) {
      throw AppRefusal.FILE_UNREADABLE.with(file, failure.toString());
    }
    MeshFiles.read(content, String.valueOf(file.getFileName()), watch);
    return content;
  }
}
