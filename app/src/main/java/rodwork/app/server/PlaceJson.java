package rodwork.app.server;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Optional;
import rodwork.app.report.Json;
import rodwork.geometry.overhang.Overhang;
import rodwork.geometry.overhang.OverhangReading;
import rodwork.survey.Profile;
import rodwork.survey.RodReading;
import rodwork.survey.Seat;

/** Readings at a place as the bench is told: {@code Reading}, {@code Place}, {@code Profile}. */
final class PlaceJson {
  private PlaceJson() {}

  static ObjectNode reading(RodReading reading) {
    OverhangReading at = reading.overhang();
    ObjectNode json = Json.object();
    json.set("point", Json.point(at.point()));
    Json.put(json, "depthMm", at.depthMm());
    Json.put(json, "uncertaintyMm", reading.uncertaintyMm());
    json.put("capped", at.capped());
    json.put("unsure", at.unsure());
    json.put("noGaugeReaches", at.noGaugeReaches());
    json.set("free", Json.point(at.free()));
    boolean touches = at.depthMm() > 0 && !at.capped();
    json.set("contact", Json.orNull(touches ? Json.point(at.contact()) : null));
    json.put(
        "fits",
        Double.isNaN(reading.fitsMm())
            ? null
            : String.format(Locale.ROOT, "%.2f", reading.fitsMm()));
    json.put("fitsText", reading.fitsText());
    below(json, reading);
    json.put("tooCloseToCall", reading.tooCloseToCall());
    return json;
  }

  /** Where a gauge sits, or why it does not. */
  static void seat(ObjectNode json, Seat seat, double gaugeMm) {
    Optional<Seat.Place> place = seat.place();
    if (place.isEmpty()) {
      json.putNull("place");
      json.put("why", seat.why());
      return;
    }
    place(json.putObject("place"), place.get(), gaugeMm);
    json.putNull("why");
  }

  /** A place where a gauge sits. */
  static void place(ObjectNode one, Seat.Place place, double gaugeMm) {
    RodReading reading = place.reading();
    OverhangReading at = reading.overhang();
    one.set("point", Json.point(place.point()));
    one.put("triangle", place.triangle());
    Json.put(one, "depthMm", at.depthMm());
    one.put("gaugeMm", gaugeMm);
    below(one, reading);
    one.put(
        "flags",
        (at.capped() ? Overhang.CAPPED : 0)
            | (at.unsure() ? Overhang.UNSURE : 0)
            | (at.noGaugeReaches() ? Overhang.NO_GAUGE_REACHES : 0));
  }

  static ObjectNode profile(Profile profile, Optional<Double> gaugeMm) {
    ObjectNode json = Json.object();
    RodReading reading = profile.reading();
    json.set("direction", Json.direction(profile.direction()));
    json.set("origin", Json.point(profile.origin()));
    ArrayNode polylines = json.putArray("polylines");
    double top = 0;
    for (var outline : profile.outlines()) {
      ArrayNode polyline = polylines.addArray();
      for (Profile.Spot spot : outline) {
        polyline.add(spot(spot));
        top = Math.max(top, spot.h());
      }
    }
    ObjectNode rod = json.putObject("rod");
    Json.put(rod, "s", profile.rod());
    Json.put(rod, "top", top);
    rod.set("contact", Json.orNull(profile.contact().map(PlaceJson::spot).orElse(null)));
    json.set("place", spot(new Profile.Spot(0, 0)));
    json.set("surveyLine", Json.orNull(profile.contact().map(PlaceJson::spot).orElse(null)));
    Json.put(json, "depthMm", reading.overhang().depthMm());
    Json.put(json, "depthInSectionMm", profile.depthInSectionMm());
    json.set(
        "gauge",
        Json.orNull(
            profile
                .gauge()
                .map(
                    at -> {
                      ObjectNode gauge = Json.object();
                      gauge.put("mm", gaugeMm.orElse(Double.NaN));
                      gauge.set("point", spot(at));
                      return gauge;
                    })
                .orElse(null)));
    below(json, reading);
    return json;
  }

  private static void below(ObjectNode json, RodReading reading) {
    boolean under = reading.overhang().depthMm() > 0 && !reading.overhang().capped();
    Json.put(json, "belowSurveyLineMm", under ? reading.belowSurveyLineMm() : Double.NaN);
    Json.put(json, "convergenceDeg", reading.convergenceDeg());
    Json.put(json, "depthAtReferenceMm", reading.depthAtReferenceMm());
  }

  private static ArrayNode spot(Profile.Spot spot) {
    ObjectNode pair = Json.object();
    Json.put(pair, "s", spot.s());
    Json.put(pair, "h", spot.h());
    return Json.array().add(pair.get("s")).add(pair.get("h"));
  }
}
