package rodwork.app.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rodwork.app.operation.SearchPath;
import rodwork.survey.Tilt;
import rodwork.survey.path.Appearance;
import rodwork.survey.path.Interference;
import rodwork.survey.path.PathComparison;
import rodwork.survey.path.PathFactors;
import rodwork.survey.path.Retention;
import rodwork.survey.path.TerminalSite;
import rodwork.survey.plane.PlaneReading;
import rodwork.survey.plane.PlaneSite;

/** A search for the path as JSON; the schema is {@code docs/schema/path.schema.json}. */
public final class PathJson {
  public static final String FORMAT = "rodwork path";

  private PathJson() {}

  public static ObjectNode of(SearchPath.Found found) {
    ObjectNode json = Json.object();
    json.put("format", FORMAT);
    json.put("version", 1);
    json.put("cast", found.cast().name());
    Json.put(json, "coneDeg", found.map().coneDeg());
    Json.put(json, "stepDeg", found.map().stepDeg());
    json.put("tilts", found.map().tilts().size());
    found.teeth().dentition().chart().openingMm().ifPresent(mm -> Json.put(json, "openingMm", mm));
    ArrayNode abutments = json.putArray("abutments");
    found.sites().abutments().forEach(abutments::add);
    json.set("reference", factors(found, found.reference()));
    json.set("best", factors(found, found.best()));
    json.set("comparison", comparison(found.comparison()));
    ArrayNode choices = json.putArray("choices");
    found.choices().forEach(choice -> choices.add(factors(found, choice)));
    ArrayNode never = json.putArray("neverHeld");
    found
        .map()
        .neverHeld(found.cast().surveyor().rules().fits().value())
        .forEach(
            (tooth, mm) -> {
              ObjectNode one = never.addObject();
              one.put("tooth", tooth);
              Json.put(one, "mostMm", mm);
            });
    return json;
  }

  private static ObjectNode comparison(PathComparison comparison) {
    ObjectNode json = Json.object();
    json.set("better", changes(comparison.better()));
    json.set("worse", changes(comparison.worse()));
    return json;
  }

  /** Two tilts side by side: each with its figures, and every figure compared. */
  public static ObjectNode sideBySide(List<PlaneSite> sites, PathComparison comparison) {
    ObjectNode json = Json.object();
    json.set("from", factors(sites, comparison.from()));
    json.set("to", factors(sites, comparison.to()));
    ArrayNode rows = changes(comparison.figures());
    for (int i = 0; i < rows.size(); i++) {
      PathComparison.Change change = comparison.figures().get(i);
      ((ObjectNode) rows.get(i))
          .put(
              "turn",
              comparison.better().contains(change)
                  ? "better"
                  : comparison.worse().contains(change) ? "worse" : "same");
    }
    json.set("rows", rows);
    return json;
  }

  private static ArrayNode changes(List<PathComparison.Change> changes) {
    ArrayNode array = Json.array();
    for (PathComparison.Change change : changes) {
      ObjectNode one = array.addObject();
      one.put("factor", word(change.factor()));
      one.put("what", change.what().fdi());
      one.set("pieces", Json.pieces(change.what()));
      Json.put(one, "from", change.from());
      Json.put(one, "to", change.to());
      one.put("unit", change.unit());
    }
    return array;
  }

  static String word(PathFactors.Factor factor) {
    return factor.name().toLowerCase(Locale.ROOT);
  }

  /** One tilt with all its figures. */
  public static ObjectNode factors(SearchPath.Found found, PathFactors tilt) {
    return factors(found.sites().planes(), tilt);
  }

  /** One tilt with all its figures, on a cast with these surfaces that could guide. */
  public static ObjectNode factors(List<PlaneSite> sites, PathFactors tilt) {
    ObjectNode json = Json.object();
    json.set("tilt", tilt(tilt.tilt()));
    json.set("axis", Json.direction(tilt.axis()));
    Json.put(json, "worth", tilt.worth());
    ObjectNode worths = json.putObject("worths");
    ObjectNode figures = json.putObject("figures");
    for (PathFactors.Factor factor : PathFactors.Factor.values()) {
      Json.put(worths, word(factor), tilt.worth(factor));
      Json.put(figures, word(factor), tilt.figure(factor));
    }
    ArrayNode planes = json.putArray("planes");
    for (int i = 0; i < sites.size(); i++) {
      planes.add(plane(sites.get(i), tilt.guiding().planes().get(i)));
    }
    ArrayNode abutments = json.putArray("abutments");
    tilt.retention().abutments().forEach(abutment -> abutments.add(abutment(abutment)));
    Json.put(json, "evenness", tilt.retention().evenness());
    ArrayNode zones = json.putArray("zones");
    tilt.interference().zones().forEach(zone -> zones.add(zone(zone)));
    ArrayNode fronts = json.putArray("fronts");
    tilt.appearance().teeth().forEach(tooth -> fronts.add(front(tooth)));
    ObjectNode travel = json.putObject("travel");
    Json.put(travel, "alongMm", tilt.travel().alongMm());
    Json.put(travel, "forwardMm", tilt.travel().forwardMm());
    Json.put(travel, "rightMm", tilt.travel().rightMm());
    Json.put(travel, "roomMm", tilt.travel().roomMm());
    return json;
  }

  private static ObjectNode tilt(Tilt tilt) {
    ObjectNode json = Json.object();
    Json.put(json, "anteriorDeg", tilt.anteriorDeg());
    Json.put(json, "rightDeg", tilt.rightDeg());
    Json.put(json, "totalDeg", tilt.totalDeg());
    return json;
  }

  private static ObjectNode plane(PlaneSite site, Optional<PlaneReading> reading) {
    ObjectNode json = Json.object();
    json.put("tooth", site.tooth());
    json.put("surface", site.face().name().toLowerCase(Locale.ROOT));
    json.put("room", reading.isPresent());
    reading.ifPresent(
        plane -> {
          Json.put(json, "heightMm", plane.heightMm());
          Json.put(json, "angleDeg", plane.angleDeg());
          Json.put(json, "enamelMm", plane.greatestMm());
          Json.put(json, "meanEnamelMm", plane.meanMm());
          Json.put(json, "volumeMm3", plane.volumeMm3());
        });
    return json;
  }

  /** Such as {@code mesiofacial}. */
  static String place(TerminalSite site) {
    String third =
        switch (site.third()) {
          case MESIAL -> "mesio";
          case MIDDLE -> "mid";
          case DISTAL -> "disto";
        };
    return third + (site.facial() ? "facial" : "lingual");
  }

  private static ObjectNode abutment(Retention.Abutment abutment) {
    ObjectNode json = Json.object();
    json.put("tooth", abutment.tooth());
    json.put("place", place(abutment.site()));
    json.set("point", Json.point(abutment.place()));
    Json.put(json, "depthMm", abutment.depthMm());
    Json.put(json, "referenceMm", abutment.referenceMm());
    Json.put(json, "creditMm", abutment.creditMm());
    Json.put(json, "riseMm", abutment.riseMm());
    return json;
  }

  private static ObjectNode zone(Interference.Reading reading) {
    ObjectNode json = Json.object();
    json.put("kind", reading.zone().kind().word());
    json.put("name", reading.zone().name().fdi());
    Json.put(json, "meanMm", reading.meanMm());
    Json.put(json, "deepestMm", reading.deepestMm());
    Json.put(json, "undercutMm2", reading.undercutMm2());
    Json.put(json, "volumeMm3", reading.volumeMm3());
    return json;
  }

  private static ObjectNode front(Appearance.Reading reading) {
    ObjectNode json = Json.object();
    json.put("tooth", reading.tooth());
    Json.put(json, "lineMm", reading.lineMm());
    Json.put(json, "crownMm", reading.crownMm());
    Json.put(json, "gapMm", reading.gapMm());
    return json;
  }
}
