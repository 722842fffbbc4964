package rodwork.design.cut;

import rodwork.geometry.Vec3;

/** The shape of one cut: where a point of the crown lies after it. Nothing is ever added. */
public sealed interface Cut {
  /** The point after the cut; the same one where nothing is taken. Scan frame [mm]. */
  Vec3 after(Vec3 point);

  /**
   * An upright wall, parallel to the path and curved across like the tooth: the ruled surface of
   * upright lines. Everything outside it is taken, from its foot to the occlusal side. Below its
   * foot it runs out into a tooth that stands out there, so that no ledge is left.
   *
   * @param frame directions
   * @param across where the upright lines stand [mm], rising
   * @param outward how far out each stands [mm]
   * @param foot where each ends below [mm]
   */
  record Wall(CutFrame frame, double[] across, double[] outward, double[] foot) implements Cut {
    /** Beyond its width and below its foot the wall runs out at this slope, as a bur leaves it. */
    private static final double RUN_OUT = 1;

    private static final double RUN_OUT_MM = 1;

    public Wall {
      across = across.clone();
      outward = outward.clone();
      foot = foot.clone();
      if (across.length == 0 || across.length != outward.length || across.length != foot.length) {
        throw new IllegalArgumentException("a wall of " + across.length + " lines");
      }
    }

    @Override
    public double[] across() {
      return across.clone();
    }

    @Override
    public double[] outward() {
      return outward.clone();
    }

    @Override
    public double[] foot() {
      return foot.clone();
    }

    @Override
    public Vec3 after(Vec3 point) {
      Vec3 q = frame.local(point);
      int last = across.length - 1;
      double beyond = Math.max(across[0] - q.x(), q.x() - across[last]);
      double under = at(foot, q.x()) - q.z();
      if (beyond > RUN_OUT_MM || under > RUN_OUT_MM) {
        return point;
      }
      double wall = at(outward, q.x()) + RUN_OUT * (Math.max(0, beyond) + Math.max(0, under));
      return q.y() > wall ? point.minus(frame.out().times(q.y() - wall)) : point;
    }

    /**
     * How far a side still stands out where a wall has run out below its foot, or where the crown
     * ends before [mm].
     */
    static double ledge(ToothSide.Line line, double foot, double out) {
      double lowest = Math.max(foot - RUN_OUT_MM, line.height().getFirst());
      return lowest >= foot ? 0 : Math.max(0, line.at(lowest) - out - RUN_OUT * (foot - lowest));
    }

    private double at(double[] values, double s) {
      int i = 0;
      while (i < across.length && across[i] < s) {
        i++;
      }
      if (i == 0 || i == across.length) {
        return values[i == 0 ? 0 : across.length - 1];
      }
      double share = (s - across[i - 1]) / (across[i] - across[i - 1]);
      return values[i - 1] + share * (values[i] - values[i - 1]);
    }
  }

  /**
   * A shallow depression in a side, deepest in its middle.
   *
   * @param frame its origin is the middle, on the surface
   * @param halfLength along the surface across the path [mm]
   * @param halfHeight along the path [mm]
   * @param depth in its middle [mm]
   * @param reach how far under the origin's level points still belong to this side [mm]
   */
  record Dimple(CutFrame frame, double halfLength, double halfHeight, double depth, double reach)
      implements Cut {
    @Override
    public Vec3 after(Vec3 point) {
      Vec3 q = frame.local(point);
      double r = Math.hypot(q.x() / halfLength, q.z() / halfHeight);
      if (r >= 1 || Math.abs(q.y()) > reach) {
        return point;
      }
      double fade = 1 - r * r;
      return point.minus(frame.out().times(depth * fade * fade));
    }
  }

  /**
   * A seat with a round floor: everything above the floor is taken. Towards the marginal ridge it
   * is open, and its floor rises towards it.
   *
   * @param middle of the seat on the surface, scan frame [mm]
   * @param down direction in which it is sunk, unit vector
   * @param open direction to its open side across {@code down}, unit vector; zero where it is
   *     closed all round
   * @param halfLength to its closed end [mm]
   * @param halfWidth across [mm]
   * @param depth of its floor under the middle, where it is deepest [mm]
   * @param rise of its floor from there to the ridge [mm]
   */
  record Seat(
      Vec3 middle,
      Vec3 down,
      Vec3 open,
      double halfLength,
      double halfWidth,
      double depth,
      double rise)
      implements Cut {
    /** The walls of the seat rise this far beyond its outline, in shares of its half sizes. */
    private static final double WALL = 1.15;

    private static final double LEAST_MM = 0.1;

    /** The same seat, its floor higher; never above the surface at its middle. */
    public Seat shallower(double byMm) {
      return new Seat(
          middle, down, open, halfLength, halfWidth, Math.max(LEAST_MM, depth - byMm), rise);
    }

    /** The way along the floor from the ridge to its deepest place, unit vector. */
    public Vec3 floor() {
      return open.times(-halfLength).plus(down.times(rise)).unit();
    }

    @Override
    public Vec3 after(Vec3 point) {
      Vec3 way = point.minus(middle);
      double up = -way.dot(down);
      Vec3 flat = way.plus(down.times(up));
      double along = flat.dot(open);
      double side = flat.minus(open.times(along)).length();
      double r = Math.hypot(Math.min(0, along) / halfLength, side / halfWidth);
      double floor = -depth * (1 - r * r) + rise * Math.max(0, along) / halfLength;
      // Beyond the ridge the floor runs on; a neighbour or the other end of the tooth lies farther.
      return r >= WALL || along > 2 * halfLength || up <= floor || up > 2 * depth
          ? point
          : point.plus(down.times(up - floor));
    }
  }
}
