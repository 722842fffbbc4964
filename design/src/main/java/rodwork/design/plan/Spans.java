package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.design.plan.Edges.Piece;
import rodwork.geometry.Vec3;

/** What lies between a piece of the right side of a row and one of the left. */
final class Spans {
  /** How often a strap that slants across is made longer to be as wide as wanted. */
  private static final int ROUNDS = 6;

  private Spans() {}

  /**
   * A span.
   *
   * @param right edge, from the back to the front
   * @param inFront border from the right to the left
   * @param left edge, from the front to the back
   * @param behind border from the left to the right
   * @param outline all of them, closed
   */
  record Span(
      List<Vec3> right, List<Vec3> inFront, List<Vec3> left, List<Vec3> behind, Line outline) {
    /** Between the borders in front and behind [mm]. */
    double widthMm() {
      return Line.open(inFront).distanceMm(Line.open(behind));
    }
  }

  /**
   * The span between two pieces.
   *
   * @param front whether its border follows the row in front, or runs straight across
   * @return empty where the scan does not show the way
   */
  static Optional<Span> between(Edges edges, Piece right, Piece left, boolean front) {
    Optional<List<Vec3>> rightEdge = edges.laid(right);
    Optional<List<Vec3>> leftEdge = edges.laid(left);
    if (rightEdge.isEmpty() || leftEdge.isEmpty()) {
      return Optional.empty();
    }
    List<Vec3> r = rightEdge.get();
    List<Vec3> l = leftEdge.get();
    Optional<List<Vec3>> inFront =
        front && left.from() >= right.to()
            ? edges.laid(new Piece(right.to() - 1, left.from() + 1))
            : edges.ground().across(r.getLast(), l.getFirst());
    Optional<List<Vec3>> behind = edges.ground().across(l.getLast(), r.getFirst());
    if (inFront.isEmpty() || behind.isEmpty()) {
      return Optional.empty();
    }
    Line outline =
        Line.loop(List.of(chopped(r), chopped(inFront.get()), chopped(l), chopped(behind.get())));
    return Optional.of(new Span(r, inFront.get(), l, behind.get(), outline));
  }

  /** Both pieces made longer until the span is as wide as wanted everywhere, where they can be. */
  static Optional<Span> asWide(
      Edges edges, Piece right, Piece left, boolean front, double leastMm) {
    Optional<Span> span = Optional.empty();
    double wanted = leastMm;
    for (int round = 0; round < ROUNDS; round++) {
      span =
          between(
              edges, edges.longer(right, true, wanted), edges.longer(left, false, wanted), front);
      double width = span.map(Span::widthMm).orElse(leastMm);
      if (width >= leastMm) {
        break;
      }
      wanted += leastMm - width;
    }
    return span;
  }

  /**
   * Both pieces made longer at their ends in turn until the span covers a share of what lies within
   * the whole row, seen from above.
   */
  static Optional<Span> covering(
      Edges edges, Piece right, Piece left, boolean front, double share) {
    double wanted =
        share * edges.ground().planAreaMm2(edges.all().stream().map(Edges.Edge::at).toList());
    Piece r = right;
    Piece l = left;
    for (int i = 0; i < 2 * edges.all().size(); i++) {
      List<Vec3> corners = new ArrayList<>(edges.points(r));
      if (front && l.from() > r.to()) {
        corners.addAll(edges.points(new Piece(r.to(), l.from())));
      }
      corners.addAll(edges.points(l));
      if (edges.ground().planAreaMm2(corners) >= wanted) {
        break;
      }
      boolean ahead = i % 2 == 1;
      r = edges.longer(r, true, ahead);
      l = edges.longer(l, false, ahead);
    }
    return between(edges, r, l, front);
  }

  private static List<Vec3> chopped(List<Vec3> piece) {
    return piece.subList(0, piece.size() - 1);
  }
}
