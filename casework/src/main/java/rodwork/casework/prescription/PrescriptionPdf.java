package rodwork.casework.prescription;

import com.openhtmltopdf.extend.FSSupplier;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * The pages as PDF/A-2a (ISO 19005-2): tagged, fonts embedded, nothing fetched from anywhere.
 *
 * <p>Letters are DejaVu Sans Condensed; its licence lies beside it.
 */
public final class PrescriptionPdf {
  private static final int REGULAR = 400;
  private static final int BOLD = 700;

  /** With more than these, letters are made smaller; then the sections of cuts are left out. */
  private static final int MOST_PAGES = 3;

  static {
    XRLog.setLoggingEnabled(false);
  }

  private PrescriptionPdf() {}

  /** Makes the pages. */
  public static byte[] of(Prescription prescription, Paper paper, Pictures pictures) {
    return of(prescription, Shown.fdi(prescription), paper, pictures);
  }

  /** The same with teeth in the notation of a reader. */
  public static byte[] of(Prescription prescription, Shown shown, Paper paper, Pictures pictures) {
    byte[] pages = pages(PrescriptionPage.of(prescription, shown, paper, pictures, false, false));
    // The first page may have room for the statement, or the last one.
    for (boolean early : new boolean[] {true, false}) {
      if (count(pages) > MOST_PAGES) {
        pages = pages(PrescriptionPage.of(prescription, shown, paper, pictures, true, early));
      }
    }
    for (boolean early : new boolean[] {true, false}) {
      if (count(pages) > MOST_PAGES && !pictures.cuts().isEmpty()) {
        pages =
            pages(
                PrescriptionPage.of(
                    prescription, shown, paper, pictures.withoutCuts(), true, early));
      }
    }
    return pages;
  }

  private static int count(byte[] pdf) {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return document.getNumberOfPages();
    } catch (IOException failure) {
      throw PrescriptionProblem.PAGES_FAILED.with(String.valueOf(failure));
    }
  }

  private static byte[] pages(String html) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      PdfRendererBuilder builder = new PdfRendererBuilder();
      builder.useFont(font("DejaVuSansCondensed.ttf"), "Form", REGULAR, FontStyle.NORMAL, true);
      builder.useFont(font("DejaVuSansCondensed-Bold.ttf"), "Form", BOLD, FontStyle.NORMAL, true);
      builder.usePdfUaAccessibility(true);
      builder.usePdfAConformance(PdfRendererBuilder.PdfAConformance.PDFA_2_A);
      builder.useColorProfile(ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData());
      builder.withProducer("Rodwork");
      builder.useSVGDrawer(new BatikSVGDrawer());
      builder.withHtmlContent(html, null);
      builder.toStream(out);
      builder.run();
    } catch (IOException | RuntimeException | LinkageError failure) {
      throw PrescriptionProblem.PAGES_FAILED.with(String.valueOf(failure));
    }
    return out.toByteArray();
  }

  private static FSSupplier<InputStream> font(String name) {
    return () ->
        Objects.requireNonNull(PrescriptionPdf.class.getResourceAsStream(name), "no font " + name);
  }

  static String resource(String name) {
    try (InputStream in =
        Objects.requireNonNull(PrescriptionPdf.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }
}
