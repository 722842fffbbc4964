package rodwork.casework.prescription;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
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
              new byte[0]);
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
