package rodwork.design.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rodwork.design.plan.Edges.Piece;
import rodwork.design.plan.Part.ConnectorKind;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.SurfaceDistance;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.rules.Reading;

/**
 * Draws upper connectors. A strap runs across between what it reaches; a frame is that with an
 * opening; a plate is that made longer until it covers its share of the palate; a U follows the row
 * as a band that is open behind.
 */
final class UpperConnector {
  private final Ground ground;
  private final PlanRules rules;
  private final Border border;
  private final BorderMoves moves;
  private final Edges edges;

  UpperConnector(Ground ground, PlanRules rules, Border border, Edges edges, BorderMoves moves) {
    this.ground = ground;
    this.rules = rules;
    this.border = border;
    this.edges = edges;
    this.moves = moves;
  }

  /**
   * Draws.
   *
   * @param front whether its border follows the row in front
   * @return empty where one side reaches nothing, or the scan does not show the way across
   */
  Optional<Part.MajorConnector> draw(
      ConnectorMaker.Reach reach, ConnectorKind kind, boolean front, String because) {
    Piece right = edges.side(reach, true);
    Piece left = edges.side(reach, false);
    if (right.size() < 2 || left.size() < 2) {
      return Optional.empty();
    }
    return switch (kind) {
      case U_SHAPED -> along(right, left, because);
      case PALATAL_PLATE -> plate(right, left, front, because);
      default -> strap(right, left, kind, front, because);
    };
  }

  private Optional<Part.MajorConnector> strap(
      Piece right, Piece left, ConnectorKind kind, boolean front, String because) {
    double least =
        (kind == ConnectorKind.PALATAL_STRAP
                ? rules.upper().strapWidth()
                : rules.upper().posteriorStrap())
            .value();
    return Spans.asWide(edges, right, left, front, least).map(s -> made(s, kind, because));
  }

  /** Longer at both ends in turn until it covers its share of the palate, seen from above. */
  private Optional<Part.MajorConnector> plate(
      Piece right, Piece left, boolean front, String because) {
    double share = rules.upper().plateCover().value();
    return Spans.covering(edges, right, left, front, share)
        .map(s -> made(s, ConnectorKind.PALATAL_PLATE, because));
  }

  private Part.MajorConnector made(Spans.Span span, ConnectorKind kind, String because) {
    Line outline = moves.of(span.outline());
    List<Integer> covered = ground.within(outline);
    Optional<Line> opening =
        kind == ConnectorKind.ANTERIOR_POSTERIOR_STRAP
            ? opening(outline, covered, rules.upper().posteriorStrap().value())
            : Optional.empty();
    double area =
        ground.areaMm2(covered) - opening.map(o -> ground.areaMm2(ground.within(o))).orElse(0.0);
    Line inFront = Line.open(span.inFront().stream().map(moves::of).toList());
    Line behind = Line.open(span.behind().stream().map(moves::of).toList());
    double width = opening.map(outline::distanceMm).orElseGet(() -> inFront.distanceMm(behind));
    return connector(
        kind,
        outline,
        opening,
        List.of(Line.open(span.right()), Line.open(span.left())),
        area,
        width,
        because);
  }

  /** A band along the row, open behind. */
  private Optional<Part.MajorConnector> along(Piece right, Piece left, String because) {
    double width = rules.upper().posteriorStrap().value();
    List<Vec3> outer = new ArrayList<>();
    List<Vec3> inner = new ArrayList<>();
    for (Edges.Edge edge : edges.all().subList(right.from(), left.to())) {
      border
          .at(
              edge.station(),
              rules.upper().border().value(),
              rules.bases().finishLine().value(),
              width)
          .ifPresent(
              p -> {
                outer.add(edge.at());
                inner.add(p);
              });
    }
    if (outer.size() < 3) {
      return Optional.empty();
    }
    ConnectorMaker.straighten(outer, inner, rules.upper().anteriorStrap().value());
    Optional<List<Vec3>> edge = Edges.chain(ground, outer);
    Optional<List<Vec3>> foot = Edges.chain(ground, inner);
    if (edge.isEmpty() || foot.isEmpty()) {
      return Optional.empty();
    }
    List<Vec3> corners = new ArrayList<>(edge.get());
    corners.addAll(foot.get().reversed());
    Line outline = moves.of(Line.closed(corners));
    double least =
        Line.open(edge.get().stream().map(moves::of).toList())
            .distanceMm(Line.open(foot.get().stream().map(moves::of).toList()));
    return Optional.of(
        connector(
            ConnectorKind.U_SHAPED,
            outline,
            Optional.empty(),
            List.of(Line.open(edge.get())),
            ground.areaMm2(ground.within(outline)),
            least,
            because));
  }

  private Part.MajorConnector connector(
      ConnectorKind kind,
      Line outline,
      Optional<Line> opening,
      List<Line> towardsTeeth,
      double areaMm2,
      double widthMm,
      String because) {
    return new Part.MajorConnector(
        kind,
        outline,
        opening,
        towardsTeeth,
        areaMm2,
        widthMm,
        new Reading.NotKnown("an upper connector asks for no room to the floor of the mouth"),
        because,
        moves.kindChosen());
  }

  /** The largest closed curve within the cover that keeps a band's width from its border. */
  private Optional<Line> opening(Line outline, List<Integer> covered, double band) {
    List<SurfacePoint> seeds = outline.points().stream().map(ground::lay).toList();
    SurfaceDistance distance = SurfaceDistance.from(ground.mesh(), seeds, 2 * band);
    return Contours.closed(ground.arch.topology(), distance, band, covered).stream()
        .max(Comparator.comparingDouble(Line::lengthMm))
        .map(line -> Line.closed(Ground.thinned(line.points())))
        .filter(line -> ground.depthMm(line.points()) >= rules.upper().opening().value());
  }
}
