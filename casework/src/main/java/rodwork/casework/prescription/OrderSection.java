package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/** What is ordered beside the framework: stages at which it comes back, and surveyed crowns. */
final class OrderSection {
  private static final String ASKED = "\u2612";
  private static final String NOT_ASKED = "\u2610";

  private final JsonNode content;
  private final Html html;

  OrderSection(JsonNode content, Html html) {
    this.content = content;
    this.html = html;
  }

  void stages() {
    JsonNode stages = content.path("stages");
    if (stages.isEmpty()) {
      return;
    }
    boolean proposed = stages.get(0).path("proposed").asBoolean();
    html.heading(
        proposed
            ? "Stages asked for: as is usual, to be confirmed or changed"
            : "Stages asked for");
    List<String> lines = new ArrayList<>();
    for (JsonNode one : stages) {
      lines.add(
          (one.path("asked").asBoolean() ? ASKED : NOT_ASKED)
              + " "
              + one.path("stage").asText()
              + (proposed ? " (" + one.path("because").asText() + ")" : ""));
    }
    html.paragraph(String.join("   ", lines));
  }

  void crowns() {
    JsonNode crowns = content.path("surveyedCrowns");
    if (crowns.isEmpty()) {
      return;
    }
    html.raw("<div class=\"keep\">");
    html.heading("Surveyed crowns: an order of their own, made at this path before the framework");
    html.raw("<table class=\"rows crowns\"><thead>");
    html.row("th", List.of("tooth", "guiding planes", "rest seats", "undercut", "because"));
    html.raw("</thead><tbody>");
    for (JsonNode crown : crowns) {
      html.row("td", row(crown));
    }
    html.raw("</tbody></table>");
    html.paragraph(
        "Facing the reciprocal arm: parallel to the path over the whole way that the tip springs, with"
            + " a ledge below. Material and shade of the crowns, and who makes them:");
    html.raw("<table class=\"fields\"><tbody>");
    html.field("", "");
    html.raw("</tbody></table></div>");
  }

  private static List<String> row(JsonNode crown) {
    List<String> planes = new ArrayList<>();
    for (JsonNode p : crown.path("planes")) {
      planes.add(p.path("surface").asText() + " " + mm(p.path("heightMm")) + " high");
    }
    List<String> rests = new ArrayList<>();
    for (JsonNode r : crown.path("rests")) {
      rests.add(
          r.path("kind").asText()
              + ", "
              + r.path("side").asText()
              + ": "
              + Figures.text(r.path("lengthMm"), Figures.MM)
              + " × "
              + Figures.text(r.path("widthMm"), Figures.MM)
              + ", "
              + mm(r.path("seatDepthMm"))
              + " deep");
    }
    JsonNode undercut = crown.path("undercut");
    List<String> because = new ArrayList<>();
    crown.path("because").forEach(b -> because.add(b.asText()));
    return List.of(
        crown.path("tooth").asText()
            + (crown.path("decided").asBoolean() ? "" : "\n" + NOT_ASKED + " to be considered"),
        planes.isEmpty() ? "none" : String.join("\n", planes),
        rests.isEmpty() ? "none" : String.join("\n", rests),
        undercut.isObject()
            ? mm(undercut.path("gaugeMm"))
                + " exactly, "
                + undercut.path("place").asText()
                + ", "
                + mm(undercut.path("fromMarginMm"))
                + " or more from the margin, for the "
                + undercut.path("clasp").asText()
            : "no clasp is planned there",
        String.join("; ", because));
  }

  private static String mm(JsonNode number) {
    return Figures.text(number, Figures.MM) + " mm";
  }
}
