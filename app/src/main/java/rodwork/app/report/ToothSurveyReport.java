package rodwork.app.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rodwork.anatomy.chart.Notation;
import rodwork.survey.RodReading;
import rodwork.survey.tooth.CrownZone;
import rodwork.survey.tooth.ToothSurvey;
import rodwork.survey.tooth.ZoneDepth;

/** The undercut by tooth, as JSON (in docs/schema/survey.schema.json) and as a table. */
public final class ToothSurveyReport {
  private ToothSurveyReport() {}

  /** The member {@code teeth} of a survey. */
  public static ArrayNode json(List<ToothSurvey> teeth) {
    ArrayNode array = Json.array();
    for (ToothSurvey tooth : teeth) {
      ObjectNode one = array.addObject();
      one.put("tooth", tooth.tooth().number().fdi());
      ArrayNode zones = one.putArray("zones");
      tooth.zones().forEach(zone -> zones.add(zone(zone)));
    }
    return array;
  }

  private static ObjectNode zone(ZoneDepth zone) {
    ObjectNode json = Json.object();
    json.put("zone", zone.zone().label());
    Json.put(json, "depthMm", zone.depthMm());
    Json.put(json, "hiddenMm", zone.hiddenMm());
    zone.deepest()
        .ifPresent(
            deepest -> {
              RodReading reading = deepest.reading();
              json.set("point", Json.point(deepest.point()));
              Json.put(json, "uncertaintyMm", reading.uncertaintyMm());
              Json.put(json, "fitsMm", reading.fitsMm());
              json.put("fits", reading.fitsText());
              Json.put(json, "fromMarginMm", deepest.fromMarginMm());
              Json.put(json, "overMarginMm", deepest.overMarginMm());
              Json.put(json, "belowSurveyLineMm", reading.belowSurveyLineMm());
              Json.put(json, "convergenceDeg", reading.convergenceDeg());
              Json.put(json, "depthAtReferenceMm", reading.depthAtReferenceMm());
              json.put("tooCloseToCall", reading.tooCloseToCall());
            });
    return json;
  }

  /** Two lines a tooth, facial and lingual. */
  public static List<String> table(List<ToothSurvey> teeth, Notation notation) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "Deepest undercut of each third [mm], = the gauge that fits, @ mm from the gingival margin;"
            + " – none; * deeper where no gauge reaches.");
    lines.add(row("tooth", "", "mesial", "middle", "distal"));
    for (ToothSurvey tooth : teeth) {
      List<String> cells = CrownZone.THIRDS.stream().map(z -> cell(tooth.zone(z))).toList();
      String number = tooth.tooth().number().in(notation);
      lines.add(row(number, "facial", cells.get(0), cells.get(1), cells.get(2)));
      lines.add(row("", "lingual", cells.get(3), cells.get(4), cells.get(5)));
    }
    return lines;
  }

  private static String cell(ZoneDepth zone) {
    String star = zone.hiddenMm() > zone.depthMm() ? "*" : "";
    return zone.deepest()
        .map(
            deepest -> {
              double fits = deepest.reading().fitsMm();
              return String.format(Locale.ROOT, "%.2f", deepest.depthMm())
                  + (Double.isNaN(fits) ? "" : String.format(Locale.ROOT, "=%.2f", fits))
                  + (Double.isNaN(deepest.fromMarginMm())
                      ? ""
                      : String.format(Locale.ROOT, "@%.1f", Math.abs(deepest.fromMarginMm())))
                  + star;
            })
        .orElse("–" + star);
  }

  private static String row(String tooth, String side, String a, String b, String c) {
    return String.format(Locale.ROOT, "%-6s %-8s %-16s %-16s %s", tooth, side, a, b, c)
        .stripTrailing();
  }
}
