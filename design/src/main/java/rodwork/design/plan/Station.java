package rodwork.design.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.GingivalMargin;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.SurfacePoint;

/**
 * A place on the inner foot of the row: the lingual margin of a tooth, or the crest of a space.
 *
 * @param at on the surface
 * @param inward horizontal unit vector to the inside of the arch
 * @param tooth whose margin it is; empty on a crest
 * @param space whose crest it is; empty at a tooth
 */
record Station(SurfacePoint at, Vec3 inward, Optional<ToothNumber> tooth, Optional<Space> space) {
  private static final double STEP_MM = 1.2;

  /** Beyond this share of half the width a margin turns into the embrasure. */
  private static final double FACE_SHARE = 0.75;

  /** Directions are averaged over so many neighbours to each side: frames must not cross. */
  private static final int SMOOTH = 4;

  /** All of them from the patient's right to left. */
  static List<Station> of(Ground ground, Dentition dentition) {
    List<Station> all = new ArrayList<>();
    for (int i = 0; i < ToothNumber.PLACES; i++) {
      ToothNumber number = ToothNumber.inOrder(dentition.chart().jaw(), i);
      Optional<Tooth> tooth =
          dentition.tooth(number).filter(_ -> dentition.standing().contains(number));
      if (tooth.isPresent()) {
        ofTooth(ground, tooth.get(), all);
      }
      dentition.openSpaces().stream()
          .filter(s -> s.missing().getFirst().equals(number))
          .findFirst()
          .ifPresent(s -> ofCrest(ground, s, all));
    }
    return smoothed(all, ground);
  }

  private static void ofTooth(Ground ground, Tooth tooth, List<Station> all) {
    boolean right = tooth.number().side() == Side.RIGHT;
    List<Vec3> lingual = new ArrayList<>();
    for (int i = 0; i < tooth.margin().points().size(); i++) {
      Vec3 p = tooth.margin().points().get(i);
      Vec3 q = tooth.axes().toTooth(p);
      if (tooth.margin().kinds().get(i) == GingivalMargin.Kind.SEEN
          && q.y() < 0
          && Math.abs(q.x()) <= FACE_SHARE * tooth.size().mesiodistalMm() / 2) {
        lingual.add(p);
      }
    }
    lingual.sort(
        (a, b) ->
            Double.compare(tooth.axes().toTooth(a).x(), tooth.axes().toTooth(b).x())
                * (right ? 1 : -1));
    Vec3 inward = tooth.axes().facial().times(-1).across(ground.frame.z()).unit();
    Vec3 last = null;
    for (Vec3 p : lingual) {
      if (last == null || last.distance(p) >= STEP_MM) {
        last = p;
        all.add(new Station(ground.lay(p), inward, Optional.of(tooth.number()), Optional.empty()));
      }
    }
  }

  private static void ofCrest(Ground ground, Space space, List<Station> all) {
    for (Vec3 p : steps(space.crest())) {
      all.add(
          new Station(
              ground.lay(p),
              inward(ground, space.crest(), p),
              Optional.empty(),
              Optional.of(space)));
    }
  }

  /** The place in the row: of the tooth, or of the missing one that stood nearest. */
  ToothNumber place() {
    return tooth.orElseGet(
        () -> {
          Space row = space.orElseThrow();
          return row.positions().stream()
              .min(Comparator.comparingDouble(p -> p.at().distance(at.point())))
              .map(Space.Position::tooth)
              .orElse(row.missing().getFirst());
        });
  }

  /** Every so many millimetres along a crest. */
  static List<Vec3> steps(List<Vec3> crest) {
    List<Vec3> steps = new ArrayList<>();
    if (crest.size() > 1) {
      Line line = Line.open(crest);
      int n = Math.max(1, (int) Math.round(line.lengthMm() / STEP_MM));
      for (int i = 0; i <= n; i++) {
        steps.add(line.along((double) i / n));
      }
    }
    return steps;
  }

  /** Across a crest at a point, to the inside of the arch: right to left runs round it. */
  static Vec3 inward(Ground ground, List<Vec3> crest, Vec3 at) {
    int nearest = 0;
    for (int i = 1; i < crest.size(); i++) {
      if (crest.get(i).distance(at) < crest.get(nearest).distance(at)) {
        nearest = i;
      }
    }
    Vec3 from = crest.get(Math.max(0, nearest - SMOOTH));
    Vec3 to = crest.get(Math.min(crest.size() - 1, nearest + SMOOTH));
    Vec3 along = to.minus(from).across(ground.frame.z()).unit();
    Vec3 across = along.cross(ground.frame.z());
    return ground.frame.jaw() == Jaw.LOWER ? across.times(-1) : across;
  }

  private static List<Station> smoothed(List<Station> all, Ground ground) {
    List<Station> smooth = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      Vec3 sum = Vec3.ZERO;
      int reach = Math.min(SMOOTH, Math.min(i, all.size() - 1 - i));
      for (int j = i - reach; j <= i + reach; j++) {
        sum = sum.plus(all.get(j).inward);
      }
      Vec3 level = sum.across(ground.frame.z());
      Station s = all.get(i);
      smooth.add(
          new Station(s.at, level.length() > 0.1 ? level.unit() : s.inward, s.tooth, s.space));
    }
    return smooth;
  }
}
