package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import rodwork.rules.Verdict;

/** The plan on paper: abutments, connectors, bases, block-out, findings. */
final class PlanSection {
  private final JsonNode content;
  private final Html html;

  PlanSection(JsonNode content, Html html) {
    this.content = content;
    this.html = html;
  }

  void abutments() {
    html.heading("Abutments").raw("<table class=\"rows abutments\"><thead>");
    html.row(
        "th",
        List.of(
            "tooth",
            "clasp",
            "gauge, tip",
            "undercut at the tip",
            "arms",
            "rest: seat along × across, deep",
            "guiding plate"));
    html.raw("</thead><tbody>");
    for (JsonNode row : content.path("abutments")) {
      html.row("td", abutment(row));
    }
    html.raw("</tbody></table>");
    html.paragraph(
        "Rests at least "
            + mm(content.path("asked").path("restThicknessMm"))
            + " thick at the marginal ridge. The prescriber may strike out a clasp and write"
            + " another."
            + bent());
  }

  /**
   * Which arms the usual material does not hold, and what would: one line, for cells are narrow.
   */
  private String bent() {
    StringBuilder told = new StringBuilder();
    List<String> notKnown = new ArrayList<>();
    for (JsonNode row : content.path("abutments")) {
      JsonNode clasp = row.path("clasp");
      String holds = clasp.path("holdsIn").asText();
      if (!holds.isEmpty()) {
        told.append(told.isEmpty() ? " * Arms: " : "; ")
            .append(row.path("tooth").asText())
            .append(bends(clasp) ? " stays bent; safe: " : " may stay bent; safe: ")
            .append(holds);
      } else if (clasp.path("armStress").asText().equals(Verdict.NOT_KNOWN.words())) {
        notKnown.add(row.path("tooth").asText());
      }
    }
    String bent = told.isEmpty() ? "" : told + ".";
    return notKnown.isEmpty()
        ? bent
        : bent
            + " Whether the arm holds is not known until its undercut is made: "
            + String.join(", ", notKnown)
            + ".";
  }

  private List<String> abutment(JsonNode row) {
    List<String> cells = new ArrayList<>();
    JsonNode spaces = row.path("spaces");
    cells.add(
        row.path("tooth").asText()
            + (spaces.isEmpty() ? "\nno space" : "\nspace " + String.join(", ", texts(spaces))));
    JsonNode clasp = row.path("clasp");
    if (!clasp.isObject()) {
      cells.addAll(List.of("none", "", "", ""));
    } else {
      String answer = clasp.path("answer").asText();
      cells.add(
          clasp.path("name").asText()
              + ", from "
              + clasp.path("side").asText()
              + "\n"
              + told(clasp, answer)
              + (clasp.path("chosen").asBoolean() ? "; chosen by the prescriber" : ""));
      cells.add(
          mm(clasp.path("gaugeMm"))
              + " ("
              + Figures.text(clasp.path("gaugeInch"), 3)
              + " in)\n"
              + clasp.path("place").asText("no place"));
      cells.add(
          clasp.path("undercutMm").isNumber()
              ? mm(clasp.path("undercutMm"))
                  + " (untilted "
                  + Figures.text(clasp.path("undercutAtReferenceMm"), Figures.MM)
                  + "), "
                  + Figures.text(clasp.path("belowSurveyLineMm"), Figures.MM)
                  + " below the line, "
                  + Figures.text(clasp.path("fromMarginMm"), Figures.MM)
                  + " from the margin"
              : "no gauge mark there yet");
      cells.add(
          clasp.path("approach").asText()
              + (clasp.path("armMm").isNumber() ? ", " + mm(clasp.path("armMm")) : "")
              + ", "
              + material(clasp)
              + "\nagainst it: "
              + clasp.path("reciprocal").asText()
              + (clasp.path("reciprocalMm").isNumber() ? ", " + mm(clasp.path("reciprocalMm")) : "")
              + (clasp.path("armByHand").asBoolean()
                  ? "\narm shaped by hand: as drawn, not as laid out"
                  : ""));
    }
    List<String> rests = new ArrayList<>();
    for (JsonNode r : row.path("rests")) {
      String side = r.path("side").asText();
      rests.add(
          r.path("kind").asText()
              + (side.equals("lingual") ? "" : ", " + side)
              + ": "
              + Figures.text(r.path("lengthMm"), Figures.MM)
              + " × "
              + Figures.text(r.path("widthMm"), Figures.MM)
              + ", "
              + mm(r.path("seatDepthMm"))
              + (r.path("indirectRetainer").asBoolean() ? "; indirect retainer" : ""));
    }
    cells.add(rests.isEmpty() ? "none" : String.join("\n", rests));
    List<String> plates = new ArrayList<>();
    for (JsonNode p : row.path("guidingPlates")) {
      plates.add(
          p.path("side").asText()
              + ": parallel now "
              + Figures.text(p.path("parallelMm"), Figures.MM)
              + " of "
              + mm(p.path("wantedMm")));
    }
    cells.add(String.join("\n", plates));
    return cells;
  }

  void connectors() {
    html.raw("<div class=\"keep\">").heading("Connectors and bases");
    html.raw("<table class=\"fields narrow\"><tbody>");
    JsonNode major = content.path("majorConnector");
    if (major.isObject()) {
      html.field("major connector", major(major));
    } else {
      html.field("major connector", "");
    }
    List<String> minors = new ArrayList<>();
    for (JsonNode m : content.path("minorConnectors")) {
      minors.add(
          m.path("tooth").asText() + " " + m.path("side").asText() + " " + mm(m.path("lengthMm")));
    }
    html.field(
        "minor connectors",
        minors.isEmpty()
            ? "none apart from the bases"
            : String.join(", ", minors)
                + "; "
                + mm(content.path("asked").path("minorThicknessMm"))
                + " thick");
    for (JsonNode b : content.path("bases")) {
      html.field("denture base", base(b));
    }
    JsonNode support = content.path("support");
    List<String> indirect = new ArrayList<>();
    for (JsonNode i : support.path("indirectRetainers")) {
      indirect.add(
          i.path("tooth").asText()
              + " "
              + i.path("kind").asText()
              + ", "
              + mm(i.path("distanceMm"))
              + " from the fulcrum line, "
              + Figures.text(i.path("ratio"), 2)
              + " of the base end's distance");
    }
    JsonNode fulcrum = support.path("fulcrum");
    html.field(
        "indirect retainers",
        !fulcrum.isObject()
            ? "none: no base can turn"
            : (indirect.isEmpty() ? "none found" : String.join("; ", indirect))
                + "; fulcrum line "
                + fulcrum.path("right").asText()
                + " to "
                + fulcrum.path("left").asText());
    html.raw("</tbody></table></div>");
  }

  private String major(JsonNode major) {
    return major.path("kind").asText()
        + ": "
        + Figures.text(major.path("areaMm2"), Figures.AREA)
        + " mm², at least "
        + mm(major.path("leastWidthMm"))
        + " wide, "
        + mm(major.path("thicknessMm"))
        + " thick"
        + (major.path("openingMm2").isNumber()
            ? ", opening " + Figures.text(major.path("openingMm2"), Figures.AREA) + " mm²"
            : "")
        + "; border "
        + (major.path("fromMarginsMm").isNumber()
            ? mm(major.path("fromMarginsMm")) + " from the gingival margins at its nearest"
            : "on the teeth")
        + ", wanted "
        + mm(content.path("asked").path("borderFromMarginsMm"))
        + (content.path("jaw").asText().equals("lower")
            ? "; room to the floor of the mouth: " + major.path("room").asText()
            : "")
        + ". "
        + (major.path("chosen").asBoolean() ? "Chosen: " : "Because ")
        + major.path("because").asText()
        + ".";
  }

  private static String base(JsonNode b) {
    return String.join(", ", texts(b.path("teeth")))
        + (b.path("freeEnd").asBoolean() ? " (free end)" : "")
        + ": "
        + Figures.text(b.path("areaMm2"), Figures.AREA)
        + " mm², finish line "
        + mm(b.path("finishLineMm"))
        + " long"
        + (b.path("tissueStop").asBoolean() ? ", tissue stop as drawn" : "");
  }

  void blockOut() {
    html.heading("Block-out and relief").raw("<table class=\"rows three\"><tbody>");
    for (JsonNode row : content.path("blockOut")) {
      html.row(
          "td",
          List.of(
              row.path("where").asText(),
              row.path("what").asText(),
              row.path("amountMm").isNumber() ? mm(row.path("amountMm")) : ""));
    }
    html.raw("</tbody></table>");
  }

  /** What the plan does not meet, and what it hangs on; like lines are told in one. */
  void findings() {
    List<String> right = told(true);
    List<String> open = told(false);
    if (right.isEmpty() && open.isEmpty()) {
      return;
    }
    html.heading("Rules that the plan does not meet, or that hang on what is not known");
    html.raw("<div class=\"tight\">");
    if (!right.isEmpty()) {
      html.paragraph(
          "Put right by the preparation, by the cut that is ordered: "
              + String.join("; ", right)
              + ".");
      html.paragraph(open.isEmpty() ? "Nothing stays open." : "Stays open:");
    }
    if (!open.isEmpty()) {
      html.list(open);
    }
    html.raw("</div>");
  }

  private List<String> told(boolean right) {
    Map<String, List<JsonNode>> lines = new LinkedHashMap<>();
    for (JsonNode f : content.path("findings")) {
      if (f.path("putRightBy").isObject() == right) {
        String key = (right ? "" : f.path("verdict").asText() + ": ") + f.path("what").asText();
        lines.computeIfAbsent(key, _ -> new ArrayList<>()).add(f);
      }
    }
    List<String> told = new ArrayList<>();
    lines.forEach((key, findings) -> told.add(line(key, findings)));
    return told;
  }

  private static String line(String key, List<JsonNode> findings) {
    boolean oneLimit = findings.stream().map(f -> f.path("limit").asText()).distinct().count() == 1;
    boolean known = !findings.getFirst().path("verdict").asText().equals("not known");
    String places =
        findings.stream()
            .map(
                f ->
                    f.path("place").asText().replaceFirst("^tooth ", "")
                        + (known ? " " + f.path("reading").asText() : "")
                        + (oneLimit ? "" : ", " + f.path("limit").asText())
                        + after(f.path("putRightBy")))
            .distinct()
            .collect(Collectors.joining("; "));
    return key
        + (oneLimit ? ", wanted " + findings.getFirst().path("limit").asText() : ", wanted")
        + " – "
        + places;
  }

  private static String after(JsonNode right) {
    return right.isObject()
        ? ", after step " + right.path("step").asInt() + " " + right.path("reading").asText()
        : "";
  }

  /** A change of material is no preparation of the mouth. */
  private static String told(JsonNode clasp, String answer) {
    if (!answer.equals("serves after")) {
      return answer;
    }
    return clasp.path("changes").isEmpty()
        ? "serves after preparation"
        : "serves in another material";
  }

  /** What the arm is made of; a star where the usual material may stay bent. */
  private static String material(JsonNode clasp) {
    String usual = clasp.path("material").asText().replace('-', ' ');
    return clasp.path("holdsIn").asText().isEmpty()
        ? usual
        : (bends(clasp) ? "not " : "") + usual + "*";
  }

  /** Whether the arm stays bent in the usual material; else it may. */
  private static boolean bends(JsonNode clasp) {
    return clasp.path("armStress").asText().equals(Verdict.NOT_MET.words());
  }

  private static String mm(JsonNode number) {
    return Figures.text(number, Figures.MM) + " mm";
  }

  private static List<String> texts(JsonNode array) {
    List<String> texts = new ArrayList<>();
    array.forEach(one -> texts.add(one.asText()));
    return texts;
  }
}
