package rodwork.app.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import rodwork.anatomy.chart.Notation;
import rodwork.app.AppRefusal;
import rodwork.app.operation.MakePlan;
import rodwork.app.operation.WritePrescription;
import rodwork.casework.drawing.CutSheet;
import rodwork.casework.drawing.MarkSheet;
import rodwork.casework.drawing.PlanDrawing;
import rodwork.casework.drawing.Sheet;
import rodwork.casework.export.CastAtPath;
import rodwork.casework.prescription.Paper;
import rodwork.casework.prescription.Pictures;
import rodwork.casework.prescription.Prescription;
import rodwork.casework.prescription.PrescriptionPdf;
import rodwork.casework.prescription.Shown;
import rodwork.geometry.Watch;
import rodwork.survey.tooth.ToothSurvey;

/** Everything that goes to the laboratory, in one folder; docs/prescription.md tells each file. */
public final class PrescriptionFolder {
  /** The picture of the tripod marks [mm on paper]. */
  private static final double MARKS_WIDE_MM = 84;

  private static final double MARKS_HIGH_MM = 62;

  public static final String JSON = "prescription.json";
  public static final String PDF = "prescription.pdf";

  private PrescriptionFolder() {}

  /** What a case keeps of it. */
  public record Documents(byte[] json, byte[] pdf) {}

  /**
   * Writes the files; returns those that a case keeps.
   *
   * @param notation of the teeth on pages and drawings; JSON and tables keep FDI
   */
  public static Documents write(
      Path folder,
      WritePrescription.Written written,
      String scan,
      String scanHash,
      Paper paper,
      Notation notation,
      Watch watch) {
    make(folder);
    // The pages need nothing of the tables and meshes, nor these of the pages.
    CompletableFuture<Void> others =
        CompletableFuture.runAsync(() -> others(folder, written, scan, scanHash, notation, watch));
    Documents documents = pages(folder, written, paper, notation, watch);
    watch.progress("writing the cast at its path", 0);
    try {
      others.join();
    } catch (CompletionException failed) {
      if (failed.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      throw failed;
    }
    return documents;
  }

  private static Documents pages(
      Path folder, WritePrescription.Written written, Paper paper, Notation notation, Watch watch) {
    Prescription prescription = written.prescription();
    watch.progress("drawing", 0);
    byte[] picture = PictureFile.png(written.judged().surveyed());
    Pictures pictures =
        new Pictures(
            picture,
            marks(written, notation),
            drawing(written, "The plan", Sheet.ON_PAGE, notation),
            CutSheet.svg(
                written.planned().preparation().steps(),
                Sheet.ON_PAGE.widthMm(),
                Sheet.ON_PAGE.font(),
                notation));
    watch.progress("writing pages", 0);
    Documents documents =
        new Documents(
            text(Json.pretty(prescription.json()) + "\n"),
            PrescriptionPdf.of(
                prescription,
                Shown.of(prescription, written.content(), notation),
                paper,
                pictures));
    put(folder.resolve(JSON), documents.json());
    put(folder.resolve(PDF), documents.pdf());
    put(folder.resolve("picture.png"), picture);
    return documents;
  }

  private static void others(
      Path folder,
      WritePrescription.Written written,
      String scan,
      String scanHash,
      Notation notation,
      Watch watch) {
    MakePlan.Planned planned = written.planned();
    put(
        folder.resolve("plan.svg"),
        text(drawing(written, written.judged().surveyed().cast().name(), Sheet.WHOLE, notation)));
    put(folder.resolve("plan.json"), text(Json.pretty(PlanJson.of(planned)) + "\n"));
    String cuts =
        CutSheet.svg(
            planned.preparation().steps(), Sheet.WHOLE.widthMm(), Sheet.WHOLE.font(), notation);
    if (!cuts.isEmpty()) {
      put(folder.resolve("preparation.svg"), text(cuts));
      PreparedFile.write(folder.resolve("prepared-cast.stl"), planned, watch);
    }
    put(
        folder.resolve("survey.csv"),
        text(
            SurveyCsv.of(
                ToothSurvey.all(
                    written.judged().surveyed().survey(),
                    written.judged().teeth().dentition(),
                    watch))));
    put(
        folder.resolve("abutments.json"),
        text(Json.pretty(AbutmentsJson.of(written.judged())) + "\n"));
    CastAtPath.write(
        folder.resolve("cast-at-path"),
        written.judged().surveyed().survey(),
        written.frame(),
        scan,
        scanHash,
        watch);
  }

  private static byte[] text(String words) {
    return words.getBytes(StandardCharsets.UTF_8);
  }

  private static String marks(WritePrescription.Written written, Notation notation) {
    return written.tripod() == null
        ? ""
        : MarkSheet.svg(
            written.judged().teeth().arch(),
            written.judged().teeth().dentition(),
            written.tripod(),
            written.bearings(),
            MARKS_WIDE_MM,
            MARKS_HIGH_MM,
            Sheet.ON_PAGE.font(),
            notation);
  }

  private static String drawing(
      WritePrescription.Written written, String title, Sheet sheet, Notation notation) {
    return PlanDrawing.svg(
        written.judged().teeth().arch(),
        written.judged().teeth().dentition(),
        written.planned().plan(),
        title,
        sheet,
        notation);
  }

  private static void make(Path folder) {
    try {
      Files.createDirectories(folder);
    } catch (IOException failure) {
      throw AppRefusal.FILE_UNWRITABLE.with(folder, String.valueOf(failure.getMessage()));
    }
  }

  private static void put(Path file, byte[] content) {
    OutputFile.write(file, out -> out.write(content));
  }
}
