package rodwork.survey.plane;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.geometry.Vec3;

/**
 * One section of a surface that could guide: the line of the tooth from its marginal ridge down to
 * the gum, in a plane that holds the outward direction. Immutable; scan frame [mm].
 *
 * <p>The section is cut once; a reading at a path projects it, which for the tilts of a search (at
 * most 15°) moves a point of the section sideways by less than it moves along it. What the
 * projection leaves out is measured in the tests.
 */
public final class PlaneSection {
  private final List<Vec3> line;
  private final int ridge;

  /**
   * A section.
   *
   * @param line points from the occlusal side to the gum
   * @param ridge index of the marginal ridge
   */
  public PlaneSection(List<Vec3> line, int ridge) {
    this.line = List.copyOf(line);
    this.ridge = ridge;
    if (ridge < 0 || ridge >= line.size()) {
      throw new IllegalArgumentException("ridge " + ridge + " of " + line.size() + " points");
    }
  }

  public List<Vec3> line() {
    return line;
  }

  /** The marginal ridge. */
  public Vec3 ridge() {
    return line.get(ridge);
  }

  /**
   * A section as it stands to a path.
   *
   * @param line the outline in the window, from its top to its bottom
   * @param upright where the least-cutting upright line stands, t [mm]
   * @param angleDeg angle of the chord from top to bottom against the path [degrees]; positive:
   *     convergent to the occlusal side, negative: undercut
   * @param heightMm height of the window, less than wanted where the tooth ends first [mm]
   * @param greatestMm greatest enamel that the upright line takes [mm]
   * @param meanMm mean enamel over the height [mm]
   */
  public record Cut(
      List<Spot> line,
      double upright,
      double angleDeg,
      double heightMm,
      double greatestMm,
      double meanMm) {}

  /**
   * A point of the section at a path [mm].
   *
   * @param t outward from the ridge, horizontal
   * @param h along the path, from the ridge
   */
  public record Spot(double t, double h) {}

  /** The whole line at a path, from the occlusal side to the gum. */
  public List<Spot> at(Vec3 axis, Vec3 outward) {
    Vec3 out = outward.across(axis).unit();
    List<Spot> spots = new ArrayList<>(line.size());
    for (Vec3 point : line) {
      Vec3 way = point.minus(ridge());
      spots.add(new Spot(way.dot(out), way.dot(axis)));
    }
    return spots;
  }

  /**
   * The window below the ridge at a path.
   *
   * @param axis the path [unit vector]
   * @param outward away from the tooth; its part across the path counts
   * @param belowRidgeMm where the window starts [mm]
   * @param wantedMm its height [mm]
   * @return none where the tooth ends before it starts
   */
  public Optional<Cut> cut(Vec3 axis, Vec3 outward, double belowRidgeMm, double wantedMm) {
    List<Spot> spots = at(axis, outward);
    double top = spots.get(ridge).h() - belowRidgeMm;
    double bottom = top - wantedMm;
    List<Spot> window = new ArrayList<>();
    Spot last = spots.get(ridge);
    for (int i = ridge + 1; i < spots.size(); i++) {
      Spot next = spots.get(i);
      if (window.isEmpty() && next.h() < top) {
        window.add(between(last, next, top));
      }
      if (!window.isEmpty()) {
        if (next.h() <= bottom) {
          window.add(between(last, next, bottom));
          break;
        }
        window.add(next);
      }
      last = next;
    }
    if (window.size() < 2) {
      return Optional.empty();
    }
    double height = window.getFirst().h() - window.getLast().h();
    if (!(height > 0)) {
      return Optional.empty();
    }
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    double area = 0;
    for (int i = 0; i < window.size(); i++) {
      Spot spot = window.get(i);
      least = Math.min(least, spot.t());
      most = Math.max(most, spot.t());
      if (i > 0) {
        Spot before = window.get(i - 1);
        area += (before.h() - spot.h()) * (before.t() + spot.t()) / 2;
      }
    }
    double angle = Math.toDegrees(Math.atan2(window.getLast().t() - window.getFirst().t(), height));
    return Optional.of(
        new Cut(List.copyOf(window), least, angle, height, most - least, area / height - least));
  }

  private static Spot between(Spot a, Spot b, double h) {
    double share = a.h() == b.h() ? 0 : Math.clamp((a.h() - h) / (a.h() - b.h()), 0, 1);
    return new Spot(a.t() + share * (b.t() - a.t()), h);
  }
}
