package rodwork.survey.tooth;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.anatomy.tooth.ToothPlace;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.survey.Seat;
import rodwork.survey.Survey;
import rodwork.survey.WayDown;

/**
 * A gauge mark asked for by place, such as "0.50 mesiofacial".
 *
 * <p>The section through the middle of the zone is tried first, then others of the same zone to
 * both sides. Where none has the mark, the deepest reading met is told instead.
 *
 * @param zone where it was asked for
 * @param gaugeMm the gauge [mm]
 * @param place the mark; empty: there is none
 * @param fromMarginMm from the gingival margin along the surface [mm]; NaN: not known
 * @param overMarginMm the same along the path [mm]
 * @param deepestMm the mark's depth, or without one the deepest that the zone has [mm]
 * @param why why there is no mark; empty where there is
 */
public record ToothMark(
    CrownZone zone,
    double gaugeMm,
    Optional<Seat.Place> place,
    double fromMarginMm,
    double overMarginMm,
    double deepestMm,
    String why) {
  /** Middle of the mesial third of a surface between the line angles, in half widths. */
  private static final double THIRD_MIDDLE = 0.55;

  /** Sections tried, from the middle of the zone, in half widths. */
  private static final double[] ASIDE = {0, 0.1, -0.1, 0.2, -0.2};

  /** The mark of one gauge in one zone of a tooth. */
  public static ToothMark of(Survey survey, Tooth tooth, CrownZone zone, double gaugeMm) {
    boolean anySurface = false;
    for (double aside : ASIDE) {
      Start start = start(survey, tooth, zone, aside);
      if (start == null) {
        continue;
      }
      anySurface = true;
      // The section follows the rod, not the tooth: it may leave the zone on its way down.
      Optional<Seat.Place> place =
          survey
              .seat(start.point, start.triangle, gaugeMm)
              .place()
              .filter(p -> tooth.has(p.triangle()))
              .filter(p -> CrownZone.of(tooth.place(p.point())).filter(zone::equals).isPresent());
      if (place.isPresent()) {
        WayDown down = survey.wayDown(place.get().point(), place.get().triangle(), tooth::has);
        return new ToothMark(zone, gaugeMm, place, down.lengthMm(), down.dropMm(), gaugeMm, "");
      }
    }
    double deepest = ToothSurvey.of(survey, tooth).zone(zone).depthMm();
    String why =
        !anySurface
            ? "the scan shows no surface here"
            : deepest == 0
                ? "no undercut here"
                : String.format(Locale.ROOT, "deepest here %.2f mm", deepest)
                    + (deepest < gaugeMm ? "" : "; no place of this gauge can be reached");
    return new ToothMark(zone, gaugeMm, Optional.empty(), Double.NaN, Double.NaN, deepest, why);
  }

  private record Start(Vec3 point, int triangle) {}

  /** The triangle of the crown nearest to half height in the section wanted. */
  private static @Nullable Start start(Survey survey, Tooth tooth, CrownZone zone, double aside) {
    TriangleMesh mesh = survey.surveyor().topology().mesh();
    double across = zone.across() == AcrossThird.MIDDLE ? 0 : THIRD_MIDDLE;
    double wanted = (zone.across() == AcrossThird.DISTAL ? -across : across) + aside;
    boolean proximal = zone.surface().isProximal();
    double half = (proximal ? tooth.size().faciolingualMm() : tooth.size().mesiodistalMm()) / 2;
    Start best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int t : tooth.copyOfTriangles()) {
      Vec3 p = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
      ToothPlace place = tooth.place(p);
      if (place.surface() == zone.surface() && tooth.surface(t) != Surface.OCCLUSAL) {
        Vec3 q = tooth.axes().toTooth(p);
        double off = (proximal ? q.y() : q.x()) - wanted * half;
        double height = tooth.size().facialHeightMm() * (tooth.heightShare(p) - 0.5);
        double way = Math.hypot(2 * off, height);
        if (way < least) {
          least = way;
          best = new Start(p, t);
        }
      }
    }
    return best;
  }
}
