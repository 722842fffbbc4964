package rodwork.app.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.OptionalDouble;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.Firmness;
import rodwork.anatomy.chart.PlaceEntry;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothEntry.Mobility;
import rodwork.anatomy.chart.ToothEntry.Opposing;
import rodwork.anatomy.chart.Torus;

/**
 * A chart as JSON: docs/schema/chart.schema.json. What is not known is left out; {@link
 * ChartReader} reads it back.
 */
public final class ChartJson {
  static final String FORMAT = "rodwork chart";
  static final int VERSION = 1;

  private ChartJson() {}

  /** The whole chart. */
  public static ObjectNode of(Chart chart) {
    ObjectNode json = Json.object();
    json.put("format", FORMAT);
    json.put("version", VERSION);
    json.put("jaw", Words.jaw(chart.jaw()));
    ArrayNode teeth = json.putArray("teeth");
    chart.teeth().forEach((tooth, entry) -> teeth.add(tooth(tooth.fdi(), entry)));
    ArrayNode places = json.putArray("places");
    chart.places().forEach((tooth, entry) -> places.add(place(tooth.fdi(), entry)));
    ObjectNode freeEnds = Json.object();
    for (Side side : Side.values()) {
      if (chart.freeEnd(side) != Firmness.NOT_KNOWN) {
        freeEnds.put(word(side), word(chart.freeEnd(side)));
      }
    }
    json.set("freeEnds", freeEnds);
    ObjectNode tori = json.putObject("tori");
    for (Torus.Site site : Torus.Site.values()) {
      if (chart.torus(site).there().known()) {
        tori.set(name(site), torus(chart.torus(site)));
      }
    }
    json.set("allergies", Json.texts(chart.allergies()));
    answer(json, "allergiesAsked", chart.allergiesAsked());
    number(json, "openingMm", chart.openingMm());
    json.set(
        "notJudged", Json.texts(chart.notJudged().stream().map(ChartJson::word).sorted().toList()));
    json.set("notes", Json.texts(chart.notes()));
    return json;
  }

  private static ObjectNode tooth(int fdi, ToothEntry entry) {
    ObjectNode json = Json.object();
    json.put("tooth", fdi);
    json.put("presence", word(entry.presence()));
    answer(json, "replace", entry.replace());
    answer(json, "spaceClosed", entry.spaceClosed());
    answer(json, "abutment", entry.abutment());
    if (entry.mobility() != Mobility.NOT_KNOWN) {
      json.put("mobility", word(entry.mobility()));
    }
    number(json, "crownToRoot", entry.crownToRoot());
    if (entry.restoration() != ToothEntry.Restoration.NOT_KNOWN) {
      json.put("restoration", word(entry.restoration()));
    }
    answer(json, "aestheticZone", entry.aestheticZone());
    Opposing opposing = entry.opposing();
    if (!opposing.equals(Opposing.NOT_KNOWN)) {
      ObjectNode other = json.putObject("opposing");
      if (opposing.kind() != Opposing.Kind.NOT_KNOWN) {
        other.put("kind", word(opposing.kind()));
      }
      answer(other, "contact", opposing.contact());
      number(other, "clearanceMm", opposing.clearanceMm());
    }
    return json;
  }

  private static ObjectNode place(int fdi, PlaceEntry entry) {
    ObjectNode json = Json.object();
    json.put("tooth", fdi);
    number(json, "vestibuleDepthMm", entry.vestibuleDepthMm());
    number(json, "floorDepthMm", entry.floorDepthMm());
    answer(json, "facialFrenum", entry.facialFrenum());
    answer(json, "lingualFrenum", entry.lingualFrenum());
    return json;
  }

  private static ObjectNode torus(Torus torus) {
    ObjectNode json = Json.object();
    answer(json, "there", torus.there());
    torus.from().ifPresent(t -> json.put("from", t.fdi()));
    torus.to().ifPresent(t -> json.put("to", t.fdi()));
    number(json, "widthMm", torus.widthMm());
    number(json, "belowMarginMm", torus.belowMarginMm());
    return json;
  }

  /** The name of a torus in a chart. */
  public static String name(Torus.Site site) {
    return switch (site) {
      case PALATAL -> "palatal";
      case MANDIBULAR_RIGHT -> "mandibularRight";
      case MANDIBULAR_LEFT -> "mandibularLeft";
    };
  }

  private static void answer(ObjectNode json, String name, Answer answer) {
    if (answer.known()) {
      json.put(name, word(answer));
    }
  }

  /** As it is: a person's number is not rounded. */
  private static void number(ObjectNode json, String name, OptionalDouble value) {
    value.ifPresent(v -> json.put(name, v));
  }

  /** The word of a kind: "to be extracted", "not known"; grades of mobility as they are written. */
  static String word(Enum<?> kind) {
    return kind instanceof Mobility grade && grade.name().startsWith("I")
        ? grade.name()
        : kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
