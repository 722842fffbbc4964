package rodwork.survey.tooth;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.overhang.OverhangReading;
import rodwork.survey.Survey;
import rodwork.survey.WayDown;
import rodwork.survey.tooth.ZoneDepth.Deepest;

/**
 * One tooth at one path: the undercut of each zone of its crown. Immutable.
 *
 * @param tooth which
 * @param zones all of them, in the order of {@link CrownZone}
 */
public record ToothSurvey(Tooth tooth, List<ZoneDepth> zones) {
  /**
   * So many of the deepest places of a zone are looked at for one without a flag: beside neighbours
   * all of them may be flagged.
   */
  private static final int MOST_TRIED = 200;

  /** A place is moved this share of a triangle off its corner, so that a triangle holds it. */
  private static final double OFF_CORNER = 0.02;

  public ToothSurvey {
    zones = List.copyOf(zones);
  }

  public ZoneDepth zone(CrownZone zone) {
    return zones.stream().filter(z -> z.zone() == zone).findFirst().orElseThrow();
  }

  /** All teeth on the scan, from the patient's right to left. */
  public static List<ToothSurvey> all(Survey survey, Dentition dentition, Watch watch) {
    return dentition.inOrder().parallelStream()
        .map(
            tooth -> {
              watch.check();
              return of(survey, tooth);
            })
        .toList();
  }

  /** The answer for one tooth. */
  public static ToothSurvey of(Survey survey, Tooth tooth) {
    return of(survey, tooth, 0);
  }

  /**
   * The answer for one tooth without what lies near its margin, where no tip may lie.
   *
   * @param clearMm least height over the margin along the tooth's axis [mm], not negative
   */
  public static ToothSurvey of(Survey survey, Tooth tooth, double clearMm) {
    TriangleMesh mesh = survey.surveyor().topology().mesh();
    Map<CrownZone, List<Place>> places = new EnumMap<>(CrownZone.class);
    BitSet done = new BitSet();
    for (int t : tooth.copyOfTriangles()) {
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(t, k);
        double depth = survey.depth(v);
        if (done.get(v) || !(depth > 0)) {
          continue;
        }
        done.set(v);
        Vec3 point = mesh.vertex(v);
        // The zigzag of the label's edge reaches over the margin here and there.
        if (tooth.overMarginMm(point) >= clearMm) {
          Vec3 middle = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
          Vec3 held = point.plus(middle.minus(point).times(OFF_CORNER));
          CrownZone.of(tooth.place(point))
              .ifPresent(
                  zone ->
                      places
                          .computeIfAbsent(zone, z -> new ArrayList<>())
                          .add(new Place(held, t, depth)));
        }
      }
    }
    List<ZoneDepth> zones = new ArrayList<>();
    for (CrownZone zone : CrownZone.values()) {
      zones.add(deepest(survey, tooth, zone, places.getOrDefault(zone, List.of())));
    }
    return new ToothSurvey(tooth, zones);
  }

  private record Place(Vec3 point, int triangle, double depthMm) {}

  private static ZoneDepth deepest(Survey survey, Tooth tooth, CrownZone zone, List<Place> places) {
    List<Place> sorted =
        places.stream()
            .sorted(Comparator.comparingDouble(Place::depthMm).reversed())
            .limit(MOST_TRIED)
            .toList();
    double hidden = 0;
    for (Place place : sorted) {
      OverhangReading reading = survey.overhangAt(place.point);
      if (reading.flagged() || !(reading.depthMm() > 0)) {
        hidden = Math.max(hidden, reading.depthMm());
        continue;
      }
      WayDown down = survey.wayDown(place.point, place.triangle, tooth::has);
      Deepest deepest =
          new Deepest(
              place.point,
              place.triangle,
              survey.read(place.point, place.triangle),
              down.lengthMm(),
              down.dropMm());
      return new ZoneDepth(zone, Optional.of(deepest), hidden);
    }
    return new ZoneDepth(zone, Optional.empty(), hidden);
  }
}
