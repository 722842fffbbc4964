package rodwork.anatomy.occlusion;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;

/**
 * Places of a biting surface that metal may lie on: amid its triangles, so no finer than the scan.
 */
public final class BitingPlaces {
  /** The fossa beside a proximal side: its outer two thirds along, its middle third across. */
  private static final double FOSSA_FROM = 1 / 3.0;

  private static final double FOSSA_HALF = 1 / 3.0;

  /** The marginal ridge: cusp tips lie nearer to the middle of the tooth. Share of half a width. */
  private static final double RIDGE_FROM = 0.7;

  private BitingPlaces() {}

  /**
   * Where a rest beside a proximal side lies.
   *
   * @param side mesial or distal
   */
  public static List<Vec3> fossa(Tooth tooth, Surface side) {
    return places(tooth, side, q -> q.x() >= FOSSA_FROM && Math.abs(q.y()) <= FOSSA_HALF);
  }

  /**
   * The marginal ridge from facial to lingual, which a clasp crosses that comes through the
   * embrasure.
   *
   * @param side mesial or distal
   */
  public static List<Vec3> ridge(Tooth tooth, Surface side) {
    return places(tooth, side, q -> q.x() >= RIDGE_FROM);
  }

  /** In shares of half the width towards the side, and of half the depth to facial. */
  private static List<Vec3> places(Tooth tooth, Surface side, Predicate<Vec3> wanted) {
    double sign = side == Surface.MESIAL ? 1 : -1;
    List<Vec3> places = new ArrayList<>();
    for (Vec3 place : tooth.placesOf(Surface.OCCLUSAL)) {
      Vec3 q = tooth.axes().toTooth(place);
      Vec3 shares =
          new Vec3(
              sign * q.x() / (tooth.size().mesiodistalMm() / 2),
              q.y() / (tooth.size().faciolingualMm() / 2),
              0);
      if (wanted.test(shares)) {
        places.add(place);
      }
    }
    return places;
  }
}
