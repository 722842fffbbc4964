package rodwork.app.report;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import javax.imageio.ImageIO;
import rodwork.anatomy.FrameFinding;
import rodwork.anatomy.Jaw;
import rodwork.app.AppRefusal;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.SurveyedCast;
import rodwork.app.picture.CastPicture;
import rodwork.app.picture.PictureCurve;
import rodwork.app.picture.PictureScene;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.survey.GaugeMark;
import rodwork.survey.SurveyLine;

/** The picture of a surveyed cast as PNG. */
public final class PictureFile {
  private PictureFile() {}

  /**
   * Draws and writes.
   *
   * @throws rodwork.geometry.Refusal {@code file-unwritable}, or {@code no-fonts} where this
   *     machine has none to write the legend with
   */
  public static void write(Path file, SurveyedCast surveyed, Watch watch) {
    watch.progress("drawing", 0);
    write(file, () -> CastPicture.draw(scene(surveyed)));
  }

  /** The picture as bytes of a PNG. */
  public static byte[] png(SurveyedCast surveyed) {
    BufferedImage image = drawn(() -> CastPicture.draw(scene(surveyed)));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      png(image, out);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return out.toByteArray();
  }

  static void write(Path file, Supplier<BufferedImage> drawing) {
    BufferedImage image = drawn(drawing);
    OutputFile.write(file, out -> png(image, out));
  }

  private static BufferedImage drawn(Supplier<BufferedImage> drawing) {
    try {
      return drawing.get();
    } catch (LinkageError | InternalError missing) {
      throw AppRefusal.NO_FONTS.with(String.valueOf(missing.getMessage()));
    }
  }

  private static void png(BufferedImage image, OutputStream out) throws IOException {
    if (!ImageIO.write(image, "png", out)) {
      throw new IOException("this Java writes no PNG");
    }
  }

  private static PictureScene scene(SurveyedCast surveyed) {
    OpenedCast cast = surveyed.cast();
    Vec3 axis = surveyed.path().axis();
    FrameFinding finding = cast.finding();
    return new PictureScene(
        cast.mesh(),
        surveyed.survey()::depth,
        cast.surface()::isBase,
        axis,
        finding == null ? axis.anyPerpendicular() : finding.frame().y(),
        cast.jaw() != Jaw.LOWER,
        finding != null && cast.jaw() != Jaw.UNKNOWN,
        curves(surveyed),
        title(surveyed),
        notes(surveyed));
  }

  private static List<PictureCurve> curves(SurveyedCast surveyed) {
    List<PictureCurve> curves = new ArrayList<>();
    for (GaugeMark mark : surveyed.survey().marks()) {
      curves.add(
          new PictureCurve(PictureCurve.Kind.GAUGE_MARK, whole(mark.points(), mark.closed())));
    }
    for (SurveyLine line : surveyed.survey().lines()) {
      PictureCurve.Kind kind =
          line.kind() == SurveyLine.Kind.LINE
              ? PictureCurve.Kind.SURVEY_LINE
              : PictureCurve.Kind.BAND_EDGE;
      curves.add(new PictureCurve(kind, whole(line.points(), line.closed())));
    }
    return curves;
  }

  private static List<Vec3> whole(List<Vec3> points, boolean closed) {
    if (!closed) {
      return points;
    }
    List<Vec3> all = new ArrayList<>(points);
    all.add(points.getFirst());
    return all;
  }

  private static String title(SurveyedCast surveyed) {
    String jaw = Words.jaw(surveyed.cast().jaw());
    return surveyed.cast().name() + (jaw == null ? "" : "  ·  " + jaw + " cast");
  }

  private static List<String> notes(SurveyedCast surveyed) {
    List<String> notes = new ArrayList<>();
    FrameFinding finding = surveyed.cast().finding();
    if (finding == null) {
      Vec3 p = surveyed.path().axis();
      notes.add(String.format(Locale.ROOT, "axis %.4f, %.4f, %.4f", p.x(), p.y(), p.z()));
    } else {
      notes.add(
          "tilt: "
              + SurveyTable.angles(surveyed.path().tilt())
              + "total "
              + SurveyTable.degrees(SurveyJson.totalTiltDeg(surveyed)));
      notes.add("reference ±" + SurveyTable.degrees(finding.frame().upUncertaintyDeg()));
    }
    notes.add(
        String.format(
            Locale.ROOT,
            "%,d triangles, edges %.2f mm",
            surveyed.cast().mesh().triangleCount(),
            surveyed.cast().cast().report().edges().medianMm()));
    notes.add("an aid: the prescriber examines the patient, decides and signs");
    return notes;
  }
}
