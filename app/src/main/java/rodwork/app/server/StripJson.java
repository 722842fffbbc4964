package rodwork.app.server;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Arch;
import rodwork.anatomy.dentition.Dentition;
import rodwork.app.operation.FoundTeeth;
import rodwork.app.operation.OpenedCast;
import rodwork.app.report.Json;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.survey.plane.PlaneReading;
import rodwork.survey.plane.PlaneRules;
import rodwork.survey.plane.PlaneSection;
import rodwork.survey.strip.ParallelStrip;
import rodwork.survey.strip.RodSection;

/** The parallel strip as the bench is told: {@code StripSection}s. */
final class StripJson {
  private StripJson() {}

  /** The sections of a cast; an empty strip where its teeth are not known. */
  static ParallelStrip strip(@Nullable FoundTeeth teeth, PlaneRules rules) {
    Dentition dentition = teeth == null ? null : teeth.dentition();
    if (teeth == null || dentition == null) {
      return ParallelStrip.EMPTY;
    }
    OpenedCast cast = teeth.cast();
    return ParallelStrip.of(
        new Arch(cast.cast().topology(), cast.surface(), cast.frame()),
        TriangleTree.of(cast.mesh()),
        dentition,
        rules);
  }

  static ArrayNode of(List<ParallelStrip.Reading> readings) {
    ArrayNode all = Json.array();
    for (ParallelStrip.Reading reading : readings) {
      RodSection section = reading.section();
      ObjectNode one = all.addObject();
      one.put("tooth", reading.tooth());
      one.put("surface", reading.face().name().toLowerCase(Locale.ROOT));
      ArrayNode line = one.putArray("line");
      section.line().forEach(spot -> line.add(spot(spot)));
      Json.put(one, "rod", section.rodMm());
      Json.put(one, "foot", section.footMm());
      one.set("contact", spot(section.contact()));
      one.set("deepest", spot(section.deepest()));
      Json.put(one, "gapMm", section.gapMm());
      Json.put(one, "belowMm", section.belowMm());
      one.set("plane", Json.orNull(reading.plane().map(StripJson::plane).orElse(null)));
    }
    return all;
  }

  private static ObjectNode plane(PlaneReading plane) {
    ObjectNode json = Json.object();
    Json.put(json, "angleDeg", plane.angleDeg());
    Json.put(json, "heightMm", plane.heightMm());
    Json.put(json, "enamelMm", plane.greatestMm());
    return json;
  }

  private static ArrayNode spot(PlaneSection.Spot spot) {
    ObjectNode pair = Json.object();
    Json.put(pair, "s", spot.t());
    Json.put(pair, "h", spot.h());
    return Json.array().add(pair.get("s")).add(pair.get("h"));
  }
}
