package rodwork.casework.prescription;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.chart.Notation;
import rodwork.geometry.Refusal;
import rodwork.rules.Wording;

/** The pages are read back with PDFBox. */
class PrescriptionPdfTest {
  private static final Pattern DECIMAL = Pattern.compile("-?\\d+\\.\\d+");

  private static Prescription fixture() throws IOException {
    try (InputStream in =
        Objects.requireNonNull(
            PrescriptionPdfTest.class.getResourceAsStream("prescription.json"))) {
      return Prescription.read(
          new String(in.readAllBytes(), StandardCharsets.UTF_8), "prescription.json");
    }
  }

  private static String text(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document);
    }
  }

  @Test
  void everyNumberOnPaperIsInTheJsonAndTheOtherWayRound() throws IOException {
    Prescription prescription = fixture();
    String paper = text(PrescriptionPdf.of(prescription, Paper.A4, Pictures.NONE));
    Set<Double> inJson = new TreeSet<>();
    List<Double> measured = new ArrayList<>();
    collect(prescription.content(), inJson, measured);
    assertThat(measured).hasSizeGreaterThan(40);
    Set<Double> onPaper = new TreeSet<>();
    Matcher found = DECIMAL.matcher(paper);
    while (found.find()) {
      onPaper.add(Double.parseDouble(found.group()) + 0.0);
    }
    assertThat(inJson).containsAll(onPaper);
    assertThat(onPaper).containsAll(measured);
  }

  /** All numbers, those within texts too; {@code measured}: those that are no whole numbers. */
  private static void collect(JsonNode json, Set<Double> all, List<Double> measured) {
    if (json.isNumber()) {
      all.add(json.asDouble() + 0.0);
      if (!json.isInt()) {
        measured.add(json.asDouble() + 0.0);
      }
    } else if (json.isTextual()) {
      Matcher found = DECIMAL.matcher(json.asText());
      while (found.find()) {
        all.add(Double.parseDouble(found.group()));
      }
    }
    json.forEach(one -> collect(one, all, measured));
  }

  @Test
  void thePagesAreTaggedWithEmbeddedFontsAndSaySoOnEachWhatTheyAre() throws IOException {
    Prescription prescription = fixture();
    for (Paper paper : Paper.values()) {
      byte[] pdf = PrescriptionPdf.of(prescription, paper, Pictures.NONE);
      try (PDDocument document = Loader.loadPDF(pdf)) {
        assertThat(document.getNumberOfPages()).isBetween(1, 3);
        assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
        assertThat(document.getDocumentCatalog().getStructureTreeRoot().getKids()).isNotEmpty();
        assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
        String xmp =
            new String(
                document.getDocumentCatalog().getMetadata().toByteArray(), StandardCharsets.UTF_8);
        assertThat(xmp).contains("pdfaid:part>2").contains("pdfaid:conformance>A");
        for (int i = 0; i < document.getNumberOfPages(); i++) {
          PDPage page = document.getPage(i);
          double width = paper == Paper.A4 ? 210 / 25.4 * 72 : 8.5 * 72;
          assertThat((double) page.getMediaBox().getWidth()).isCloseTo(width, offset(0.5));
          for (COSName font : page.getResources().getFontNames()) {
            assertThat(page.getResources().getFont(font).isEmbedded()).isTrue();
          }
          PDFTextStripper one = new PDFTextStripper();
          one.setStartPage(i + 1);
          one.setEndPage(i + 1);
          assertThat(one.getText(document))
              .contains("revision 1 · content " + prescription.hash().substring(0, 16))
              .contains("page " + (i + 1) + " of");
        }
      }
    }
  }

  @Test
  void drawingsAreLinesOnThePagesAndThePagesStayArchivable() throws IOException {
    String svg =
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"180mm\" height=\"60mm\" viewBox=\"0 0"
            + " 180 60\" font-family=\"Form\"><path d=\"M1 1L170 50\" stroke=\"#111\"/><text"
            + " x=\"9\" y=\"9\" font-size=\"3\">legend of the plan</text></svg>";
    byte[] pdf = PrescriptionPdf.of(fixture(), Paper.A4, new Pictures(new byte[0], svg, svg, svg));
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(document.getNumberOfPages()).isBetween(2, 3);
      for (PDPage page : document.getPages()) {
        for (COSName font : page.getResources().getFontNames()) {
          assertThat(page.getResources().getFont(font).isEmbedded()).isTrue();
        }
        for (COSName name : page.getResources().getXObjectNames()) {
          assertThat(page.getResources().isImageXObject(name)).isFalse();
        }
      }
    }
  }

  @Test
  void aLaterRevisionListsWhatChanged() throws IOException {
    Prescription first = fixture();
    ObjectNode content = first.content().deepCopy();
    ((ObjectNode) content.get("order")).put("shade", "A3 <b>&\" of a guide");
    ((ObjectNode) content.get("abutments").get(0).get("clasp")).put("gaugeMm", 0.5);
    content.put("date", "2027-01-01");
    assertThat(Changes.between(first.content(), content))
        .extracting(Wording::fdi)
        .containsExactlyInAnyOrder(
            "order, shade: nothing → A3 <b>&\" of a guide",
            "abutments 16, clasp, gauge mm: 0.25 → 0.5");
    assertThat(Changes.between(first.content(), content))
        .extracting(line -> line.in(Notation.PALMER))
        .contains("abutments 6┘, clasp, gauge mm: 0.25 → 0.5");
    Prescription second =
        new Prescription(2, "0".repeat(64), Changes.between(first.content(), content), content);
    String paper = text(PrescriptionPdf.of(second, Paper.LETTER, Pictures.NONE));
    assertThat(paper)
        .contains("Revision 2 replaces revision 1")
        .contains("A3 <b>&\" of a guide")
        .contains("gauge mm: 0.25 → 0.5");
  }

  /**
   * Upper right teeth in FDI and in the universal system, written down by hand: 14 is 5, 15 is 4.
   */
  @Test
  void whatChangedNamesTeethByTheReadersNotation() throws IOException {
    ObjectMapper mapper = new ObjectMapper();
    JsonNode before =
        mapper.readTree(
            "{\"teeth\":{\"missing\":[14],\"because\":[\"14 is missing\"]},\"room\":14,\"kind\":\"bar\"}");
    JsonNode after =
        mapper.readTree(
            "{\"teeth\":{\"missing\":[14,15],\"because\":[\"15 is missing\"]},\"room\":15,\"kind\":\"plate\"}");
    assertThat(Changes.between(before, after))
        .extracting(line -> line.in(Notation.UNIVERSAL))
        .containsExactlyInAnyOrder(
            "teeth, missing: 5 → 5, 4",
            "teeth, because: as on the page",
            "room: 14 → 15",
            "kind: bar → plate");
    assertThat(Changes.between(before, after))
        .extracting(Wording::fdi)
        .contains("teeth, because: 14 is missing → 15 is missing");
  }

  @Test
  void whatChangedIsReadBackAlsoAsItWasKeptBefore() throws IOException {
    Prescription told =
        new Prescription(
            2,
            fixture().hash(),
            List.of(
                Wording.of("abutments ", new Wording.Piece.Tooth(16), ": a → b"),
                Wording.of("because: ", new Wording.Piece.Fdi("beside 14"))),
            fixture().content());
    assertThat(Prescription.read(told.json().toString(), "x")).isEqualTo(told);
    ObjectNode old = told.json();
    old.remove("changePieces");
    assertThat(Prescription.read(old.toString(), "x").changes())
        .extracting(Wording::fdi)
        .containsExactly("abutments 16: a → b", "because: beside 14");
  }

  @Test
  void whatWasChangedByHandIsFound() throws IOException {
    String text = fixture().json().toString();
    assertThat(Prescription.read(text, "x")).isEqualTo(fixture());
    assertThatThrownBy(
            () -> Prescription.read(text.replace("\"gaugeMm\":0.25", "\"gaugeMm\":0.75"), "x"))
        .hasMessageContaining("changed by hand");
    assertThat(new ObjectMapper().readTree(text).get("content")).isEqualTo(fixture().content());
  }

  @Test
  void ordersThatAreNoneAreRefused() {
    assertThat(Order.read("{\"shade\": \" A3 \"}", "o").text(Order.Field.SHADE)).isEqualTo("A3");
    for (String wrong : List.of("[", "[]", "{\"colour\":\"x\"}", "{\"shade\":3}")) {
      assertThatThrownBy(() -> Order.read(wrong, "order.json"))
          .isInstanceOf(Refusal.class)
          .hasMessageContaining("order.json");
    }
  }
}
