package rodwork.app.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import rodwork.app.AppRefusal;
import rodwork.app.operation.WritePrescription;
import rodwork.casework.drawing.PlanDrawing;
import rodwork.casework.drawing.Sheet;
import rodwork.casework.export.CastAtPath;
import rodwork.casework.prescription.Paper;
import rodwork.casework.prescription.Pictures;
import rodwork.casework.prescription.Prescription;
import rodwork.casework.prescription.PrescriptionPdf;
import rodwork.geometry.Watch;
import rodwork.survey.tooth.ToothSurvey;

/** Everything that goes to the laboratory, in one folder; docs/prescription.md tells each file. */
public final class PrescriptionFolder {
  public static final String JSON = "prescription.json";
  public static final String PDF = "prescription.pdf";

  private PrescriptionFolder() {}

  /** What a case keeps of it. */
  public record Documents(byte[] json, byte[] pdf) {}

  /** Writes the files; returns those that a case keeps. */
  public static Documents write(
      Path folder,
      WritePrescription.Written written,
      String scan,
      String scanHash,
      Paper paper,
      Watch watch) {
    Prescription prescription = written.prescription();
    watch.progress("drawing", 0);
    byte[] picture = PictureFile.png(written.judged().surveyed());
    String title = written.judged().surveyed().cast().name();
    String sheet = drawing(written, title, Sheet.WHOLE);
    Pictures pictures = new Pictures(picture, drawing(written, "The plan", Sheet.ON_PAGE));
    watch.progress("writing pages", 0);
    Documents documents =
        new Documents(
            (Json.pretty(prescription.json()) + "\n").getBytes(StandardCharsets.UTF_8),
            PrescriptionPdf.of(prescription, paper, pictures));
    make(folder);
    put(folder.resolve(JSON), documents.json());
    put(folder.resolve(PDF), documents.pdf());
    put(folder.resolve("picture.png"), picture);
    put(folder.resolve("plan.svg"), sheet.getBytes(StandardCharsets.UTF_8));
    put(
        folder.resolve("plan.json"),
        (Json.pretty(PlanJson.of(written.planned())) + "\n").getBytes(StandardCharsets.UTF_8));
    put(
        folder.resolve("survey.csv"),
        SurveyCsv.of(
                ToothSurvey.all(
                    written.judged().surveyed().survey(),
                    written.judged().teeth().dentition(),
                    watch))
            .getBytes(StandardCharsets.UTF_8));
    put(
        folder.resolve("abutments.json"),
        (Json.pretty(AbutmentsJson.of(written.judged())) + "\n").getBytes(StandardCharsets.UTF_8));
    watch.progress("writing the cast at its path", 0);
    CastAtPath.write(
        folder.resolve("cast-at-path"),
        written.judged().surveyed().survey(),
        written.frame(),
        scan,
        scanHash,
        watch);
    return documents;
  }

  private static String drawing(WritePrescription.Written written, String title, Sheet sheet) {
    return PlanDrawing.svg(
        written.judged().teeth().arch(),
        written.judged().teeth().dentition(),
        written.planned().plan(),
        title,
        sheet);
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
