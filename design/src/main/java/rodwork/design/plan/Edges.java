package rodwork.design.plan;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import rodwork.geometry.Vec3;

/**
 * The places of a connector's border along the row, one a station, from the patient's right to
 * left. Immutable.
 *
 * @param all of them
 */
record Edges(Ground ground, List<Edge> all) {
  /** Neighbouring places farther apart than this have the surface between them looked at [mm]. */
  private static final double FOLLOWS_MM = 4;

  /** How often an edge is moved: laid on the curved gum it comes a little nearer again. */
  private static final int ROUNDS = 4;

  /** A station with its place on the border. */
  record Edge(Station station, Vec3 at) {}

  Edges {
    all = List.copyOf(all);
  }

  /** Where the border lies at a distance from margins and crests; stations without are left out. */
  static Edges at(Ground ground, Border border, double marginMm, double crestMm) {
    List<Edge> edges = new ArrayList<>();
    for (Station station : border.stations) {
      border.at(station, marginMm, crestMm, 0).ifPresent(p -> edges.add(new Edge(station, p)));
    }
    return new Edges(ground, edges);
  }

  /**
   * Neighbours in the row.
   *
   * @param from index of the first
   * @param to index after the last
   */
  record Piece(int from, int to) {
    int size() {
      return to - from;
    }
  }

  /** From the first to the last edge of one side that is reached. */
  Piece side(ConnectorMaker.Reach reach, boolean right) {
    int first = -1;
    int last = -1;
    for (int i = 0; i < all.size(); i++) {
      Edge edge = all.get(i);
      if (reach.has(edge.station) && ground.onRight(edge.station.at().point()) == right) {
        first = first < 0 ? i : first;
        last = i;
      }
    }
    return first < 0 ? new Piece(0, 0) : new Piece(first, last + 1);
  }

  /** A side made longer by one edge towards the front or the back; the same where none is left. */
  Piece longer(Piece side, boolean right, boolean front) {
    boolean after = front == right;
    int next = after ? side.to : side.from - 1;
    if (next < 0 || next >= all.size() || ground.onRight(all.get(next).at) != right) {
      return side;
    }
    return after ? new Piece(side.from, side.to + 1) : new Piece(side.from - 1, side.to);
  }

  /** A side made longer at both ends in turn until it is so long from front to back [mm]. */
  Piece longer(Piece side, boolean right, double leastMm) {
    Piece piece = side;
    for (int i = 0; i < 2 * all.size() && depthMm(piece) < leastMm; i++) {
      piece = longer(piece, right, i % 2 == 1);
    }
    return piece;
  }

  /** A side made longer until it reaches so far to the front and to the back, where it can. */
  Piece reaching(Piece side, boolean right, double frontMm, double backMm) {
    Piece piece = side;
    for (int i = 0; i < all.size() && extent(piece)[1] < frontMm; i++) {
      piece = longer(piece, right, true);
    }
    for (int i = 0; i < all.size() && extent(piece)[0] > backMm; i++) {
      piece = longer(piece, right, false);
    }
    return piece;
  }

  /** From the back to the front, seen from above [mm]. */
  private double[] extent(Piece piece) {
    DoubleSummaryStatistics y =
        points(piece).stream().mapToDouble(p -> ground.plan(p)[1]).summaryStatistics();
    return new double[] {y.getMin(), y.getMax()};
  }

  private double depthMm(Piece piece) {
    return ground.depthMm(points(piece));
  }

  List<Vec3> points(Piece piece) {
    return all.subList(piece.from, piece.to).stream().map(Edge::at).toList();
  }

  /** The border along a piece, laid on the surface; empty where the scan does not show it. */
  Optional<List<Vec3>> laid(Piece piece) {
    return chain(ground, points(piece));
  }

  /**
   * A far edge moved away from the near one where they come nearer than a band is wide, as they do
   * where the row turns and beside spaces.
   *
   * @param barred places where it does not go
   */
  static List<Vec3> apart(
      Ground ground, List<Vec3> near, List<Vec3> far, double widthMm, Predicate<Vec3> barred) {
    Line edge = Line.open(near);
    List<Vec3> moved = new ArrayList<>(far);
    for (int round = 0; round < ROUNDS; round++) {
      for (int i = 0; i < moved.size(); i++) {
        Vec3 at = moved.get(i);
        Vec3 from = edge.nearest(at);
        double width = at.distance(from);
        if (width > 0 && width < widthMm) {
          Vec3 to = ground.lay(from.plus(at.minus(from).times(widthMm / width))).point();
          if (!barred.test(to)) {
            moved.set(i, to);
          }
        }
      }
    }
    return moved;
  }

  /** Corners one after another, each way laid on the nearest surface: for a slope beside a row. */
  static List<Vec3> laidChain(Ground ground, List<Vec3> corners) {
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i + 1 < corners.size(); i++) {
      List<Vec3> way = ground.laidStraight(corners.get(i), corners.get(i + 1));
      points.addAll(way.subList(0, way.size() - 1));
    }
    points.add(corners.getLast());
    return points;
  }

  static Optional<List<Vec3>> chain(Ground ground, List<Vec3> corners) {
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i + 1 < corners.size(); i++) {
      Vec3 a = corners.get(i);
      Vec3 b = corners.get(i + 1);
      Optional<List<Vec3>> way =
          a.distance(b) > FOLLOWS_MM ? ground.across(a, b) : Optional.of(ground.laidStraight(a, b));
      if (way.isEmpty()) {
        return Optional.empty();
      }
      points.addAll(way.get().subList(0, way.get().size() - 1));
    }
    points.add(corners.getLast());
    return Optional.of(points);
  }
}
