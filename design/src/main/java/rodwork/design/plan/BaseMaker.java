package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.geometry.Vec3;

/** Lays bases, base connectors and finish lines over the crests of spaces. */
final class BaseMaker {
  /** A base connector keeps to this share of the way from the crest to the base's border. */
  private static final double MESH_SHARE = 0.6;

  /** Past the deepest place of a fold the surface rises by this [mm]. */
  private static final double FOLD_RISE_MM = 0.1;

  private final Ground ground;
  private final PlanRules rules;

  BaseMaker(Ground ground, PlanRules rules) {
    this.ground = ground;
    this.rules = rules;
  }

  /**
   * A base; empty where the scan shows no ridge.
   *
   * @param teeth to replace
   * @param frena on the facial side, each with the places that it lies at or between
   */
  Optional<Part.DentureBase> make(
      Space space, List<Space.Position> teeth, List<List<ToothNumber>> frena) {
    List<Vec3> crest = new ArrayList<>();
    List<Vec3> facial = new ArrayList<>();
    List<Vec3> lingual = new ArrayList<>();
    List<Vec3> meshFacial = new ArrayList<>();
    List<Vec3> meshLingual = new ArrayList<>();
    double inside =
        ground.frame.jaw() == Jaw.LOWER && space.freeEnd()
            ? rules.bases().border().value()
            : rules.bases().finishLine().value();
    for (Vec3 p : Station.steps(space.crest())) {
      Vec3 inward = Station.inward(ground, space.crest(), p);
      List<Ground.Passed> out = side(p, inward.times(-1), rules.bases().border().value());
      List<Ground.Passed> in = side(p, inward, inside);
      crest.add(ground.lay(p).point());
      facial.add(out.getLast().point());
      lingual.add(in.getLast().point());
      meshFacial.add(part(out));
      meshLingual.add(part(in));
    }
    if (crest.size() < 2) {
      return Optional.empty();
    }
    boolean tipAtStart = space.freeEnd() && space.right().isEmpty();
    int n = crest.size();
    int meshCount =
        space.freeEnd() && ground.frame.jaw() == Jaw.LOWER
            ? Math.max(2, (int) Math.round(rules.bases().meshShare().value() * n))
            : n;
    int from = tipAtStart ? n - meshCount : 0;
    int to = tipAtStart ? n : meshCount;
    Line outline = notched(loop(facial, lingual, 0, n), space, crest, facial, frena);
    Optional<Vec3> stop =
        space.freeEnd()
            ? Optional.of(tipAtStart ? crest.get(from) : crest.get(to - 1))
            : Optional.empty();
    return Optional.of(
        new Part.DentureBase(
            space,
            teeth,
            outline,
            ground.areaMm2(ground.within(outline)),
            loop(meshFacial, meshLingual, from, to),
            Line.open(laid(lingual.subList(from, to))),
            stop));
  }

  /** The border with a notch round each frenum, to facial of its place on the crest. */
  private Line notched(
      Line outline,
      Space space,
      List<Vec3> crest,
      List<Vec3> facial,
      List<List<ToothNumber>> frena) {
    List<Vec3> points = outline.points();
    for (List<ToothNumber> frenum : frena) {
      List<Vec3> places =
          space.positions().stream()
              .filter(p -> frenum.contains(p.tooth()))
              .map(Space.Position::at)
              .toList();
      if (!places.isEmpty()) {
        Vec3 at = Notch.mean(places);
        int nearest = 0;
        for (int i = 1; i < crest.size(); i++) {
          nearest = crest.get(i).distance(at) < crest.get(nearest).distance(at) ? i : nearest;
        }
        points =
            Notch.by(ground, rules)
                .in(points, facial.get(nearest), Line.open(crest), 0.9 * (1 - MESH_SHARE));
      }
    }
    return Line.closed(points);
  }

  private Line loop(List<Vec3> facial, List<Vec3> lingual, int from, int to) {
    List<Vec3> corners = new ArrayList<>(facial.subList(from, to));
    corners.addAll(lingual.subList(from, to).reversed());
    return ground.laidLoop(corners);
  }

  private List<Vec3> laid(List<Vec3> corners) {
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i + 1 < corners.size(); i++) {
      points.addAll(ground.laidStraight(corners.get(i), corners.get(i + 1)));
    }
    return Ground.thinned(points);
  }

  private static Vec3 part(List<Ground.Passed> way) {
    double wanted = MESH_SHARE * way.getLast().lengthMm();
    return way.stream()
        .filter(p -> p.lengthMm() >= wanted)
        .findFirst()
        .orElse(way.getLast())
        .point();
  }

  /** From the crest to a side, until the fold, a tooth, or so far. */
  private List<Ground.Passed> side(Vec3 crest, Vec3 direction, double most) {
    Vec3 up = ground.frame.z();
    List<Ground.Passed> way =
        ground.way(
            ground.lay(crest),
            direction,
            direction,
            p -> ground.labels.of(p.triangle()) == ToothLabels.GUM && p.lengthMm() <= most + 1,
            p -> p.lengthMm() >= most);
    int lowest = 0;
    for (int i = 1; i < way.size(); i++) {
      if (way.get(i).point().dot(up) <= way.get(lowest).point().dot(up)) {
        lowest = i;
      } else if (i > 4
          && lowest > 0
          && way.get(lowest).lengthMm() > 2
          && way.get(i).point().minus(way.get(lowest).point()).dot(up) > FOLD_RISE_MM) {
        return way.subList(0, lowest + 1);
      }
    }
    return way;
  }
}
