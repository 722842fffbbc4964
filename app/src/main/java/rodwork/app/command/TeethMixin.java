package rodwork.app.command;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.chart.Torus;
import rodwork.anatomy.teeth.ToothHints;
import rodwork.app.AppRefusal;
import rodwork.app.operation.WantedTeeth;
import rodwork.app.report.ChartReader;
import rodwork.app.report.JsonTriples;

/** What is said about the teeth of a cast. */
final class TeethMixin {
  @Option(
      names = "--missing",
      paramLabel = "FDI,FDI",
      converter = TeethOption.class,
      description = "Missing teeth by their FDI numbers, such as 16,23; 'none' for a whole arch.")
  private @Nullable Set<ToothNumber> missing;

  @Option(
      names = "--chart",
      paramLabel = "FILE",
      description = "The chart, as docs/schema/chart.schema.json says.")
  private @Nullable Path chart;

  @Option(
      names = "--torus",
      paramLabel = "SITE=yes|no[,…]",
      converter = TorusOption.class,
      description =
          "What the mouth shows of a torus, beside the chart: palatal=no;"
              + " palatal=yes,from=14,to=17,width=12; left=yes,from=33,to=35,below=8. From and to are"
              + " the teeth beside which it begins and ends, width its breadth, below how far under"
              + " the lingual margins it begins [mm]. May be given for each.")
  private @Nullable List<TorusOption.Said> tori;

  @Option(
      names = "--points",
      paramLabel = "FILE.json",
      description =
          "One point on the biting surface of each tooth, in the scan's own frame:"
              + " [{\"tooth\":17,\"point\":[x,y,z]}].")
  private @Nullable Path points;

  @Option(
      names = "--notation",
      paramLabel = "fdi|universal|palmer",
      converter = NotationOption.class,
      defaultValue = "fdi",
      description = "How tooth numbers are shown in tables; files keep FDI.")
  @SuppressWarnings("NullAway.Init")
  private Notation notation;

  /** Whether anything is said of teeth; tori are said beside whatever else is known. */
  boolean given() {
    return missing != null || chart != null || points != null;
  }

  Notation notation() {
    return notation;
  }

  WantedTeeth wanted() {
    Chart read =
        chart == null
            ? null
            : ChartReader.read(JsonTriples.text(chart), String.valueOf(chart.getFileName()));
    return new WantedTeeth(
        missing == null ? Set.of() : missing,
        read,
        points == null ? List.of() : read(points),
        tori());
  }

  /** What is said of tori. */
  Map<Torus.Site, Torus> tori() {
    Map<Torus.Site, Torus> said = new EnumMap<>(Torus.Site.class);
    if (tori != null) {
      tori.forEach(one -> said.put(one.site(), one.torus()));
    }
    return said;
  }

  private static List<ToothHints.Point> read(Path file) {
    String name = String.valueOf(file.getFileName());
    JsonNode json = JsonTriples.file(file);
    if (!json.isArray()) {
      throw AppRefusal.JSON_WRONG.with(name, "it is no array of points");
    }
    List<ToothHints.Point> points = new ArrayList<>();
    Set<Integer> seen = new HashSet<>();
    for (JsonNode one : json) {
      String which = "point " + (points.size() + 1);
      JsonNode tooth = one.path("tooth");
      if (!tooth.isInt() || !ToothNumber.exists(tooth.asInt())) {
        throw AppRefusal.JSON_WRONG.with(
            name, which + " has the tooth " + tooth + ", which is no FDI number");
      }
      if (!seen.add(tooth.asInt())) {
        throw AppRefusal.JSON_WRONG.with(name, "tooth " + tooth + " has two points");
      }
      points.add(
          new ToothHints.Point(
              tooth.asInt(),
              JsonTriples.triple(one.path("point"), name, which + " of tooth " + tooth)));
    }
    return points;
  }

  /** Reads FDI numbers with commas between them. */
  static final class TeethOption implements ITypeConverter<Set<ToothNumber>> {
    @Override
    public Set<ToothNumber> convert(String text) {
      Set<ToothNumber> teeth = new HashSet<>();
      if (text.equals("none")) {
        return teeth;
      }
      for (String part : text.split(",", -1)) {
        String number = part.strip();
        if (!number.matches("[0-9]{2}") || !ToothNumber.exists(Integer.parseInt(number))) {
          throw new TypeConversionException(
              "'" + number + "' is no FDI number; they run 11–18, 21–28, 31–38, 41–48");
        }
        teeth.add(ToothNumber.of(Integer.parseInt(number)));
      }
      return teeth;
    }
  }

  /** Reads the name of a notation. */
  static final class NotationOption implements ITypeConverter<Notation> {
    @Override
    public Notation convert(String text) {
      for (Notation notation : Notation.values()) {
        if (notation.name().equalsIgnoreCase(text)) {
          return notation;
        }
      }
      throw new TypeConversionException("'" + text + "' is neither fdi, universal nor palmer");
    }
  }
}
