package rodwork.app.report;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rodwork.anatomy.FrameFinding;
import rodwork.anatomy.Jaw;
import rodwork.app.operation.OpenedCast;
import rodwork.app.picture.PictureScene;
import rodwork.app.picture.TripodPicture;
import rodwork.geometry.Vec3;
import rodwork.survey.tripod.MarkBearings;
import rodwork.survey.tripod.Tripod;
import rodwork.survey.tripod.TripodMark;

/** Tripod marks as PNG. */
public final class TripodPictureFile {
  private TripodPictureFile() {}

  /**
   * Draws and writes.
   *
   * @param bearings one a mark
   * @throws rodwork.geometry.Refusal as {@link PictureFile#write}
   */
  public static void write(
      Path file, OpenedCast cast, Tripod tripod, List<Optional<MarkBearings>> bearings) {
    PictureFile.write(
        file, () -> TripodPicture.draw(scene(cast, tripod), marks(cast, tripod, bearings)));
  }

  private static List<TripodPicture.Mark> marks(
      OpenedCast cast, Tripod tripod, List<Optional<MarkBearings>> bearings) {
    List<TripodPicture.Mark> marks = new ArrayList<>();
    for (int i = 0; i < tripod.marks().size(); i++) {
      TripodMark mark = tripod.marks().get(i);
      List<TripodPicture.Bearing> from =
          bearings.get(i).map(MarkBearings::both).orElse(List.of()).stream()
              .map(
                  bearing ->
                      new TripodPicture.Bearing(
                          bearing.landmark().point(),
                          bearing.landmark().toString(),
                          bearing.distanceMm()))
              .toList();
      Vec3 normal = cast.mesh().doubleAreaNormal(mark.triangle());
      marks.add(
          new TripodPicture.Mark(
              mark.point(), normal.length() > 0 ? normal.unit() : tripod.axis(), from));
    }
    return marks;
  }

  private static PictureScene scene(OpenedCast cast, Tripod tripod) {
    Vec3 axis = tripod.axis();
    FrameFinding finding = cast.finding();
    String jaw = Words.jaw(cast.jaw());
    double[] d = tripod.distancesMm();
    return new PictureScene(
        cast.mesh(),
        v -> 0,
        cast.surface()::isBase,
        axis,
        finding == null ? axis.anyPerpendicular() : finding.frame().y(),
        cast.jaw() != Jaw.LOWER,
        finding != null && cast.jaw() != Jaw.UNKNOWN,
        List.of(),
        cast.name() + (jaw == null ? "" : "  ·  " + jaw + " cast") + "  ·  tripod marks",
        List.of(
            String.format(Locale.ROOT, "1–2 %.2f mm, 2–3 %.2f mm, 3–1 %.2f mm", d[0], d[1], d[2]),
            "straight distances, as dividers measure them",
            "an aid: the prescriber examines the patient, decides and signs"));
  }
}
