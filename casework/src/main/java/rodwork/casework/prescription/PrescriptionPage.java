package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The pages as XHTML, from the JSON of the prescription and nothing else. */
final class PrescriptionPage {
  private static final int SHOWN_HASH = 16;

  private final Prescription prescription;
  private final Shown shown;
  private final JsonNode content;
  private final Html html = new Html();

  private PrescriptionPage(Prescription prescription, Shown shown) {
    this.prescription = prescription;
    this.shown = shown;
    this.content = shown.content();
  }

  /**
   * Makes the pages.
   *
   * @param dense smaller letters and picture, where the pages would be too many
   * @param early whether the statement stands on the first page, else on the last
   */
  static String of(
      Prescription prescription,
      Shown shown,
      Paper paper,
      Pictures pictures,
      boolean dense,
      boolean early) {
    return new PrescriptionPage(prescription, shown).page(paper, pictures, dense, early);
  }

  private String page(Paper paper, Pictures pictures, boolean dense, boolean early) {
    String title =
        "Prescription, removable partial denture, "
            + text("jaw")
            + ", case "
            + text("case")
            + ", revision "
            + prescription.revision();
    html.raw("<html lang=\"en\"><head><title>").text(title).raw("</title>");
    html.raw("<meta name=\"description\" content=\"").text(title).raw("\"/>");
    html.raw("<style>@page { size: " + paper.css() + "; margin: ");
    html.raw(dense ? "12mm 15mm 14mm 15mm;" : "14mm 15mm 16mm 15mm;");
    html.raw(" @bottom-left { font-family: Form; font-size: 7pt; color: #55524c; content: \"");
    html.text(
        "Case "
            + text("case")
            + " · revision "
            + prescription.revision()
            + " · content "
            + prescription.hash().substring(0, SHOWN_HASH)
            + " · teeth by "
            + shown.words());
    html.raw("\" } @bottom-right { font-family: Form; font-size: 7pt; color: #55524c; content: ");
    html.raw("\"page \" counter(page) \" of \" counter(pages) } }");
    html.raw(PrescriptionPdf.resource("prescription.css")).raw("</style></head><body");
    html.raw(" class=\"" + paper.name().toLowerCase(Locale.ROOT) + (dense ? " dense" : "") + "\">");
    head();
    order();
    path(pictures);
    if (early) {
      statement();
    }
    PlanSection plan = new PlanSection(content, html);
    image(
        "plan",
        "The plan from above and from the sides, to scale, with its legend",
        pictures.plan());
    plan.abutments();
    plan.connectors();
    plan.blockOut();
    new OrderSection(content, html).crowns();
    preparation(pictures);
    plan.findings();
    open();
    cautions();
    if (!early) {
      statement();
    }
    signature();
    return html.raw("</body></html>").toString();
  }

  private String text(String name) {
    return content.path(name).asText();
  }

  private void head() {
    html.raw("<h1>").text("Prescription: removable partial denture, " + text("jaw")).raw("</h1>");
    html.raw("<p>Case <b>").text(text("case")).raw("</b> · ");
    html.text("written " + text("date") + " · revision " + prescription.revision());
    html.raw("</p><p class=\"small\">");
    html.text("Content SHA-256 " + prescription.hash()).raw("</p>");
    if (!prescription.changes().isEmpty()) {
      html.raw("<div class=\"revised\"><b>");
      html.text(
          "Revision "
              + prescription.revision()
              + " replaces revision "
              + (prescription.revision() - 1)
              + ". Changed:");
      html.raw("</b>");
      html.list(prescription.changes().stream().map(line -> line.in(shown.notation())).toList());
      html.raw("</div>");
    }
  }

  private void order() {
    Map<String, String> fields = new LinkedHashMap<>();
    for (Order.Field field : Order.Field.values()) {
      fields.put(field.words(), content.path("order").path(field.key()).asText());
    }
    halves(fields);
    new OrderSection(content, html).stages();
    teeth();
  }

  /** Fields in two columns, to be read down the left one first. */
  private void halves(Map<String, String> fields) {
    html.raw("<table class=\"half\"><tbody><tr><td><table class=\"fields order\"><tbody>");
    int left = (fields.size() + 1) / 2;
    int i = 0;
    for (Map.Entry<String, String> field : fields.entrySet()) {
      if (i++ == left) {
        html.raw("</tbody></table></td><td><table class=\"fields order\"><tbody>");
      }
      html.field(field.getKey(), field.getValue());
    }
    html.raw("</tbody></table></td></tr></tbody></table>");
  }

  private void blanks(List<String> names) {
    Map<String, String> fields = new LinkedHashMap<>();
    names.forEach(name -> fields.put(name, ""));
    halves(fields);
  }

  private void teeth() {
    JsonNode teeth = content.path("teeth");
    JsonNode allergies = content.path("allergies");
    html.heading("Teeth (" + shown.words() + ")").raw("<table class=\"fields narrow\"><tbody>");
    html.field("present", join(teeth.path("present")));
    html.field("missing", orNone(join(teeth.path("missing"))));
    html.field("replaced by the denture", join(teeth.path("replaced")));
    if (!teeth.path("replacementNotSaid").isEmpty()) {
      html.field("replace?  not yet said for", join(teeth.path("replacementNotSaid")));
    }
    html.field("Kennedy class", teeth.path("class").asText());
    html.field(
        "allergies to materials",
        allergies.path("known").isEmpty()
            ? (allergies.path("asked").asText().equals("yes")
                ? "asked, none known"
                : "not asked yet")
            : join(allergies.path("known")));
    html.raw("</tbody></table>");
  }

  private void path(Pictures pictures) {
    JsonNode path = content.path("path");
    html.heading("Path of placement").raw("<table class=\"half\"><tbody><tr><td>");
    html.raw("<table class=\"fields\"><tbody>");
    html.field(
        "anterior tilt", degrees(path.path("anteriorTiltDeg")) + "  (+: the front goes down)");
    html.field(
        "right tilt", degrees(path.path("rightTiltDeg")) + "  (+: the patient's right goes down)");
    html.field(
        "total tilt",
        degrees(path.path("totalTiltDeg"))
            + " against the occlusal plane, known to ± "
            + degrees(path.path("referenceUncertaintyDeg")));
    JsonNode tripod = path.path("tripod");
    html.field("axis in the scan", triple(path.path("axisInScan"), Figures.DIRECTION));
    html.field("scan file", content.path("scan").path("file").asText());
    html.raw("</tbody></table><p class=\"small\">");
    html.text("Scan to path (+Z leaving, +Y to the front, mm; path = M · scan):").raw("</p>");
    html.raw("<table class=\"matrix\"><tbody>");
    for (JsonNode row : path.path("scanToPath")) {
      List<String> cells = new ArrayList<>();
      for (int k = 0; k < row.size(); k++) {
        cells.add(Figures.text(row.get(k), k < 3 ? Figures.DIRECTION : 4));
      }
      html.row("td", cells);
    }
    html.raw("</tbody></table></td><td><table class=\"fields\"><tbody>");
    marks(tripod);
    html.raw("</tbody></table></td></tr></tbody></table>");
    byte[] cast = pictures.cast();
    boolean pair = cast.length > 0 && !pictures.marks().isEmpty();
    if (pair) {
      html.raw("<table class=\"pair\"><tbody><tr><td>");
    }
    if (cast.length > 0) {
      html.raw(
          "<div class=\"cast\"><img alt=\"The cast seen along the path and from four sides\""
              + " src=\"");
      html.raw("data:image/png;base64," + Base64.getEncoder().encodeToString(cast) + "\"/>");
      html.raw("<p class=\"small\">");
      html.text(
          "Solid line: survey line; dashed and dotted: gauge marks and edges of bands. Shading with"
              + " hatching: undercut in steps of the gauges.");
      html.raw("</p></div>");
    }
    if (pair) {
      html.raw("</td><td>");
    }
    image(
        "marks",
        "The tripod marks from above, each with its distances to two landmarks",
        pictures.marks());
    if (pair) {
      html.raw("</td></tr></tbody></table>");
    }
  }

  private void image(String name, String words, String svg) {
    if (!svg.isEmpty()) {
      html.raw("<div class=\"" + name + "\"><img alt=\"").text(words).raw("\" src=\"");
      html.raw("data:image/svg+xml;base64,");
      html.raw(Base64.getEncoder().encodeToString(svg.getBytes(StandardCharsets.UTF_8)));
      html.raw("\"/></div>");
    }
  }

  private void marks(JsonNode tripod) {
    if (!tripod.isObject()) {
      html.field("tripod marks", "no three places serve on this cast");
      return;
    }
    JsonNode d = tripod.path("distancesMm");
    html.field(
        "tripod marks",
        String.format(
            "1–2 %s mm, 2–3 %s mm, 3–1 %s mm",
            Figures.text(d.path(0), Figures.MM),
            Figures.text(d.path(1), Figures.MM),
            Figures.text(d.path(2), Figures.MM)));
    for (int i = 0; i < 3; i++) {
      List<String> from = new ArrayList<>();
      for (JsonNode one : tripod.path("landmarks").path(i)) {
        from.add(
            Figures.text(one.path("distanceMm"), Figures.DIVIDERS)
                + " mm from "
                + one.path("name").asText());
      }
      html.field(
          "mark " + (i + 1) + ": scan; dividers",
          triple(tripod.path("marksInScan").path(i), Figures.MM)
              + " mm"
              + (from.isEmpty() ? "" : "\n" + String.join(", ", from)));
    }
    html.field(
        "found again within",
        "± "
            + Figures.text(tripod.path("axisErrorDeg"), 2)
            + "°, 95 times in 100, with "
            + Figures.text(tripod.path("pickingErrorMm"), Figures.MM)
            + " mm of error a mark");
  }

  private void preparation(Pictures pictures) {
    html.heading("Preparation of the mouth, in this order, before the final impression");
    JsonNode preparation = content.path("preparation");
    if (preparation.path("steps").isEmpty()) {
      html.paragraph("None follows from the plan.");
    } else {
      html.raw("<table class=\"rows steps\"><thead>");
      html.row("th", List.of("", "tooth", "what", "depth", "height", "mind", "done"));
      html.raw("</thead><tbody>");
      for (JsonNode step : preparation.path("steps")) {
        html.row("td", step(step));
      }
      html.raw("</tbody></table>");
    }
    image("cuts", "Sections of the crowns before and after each cut", pictures.cuts());
    List<String> more = new ArrayList<>();
    if (pictures.cutsLeftOut()) {
      more.add(
          "The sections of the crowns before and after each cut found no room on three pages: they"
              + " are in the file preparation.svg that belongs to this prescription.");
    }
    for (JsonNode refused : preparation.path("notPrescribed")) {
      more.add(
          "Not cut: tooth "
              + refused.path("tooth").asText()
              + ": "
              + refused.path("why").asText()
              + ".");
    }
    more.addAll(texts(preparation.path("general")));
    if (!more.isEmpty()) {
      html.raw("<div class=\"tight\">").list(more).raw("</div>");
    }
  }

  private static List<String> step(JsonNode step) {
    return List.of(
        step.path("number").asText(),
        step.path("tooth").asText(),
        step.path("what").asText(),
        length(step.path("amountMm")),
        length(step.path("heightMm")),
        String.join("; ", texts(step.path("cautions"))),
        "□");
  }

  private static String length(JsonNode number) {
    return number.isNumber() ? Figures.text(number, Figures.MM) + " mm" : "";
  }

  private void open() {
    html.heading("Left open");
    if (content.path("open").isEmpty()) {
      html.paragraph("Nothing.");
    } else {
      html.raw("<div class=\"tight\">").list(texts(content.path("open"))).raw("</div>");
    }
  }

  private void cautions() {
    html.raw("<div class=\"keep\">").heading("Cautions").raw("<div class=\"tight\">");
    html.list(texts(content.path("cautions")));
    html.raw("</div></div>");
  }

  private void statement() {
    html.raw("<div class=\"keep\">").heading("Statement for a custom-made device");
    html.paragraph(
        "To be completed by the maker under the local rules; a form, no legal advice. This device"
            + " is made for the sole use of the patient known as case "
            + text("case")
            + ", to the prescription above.");
    blanks(
        List.of(
            "maker, address of every site, representative",
            "device, its identification",
            "prescriber and institution",
            "materials used, batch numbers",
            "conforms to the requirements that apply; those not met, and why",
            "substances of medicinal or animal origin",
            "responsible, date, signature"));
    html.raw("</div>");
  }

  private void signature() {
    html.raw("<div class=\"keep\">").heading("Signature");
    html.raw("<table class=\"sign\"><tbody>");
    html.row(
        "td", List.of("prescriber", "", "place, date", "", "received by the laboratory, date"));
    html.raw("</tbody></table>");
    html.paragraph(
        "Rulebook: "
            + content.path("rulebook").path("title").asText()
            + ", SHA-256 "
            + content.path("rulebook").path("sha256").asText().substring(0, SHOWN_HASH)
            + "…; scan SHA-256 "
            + content.path("scan").path("sha256").asText().substring(0, SHOWN_HASH)
            + "….");
    html.raw("</div>");
  }

  private static String degrees(JsonNode number) {
    return Figures.text(number, Figures.DEG) + "°";
  }

  private static String triple(JsonNode json, int digits) {
    return Figures.text(json.path(0), digits)
        + ", "
        + Figures.text(json.path(1), digits)
        + ", "
        + Figures.text(json.path(2), digits);
  }

  private static String join(JsonNode array) {
    return String.join(", ", texts(array));
  }

  private static List<String> texts(JsonNode array) {
    List<String> texts = new ArrayList<>();
    array.forEach(one -> texts.add(one.asText()));
    return texts;
  }

  private static String orNone(String words) {
    return words.isEmpty() ? "none" : words;
  }
}
