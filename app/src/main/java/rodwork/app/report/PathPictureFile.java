package rodwork.app.report;

import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import rodwork.anatomy.Jaw;
import rodwork.app.operation.SearchPath;
import rodwork.app.picture.TiltMapPicture;
import rodwork.survey.path.PathFactors;

/** The tilt map of a search as PNG. */
public final class PathPictureFile {
  private PathPictureFile() {}

  /**
   * Draws and writes.
   *
   * @throws rodwork.geometry.Refusal as {@link PictureFile#write}
   */
  public static void write(Path file, SearchPath.Found found) {
    PictureFile.write(file, () -> draw(found));
  }

  private static BufferedImage draw(SearchPath.Found found) {
    List<TiltMapPicture.Spot> spots =
        found.map().tilts().stream()
            .map(
                tilt ->
                    new TiltMapPicture.Spot(
                        tilt.tilt().anteriorDeg(), tilt.tilt().rightDeg(), tilt.worth()))
            .toList();
    List<TiltMapPicture.Mark> marks = new ArrayList<>();
    List<PathFactors> choices = found.choices();
    for (int i = 0; i < choices.size(); i++) {
      marks.add(mark(choices.get(i), Integer.toString(i + 1), false));
    }
    marks.add(mark(found.reference(), "reference", false));
    marks.add(mark(found.best(), "best", true));
    return TiltMapPicture.draw(
        found.cast().name() + "  ·  tilt map",
        found.cast().jaw() != Jaw.LOWER,
        found.map().coneDeg(),
        found.map().stepDeg(),
        spots,
        marks);
  }

  private static TiltMapPicture.Mark mark(PathFactors tilt, String name, boolean main) {
    return new TiltMapPicture.Mark(tilt.tilt().anteriorDeg(), tilt.tilt().rightDeg(), name, main);
  }
}
