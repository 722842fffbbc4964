package rodwork.design.plan;

import java.util.List;
import rodwork.geometry.Vec3;

/** The points of a connector's border that a person moved; neighbours follow less and less. */
record BorderMoves(Ground ground, Choices choices) {
  /** Moving a point of a border takes what lies within about this along [mm]. */
  private static final double REACH_MM = 5;

  /** Followed less than this, a point stays [1]. */
  private static final double STAYS = 1e-3;

  Line of(Line line) {
    if (choices.moves().isEmpty()) {
      return line;
    }
    List<Vec3> points = line.points().stream().map(this::of).toList();
    return new Line(points, line.closed());
  }

  Vec3 of(Vec3 point) {
    Vec3 p = point;
    for (Choices.BorderMove move : choices.moves()) {
      double off = p.distance(move.from()) / REACH_MM;
      double weight = Math.exp(-off * off);
      p =
          weight > STAYS
              ? ground.lay(p.plus(move.to().minus(move.from()).times(weight))).point()
              : p;
    }
    return p;
  }

  boolean kindChosen() {
    return choices.connector().isPresent();
  }
}
