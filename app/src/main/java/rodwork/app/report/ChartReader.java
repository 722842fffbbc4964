package rodwork.app.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.Firmness;
import rodwork.anatomy.chart.NotJudged;
import rodwork.anatomy.chart.PlaceEntry;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothEntry.Mobility;
import rodwork.anatomy.chart.ToothEntry.Opposing;
import rodwork.anatomy.chart.ToothEntry.Presence;
import rodwork.anatomy.chart.ToothEntry.Restoration;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.chart.Torus;
import rodwork.app.AppRefusal;
import rodwork.geometry.Refusal;

/**
 * Reads a chart from JSON. Every complaint names the file, the line, the field, what is there and
 * what may be there; a field that is not known is refused, so that a slip of the pen loses nothing.
 */
public final class ChartReader {
  private static final Set<String> TOP =
      Set.of(
          "format",
          "version",
          "jaw",
          "missing",
          "teeth",
          "places",
          "freeEnds",
          "tori",
          "allergies",
          "allergiesAsked",
          "openingMm",
          "notJudged",
          "notes");
  private static final Set<String> TOOTH =
      Set.of(
          "tooth",
          "presence",
          "replace",
          "spaceClosed",
          "abutment",
          "mobility",
          "crownToRoot",
          "restoration",
          "aestheticZone",
          "opposing");
  private static final Set<String> OPPOSING = Set.of("kind", "contact", "clearanceMm");
  private static final Set<String> PLACE =
      Set.of("tooth", "vestibuleDepthMm", "floorDepthMm", "facialFrenum", "lingualFrenum");
  private static final Set<String> TORUS =
      Set.of("there", "from", "to", "widthMm", "belowMarginMm");

  private final String name;
  private final JsonLines lines;

  private ChartReader(String name, JsonLines lines) {
    this.name = name;
    this.lines = lines;
  }

  /**
   * Reads a chart.
   *
   * @param text the JSON
   * @param name what messages call the file
   * @throws Refusal {@code chart-wrong}
   */
  public static Chart read(String text, String name) {
    JsonLines lines;
    try {
      lines = JsonLines.of(text);
    } catch (JsonLines.NoJson wrong) {
      throw AppRefusal.CHART_WRONG.with(name, wrong.line(), "the text", "it is no JSON");
    }
    return new ChartReader(name, lines).chart(lines.root());
  }

  private Chart chart(JsonNode json) {
    fields(json, "", TOP);
    if (!json.path("format").asText().equals(ChartJson.FORMAT)) {
      throw wrong("/format", json.path("format"), "\"" + ChartJson.FORMAT + "\"");
    }
    if (json.path("version").asInt() != ChartJson.VERSION) {
      throw wrong("/version", json.path("version"), Integer.toString(ChartJson.VERSION));
    }
    Jaw jaw =
        switch (json.path("jaw").asText()) {
          case "upper" -> Jaw.UPPER;
          case "lower" -> Jaw.LOWER;
          default -> throw wrong("/jaw", json.path("jaw"), "\"upper\" or \"lower\"");
        };
    SortedMap<ToothNumber, ToothEntry> teeth = new TreeMap<>();
    for (int i = 0; i < list(json, "/missing").size(); i++) {
      String at = "/missing/" + i;
      ToothNumber tooth = tooth(json.get("missing").get(i), at, jaw);
      once(teeth.put(tooth, ToothEntry.ABSENT) == null, at, tooth);
    }
    for (int i = 0; i < list(json, "/teeth").size(); i++) {
      String at = "/teeth/" + i;
      JsonNode one = json.get("teeth").get(i);
      fields(one, at, TOOTH);
      ToothNumber tooth = tooth(one.path("tooth"), at + "/tooth", jaw);
      once(teeth.put(tooth, entry(one, at)) == null, at + "/tooth", tooth);
    }
    SortedMap<ToothNumber, PlaceEntry> places = new TreeMap<>();
    for (int i = 0; i < list(json, "/places").size(); i++) {
      String at = "/places/" + i;
      JsonNode one = json.get("places").get(i);
      fields(one, at, PLACE);
      ToothNumber tooth = tooth(one.path("tooth"), at + "/tooth", jaw);
      once(places.put(tooth, place(one, at)) == null, at + "/tooth", tooth);
    }
    return new Chart(
        jaw,
        teeth,
        places,
        freeEnds(json.path("freeEnds")),
        tori(json.path("tori"), jaw),
        texts(json, "/allergies"),
        kind(Answer.class, json, "/allergiesAsked", Answer.NOT_KNOWN),
        number(json, "/openingMm", 0, Chart.WIDEST_OPENING_MM),
        notJudged(json),
        texts(json, "/notes"));
  }

  private ToothEntry entry(JsonNode one, String at) {
    JsonNode other = one.path("opposing");
    Opposing opposing = Opposing.NOT_KNOWN;
    if (!other.isMissingNode()) {
      String there = at + "/opposing";
      fields(other, there, OPPOSING);
      opposing =
          new Opposing(
              kind(Opposing.Kind.class, other, there + "/kind", Opposing.Kind.NOT_KNOWN),
              kind(Answer.class, other, there + "/contact", Answer.NOT_KNOWN),
              number(other, there + "/clearanceMm", -50, 50));
    }
    if (one.path("presence").isMissingNode()) {
      throw wrong(at + "/presence", one.path("presence"), words(Presence.class));
    }
    return new ToothEntry(
        kind(Presence.class, one, at + "/presence", Presence.PRESENT),
        kind(Answer.class, one, at + "/replace", Answer.NOT_KNOWN),
        kind(Answer.class, one, at + "/spaceClosed", Answer.NOT_KNOWN),
        kind(Answer.class, one, at + "/abutment", Answer.NOT_KNOWN),
        kind(Mobility.class, one, at + "/mobility", Mobility.NOT_KNOWN),
        number(one, at + "/crownToRoot", 0.01, ToothEntry.GREATEST_CROWN_TO_ROOT),
        kind(Restoration.class, one, at + "/restoration", Restoration.NOT_KNOWN),
        kind(Answer.class, one, at + "/aestheticZone", Answer.NOT_KNOWN),
        opposing);
  }

  private PlaceEntry place(JsonNode one, String at) {
    return new PlaceEntry(
        number(one, at + "/vestibuleDepthMm", 0, PlaceEntry.GREATEST_DEPTH_MM),
        number(one, at + "/floorDepthMm", 0, PlaceEntry.GREATEST_DEPTH_MM),
        kind(Answer.class, one, at + "/facialFrenum", Answer.NOT_KNOWN),
        kind(Answer.class, one, at + "/lingualFrenum", Answer.NOT_KNOWN));
  }

  private Map<Side, Firmness> freeEnds(JsonNode json) {
    Map<Side, Firmness> ends = new EnumMap<>(Side.class);
    if (!json.isMissingNode()) {
      fields(json, "/freeEnds", Set.of("right", "left"));
      for (Side side : Side.values()) {
        String at = "/freeEnds/" + ChartJson.word(side);
        Firmness firmness = kind(Firmness.class, json, at, Firmness.NOT_KNOWN);
        if (firmness != Firmness.NOT_KNOWN) {
          ends.put(side, firmness);
        }
      }
    }
    return ends;
  }

  private Map<Torus.Site, Torus> tori(JsonNode json, Jaw jaw) {
    Map<Torus.Site, Torus> tori = new EnumMap<>(Torus.Site.class);
    if (!json.isMissingNode()) {
      fields(
          json,
          "/tori",
          Arrays.stream(Torus.Site.values())
              .filter(site -> site.jaw() == jaw)
              .map(ChartJson::name)
              .collect(Collectors.toSet()));
      for (Torus.Site site : Torus.Site.values()) {
        JsonNode one = json.path(ChartJson.name(site));
        if (!one.isMissingNode()) {
          String at = "/tori/" + ChartJson.name(site);
          Torus torus = torus(one, at, jaw);
          torus
              .misplaced(site)
              .ifPresent(
                  w -> {
                    throw wrong(at + "/" + w.end(), one.path(w.end()), w.wanted());
                  });
          if (torus.there().known()) {
            tori.put(site, torus);
          }
        }
      }
    }
    return tori;
  }

  private Torus torus(JsonNode one, String at, Jaw jaw) {
    fields(one, at, TORUS);
    Answer there = kind(Answer.class, one, at + "/there", Answer.NOT_KNOWN);
    if (there != Answer.YES && one.size() > (one.has("there") ? 1 : 0)) {
      throw wrong(at + "/there", one.path("there"), "\"yes\", as a place or a size is told");
    }
    return new Torus(
        there,
        beside(one, at + "/from", jaw),
        beside(one, at + "/to", jaw),
        number(one, at + "/widthMm", 0, Torus.GREATEST_MM),
        number(one, at + "/belowMarginMm", 0, Torus.GREATEST_MM));
  }

  private Optional<ToothNumber> beside(JsonNode one, String at, Jaw jaw) {
    JsonNode value = field(one, at);
    return value.isMissingNode() || value.isNull()
        ? Optional.empty()
        : Optional.of(tooth(value, at, jaw));
  }

  private Set<NotJudged> notJudged(JsonNode json) {
    Set<NotJudged> found = EnumSet.noneOf(NotJudged.class);
    JsonNode list = list(json, "/notJudged");
    for (int i = 0; i < list.size(); i++) {
      found.add(kind(NotJudged.class, list.get(i), "/notJudged/" + i));
    }
    return found;
  }

  private void fields(JsonNode json, String at, Set<String> known) {
    if (!json.isObject()) {
      throw wrong(at, json, "an object");
    }
    for (Iterator<String> names = json.fieldNames(); names.hasNext(); ) {
      String field = names.next();
      if (!known.contains(field)) {
        throw AppRefusal.CHART_WRONG.with(
            name,
            lines.line(at + "/" + field),
            at + "/" + field,
            "there is no such field; known are "
                + String.join(", ", known.stream().sorted().toList()));
      }
    }
  }

  private JsonNode list(JsonNode json, String at) {
    JsonNode list = json.path(at.substring(1));
    if (!list.isArray() && !list.isMissingNode()) {
      throw wrong(at, list, "an array");
    }
    return list;
  }

  private List<String> texts(JsonNode json, String at) {
    List<String> texts = new ArrayList<>();
    JsonNode list = list(json, at);
    for (int i = 0; i < list.size(); i++) {
      if (!list.get(i).isTextual()) {
        throw wrong(at + "/" + i, list.get(i), "a text");
      }
      texts.add(list.get(i).asText());
    }
    return texts;
  }

  private ToothNumber tooth(JsonNode number, String at, Jaw jaw) {
    if (!number.isInt() || !ToothNumber.exists(number.asInt())) {
      throw wrong(at, number, "an FDI number, 11–18, 21–28, 31–38 or 41–48");
    }
    ToothNumber tooth = ToothNumber.of(number.asInt());
    if (tooth.jaw() != jaw) {
      throw wrong(at, number, "a tooth of the " + Words.jaw(jaw) + " jaw");
    }
    return tooth;
  }

  private void once(boolean first, String at, ToothNumber tooth) {
    if (!first) {
      throw AppRefusal.CHART_WRONG.with(
          name, lines.line(at), at, "tooth " + tooth + " is told twice");
    }
  }

  private OptionalDouble number(JsonNode json, String at, double least, double most) {
    JsonNode value = field(json, at);
    if (value.isMissingNode() || value.isNull()) {
      return OptionalDouble.empty();
    }
    double number = value.asDouble();
    if (!value.isNumber() || !(number >= least && number <= most)) {
      throw wrong(at, value, "a number from " + least + " to " + most + ", or null");
    }
    return OptionalDouble.of(number);
  }

  private <K extends Enum<K>> K kind(Class<K> type, JsonNode json, String at, K unsaid) {
    JsonNode value = field(json, at);
    return value.isMissingNode() ? unsaid : kind(type, value, at);
  }

  private <K extends Enum<K>> K kind(Class<K> type, JsonNode value, String at) {
    for (K kind : type.getEnumConstants()) {
      if (value.isTextual() && ChartJson.word(kind).equals(value.asText())) {
        return kind;
      }
    }
    throw wrong(at, value, words(type));
  }

  private static <K extends Enum<K>> String words(Class<K> type) {
    List<String> words = new ArrayList<>();
    for (K kind : type.getEnumConstants()) {
      words.add("\"" + ChartJson.word(kind) + "\"");
    }
    return "one of " + String.join(", ", words);
  }

  private static JsonNode field(JsonNode json, String at) {
    return json.path(at.substring(at.lastIndexOf('/') + 1));
  }

  private Refusal wrong(String at, JsonNode value, String wanted) {
    String there = value instanceof MissingNode ? "nothing is there" : "there is " + value;
    return AppRefusal.CHART_WRONG.with(
        name, lines.line(at), at.isEmpty() ? "the text" : at, there + ", wanted is " + wanted);
  }
}
