package rodwork.casework.prescription;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;

/**
 * The pages against ISO 19005-2 (PDF/A-2, conformance level A: tagged, fonts embedded), as the
 * validation profiles of veraPDF have it.
 */
class PdfArchiveTest {
  @BeforeAll
  static void profiles() {
    VeraGreenfieldFoundryProvider.initialise();
  }

  /** A picture with a see-through background, and a drawing with hatching and lettering. */
  private static Pictures pictures() throws Exception {
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(40, 30, BufferedImage.TYPE_INT_ARGB), "png", png);
    String hatched =
        """
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30" width="40mm" height="30mm">
          <defs><pattern id="h" width="2" height="2" patternUnits="userSpaceOnUse">
            <path d="M0 0L2 2" stroke="#000" stroke-width="0.3"/></pattern></defs>
          <path d="M5 5H35V25H5Z" fill="url(#h)" stroke="#000"/>
          <text x="6" y="20" font-size="4" font-family="sans-serif">46 rest</text>
        </svg>
        """;
    return new Pictures(png.toByteArray(), hatched, hatched, hatched);
  }

  @ParameterizedTest
  @EnumSource(Paper.class)
  void pagesAreAnArchiveDocument(Paper paper) throws Exception {
    byte[] pdf;
    try (InputStream in =
        Objects.requireNonNull(PdfArchiveTest.class.getResourceAsStream("prescription.json"))) {
      pdf =
          PrescriptionPdf.of(
              Prescription.read(
                  new String(in.readAllBytes(), StandardCharsets.UTF_8), "prescription.json"),
              paper,
              pictures());
    }
    PDFAFlavour level = PDFAFlavour.PDFA_2_A;
    try (PDFAParser parser =
            Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), level);
        PDFAValidator validator = Foundries.defaultInstance().createValidator(level, false)) {
      ValidationResult result = validator.validate(parser);
      List<String> broken =
          result.getTestAssertions().stream()
              .map(each -> each.getRuleId().getClause() + ": " + each.getMessage())
              .distinct()
              .toList();
      assertThat(broken).isEmpty();
      assertThat(result.isCompliant()).isTrue();
      assertThat(result.getTotalAssertions()).isGreaterThan(500);
    }
  }
}
