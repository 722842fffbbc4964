package rodwork.design.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import rodwork.anatomy.chart.Torus;
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
  /** Beside a torus a band is made narrower by steps of this [mm]. */
  private static final double NARROWER_MM = 0.25;

  /** How often a frame round a torus is made longer to have straps as wide as wanted. */
  private static final int ROUNDS = 5;

  private final Ground ground;
  private final PlanRules rules;
  private final Border border;
  private final BorderMoves moves;
  private final Edges edges;
  private final Tori tori;

  UpperConnector(
      Ground ground, PlanRules rules, Border border, Edges edges, BorderMoves moves, Tori tori) {
    this.ground = ground;
    this.rules = rules;
    this.border = border;
    this.edges = edges;
    this.moves = moves;
    this.tori = tori;
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
    Optional<Line> torus = tori.edge(Torus.Site.PALATAL);
    if (kind == ConnectorKind.ANTERIOR_POSTERIOR_STRAP && torus.isPresent()) {
      DoubleSummaryStatistics y =
          torus.get().points().stream().mapToDouble(p -> ground.plan(p)[1]).summaryStatistics();
      double opening =
          Math.max(
              (y.getMax() - y.getMin()) / 2 + tori.clearMm(), rules.upper().opening().value() / 2);
      double middle = (y.getMax() + y.getMin()) / 2;
      return roundTorus(
          right,
          left,
          front,
          because,
          new double[] {middle + opening, middle - opening},
          rules.upper().posteriorStrap().value());
    }
    double least =
        (kind == ConnectorKind.PALATAL_STRAP
                ? rules.upper().strapWidth()
                : rules.upper().posteriorStrap())
            .value();
    return Spans.asWide(edges, right, left, front, least).map(s -> made(s, kind, because));
  }

  /**
   * A frame whose straps are as wide as wanted before and behind a torus: its borders go so much
   * farther to the front and the back as the straps, straight across, fall short; as wide as may be
   * where the row ends before.
   *
   * @param open front and back of the opening, seen from above [mm]
   */
  private Optional<Part.MajorConnector> roundTorus(
      Piece right, Piece left, boolean front, String because, double[] open, double wideMm) {
    Optional<Part.MajorConnector> best = Optional.empty();
    double further = 0;
    for (int round = 0; round < ROUNDS; round++) {
      double ahead = open[0] + wideMm + further;
      double back = open[1] - wideMm - further;
      Optional<Part.MajorConnector> made =
          Spans.between(
                  edges,
                  edges.reaching(right, true, ahead, back),
                  edges.reaching(left, false, ahead, back),
                  front)
              .map(s -> made(s, ConnectorKind.ANTERIOR_POSTERIOR_STRAP, because));
      double width = made.map(m -> straps(m)).orElse(0.0);
      if (best.isEmpty() || width > best.map(this::straps).orElse(0.0)) {
        best = made;
      }
      if (width >= wideMm) {
        break;
      }
      further += Math.max(0.5, wideMm - width);
    }
    return best;
  }

  /** The narrower of the straps of a frame [mm]; 0 without an opening. */
  private double straps(Part.MajorConnector frame) {
    return Straps.of(ground, frame).map(s -> Math.min(s.frontMm(), s.behindMm())).orElse(0.0);
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
      inner(edge.station(), width)
          .ifPresent(
              p -> {
                outer.add(edge.at());
                inner.add(p);
              });
    }
    if (outer.size() < 3) {
      return Optional.empty();
    }
    ConnectorMaker.straighten(outer, inner, rules.bases().keptShare().value() * width);
    Optional<List<Vec3>> edge = Edges.chain(ground, outer);
    Optional<List<Vec3>> foot =
        edge.flatMap(e -> Edges.chain(ground, Edges.apart(ground, e, inner, width, tori::near)));
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

  /** The inner border of a band: as far in as it is wide, or beside a torus as may be. */
  private Optional<Vec3> inner(Station station, double width) {
    double least = rules.bases().keptShare().value() * width;
    Optional<Vec3> at = Optional.empty();
    for (double wide = width; wide >= least && at.filter(p -> !tori.near(p)).isEmpty(); ) {
      at =
          border.at(
              station, rules.upper().border().value(), rules.bases().finishLine().value(), wide);
      wide -= NARROWER_MM;
    }
    return at;
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

  /**
   * The largest closed curve within the cover that keeps a band's width from its border; round a
   * torus it is wider, and the band as much narrower.
   */
  private Optional<Line> opening(Line outline, List<Integer> covered, double band) {
    List<SurfacePoint> seeds = outline.points().stream().map(ground::lay).toList();
    SurfaceDistance distance = SurfaceDistance.from(ground.mesh(), seeds, 2 * band);
    IntToDoubleFunction inner = v -> distance.at(v) - band;
    IntToDoubleFunction value =
        tori.within()
            .<IntToDoubleFunction>map(
                torus -> v -> Math.max(inner.applyAsDouble(v), torus.applyAsDouble(v)))
            .orElse(inner);
    return Contours.closed(ground.arch.topology(), value, covered).stream()
        .max(Comparator.comparingDouble(Line::lengthMm))
        .map(line -> Line.closed(Ground.thinned(line.points())))
        .filter(line -> ground.depthMm(line.points()) >= rules.upper().opening().value());
  }
}
