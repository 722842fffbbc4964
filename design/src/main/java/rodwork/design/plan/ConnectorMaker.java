package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.plan.Part.ConnectorKind;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.SurfaceDistance;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.rules.Reading;

/** Draws the major connector. */
final class ConnectorMaker {
  /** Moving a point of a border takes what lies within about this along [mm]. */
  private static final double MOVE_REACH_MM = 5;

  /** Of its height a bar keeps at least this share everywhere. */
  private static final double KEPT_SHARE = 0.7;

  private final Ground ground;
  private final Dentition dentition;
  private final PlanRules rules;
  private final Border border;
  private final Choices choices;

  ConnectorMaker(
      Ground ground, Dentition dentition, PlanRules rules, Border border, Choices choices) {
    this.ground = ground;
    this.dentition = dentition;
    this.rules = rules;
    this.border = border;
    this.choices = choices;
  }

  /**
   * What the connector has to reach.
   *
   * @param spaces places missing in the spaces that get a base
   * @param teeth that carry rests
   */
  record Reach(Set<ToothNumber> spaces, Set<ToothNumber> teeth) {
    boolean has(Station station) {
      return station.tooth().filter(teeth::contains).isPresent()
          || station
              .space()
              .filter(s -> s.missing().stream().anyMatch(spaces::contains))
              .isPresent();
    }
  }

  /** A station with its place on the border. */
  private record Edge(Station station, Vec3 at) {}

  /**
   * An upper connector between the right and the left.
   *
   * @param front whether its border follows the arch in front
   */
  Optional<Part.MajorConnector> upper(
      Reach reach, ConnectorKind kind, boolean front, String because) {
    List<Edge> edges = edges(rules.upper().border().value());
    List<Edge> right = side(edges, reach, true);
    List<Edge> left = side(edges, reach, false);
    if (right.size() < 2 || left.size() < 2) {
      return Optional.empty();
    }
    double least =
        kind == ConnectorKind.PALATAL_STRAP
            ? rules.upper().strapWidth().value()
            : rules.upper().posteriorStrap().value();
    right = widened(edges, right, least);
    left = widened(edges, left, least);
    List<Vec3> rightEdge = laid(right);
    List<Vec3> leftEdge = laid(left);
    List<Vec3> inFront;
    int from = edges.indexOf(right.getLast());
    int to = edges.indexOf(left.getFirst());
    inFront =
        front && to > from
            ? laid(edges.subList(from, to + 1))
            : ground.across(rightEdge.getLast(), leftEdge.getFirst());
    List<Vec3> behind = ground.across(leftEdge.getLast(), rightEdge.getFirst());
    Line outline =
        moved(
            Line.loop(
                List.of(chopped(rightEdge), chopped(inFront), chopped(leftEdge), chopped(behind))));
    List<Integer> covered = ground.within(outline);
    Optional<Line> opening = Optional.empty();
    if (kind == ConnectorKind.ANTERIOR_POSTERIOR_STRAP || kind == ConnectorKind.U_SHAPED) {
      opening = opening(outline, covered, rules.upper().posteriorStrap().value());
    }
    double area = ground.areaMm2(covered);
    double width;
    if (opening.isPresent()) {
      area -= ground.areaMm2(ground.within(opening.get()));
      Line hole = opening.get();
      width = outline.points().stream().mapToDouble(hole::distanceMm).min().orElse(0);
    } else {
      Line back = Line.open(behind);
      width = inFront.stream().mapToDouble(back::distanceMm).min().orElse(0);
    }
    return Optional.of(
        new Part.MajorConnector(
            kind,
            outline,
            opening,
            List.of(Line.open(rightEdge), Line.open(leftEdge)),
            area,
            width,
            new Reading.NotKnown("an upper connector asks for no room to the floor of the mouth"),
            because,
            choices.connector().isPresent()));
  }

  /** The largest closed curve within the cover that keeps a band's width from its border. */
  private Optional<Line> opening(Line outline, List<Integer> covered, double band) {
    List<SurfacePoint> seeds = outline.points().stream().map(ground::lay).toList();
    SurfaceDistance distance = SurfaceDistance.from(ground.mesh(), seeds, 2 * band);
    return Contours.closed(ground.arch.topology(), distance, band, covered).stream()
        .max(java.util.Comparator.comparingDouble(Line::lengthMm))
        .map(line -> Line.closed(Ground.thinned(line.points())))
        .filter(line -> depth(line) >= rules.upper().opening().value());
  }

  /** From front to back [mm]. */
  double depth(Line line) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Vec3 p : line.points()) {
      double y = ground.plan(p)[1];
      low = Math.min(low, y);
      high = Math.max(high, y);
    }
    return high - low;
  }

  /**
   * A lower connector, from the last tooth reached on the right to that on the left.
   *
   * @param room measured, from margin to floor
   */
  Optional<Part.MajorConnector> lower(
      Reach reach, ConnectorKind kind, Reading room, String because) {
    double margin = rules.lower().border().value();
    double height = rules.lower().barHeight().value();
    double crest = rules.bases().finishLine().value();
    List<Vec3> above = new ArrayList<>();
    List<Vec3> below = new ArrayList<>();
    List<Station> stations = between(reach);
    for (Station station : stations) {
      double from = kind == ConnectorKind.SUBLINGUAL_BAR ? margin + height / 2 : margin;
      Optional<Vec3> low = border.at(station, from, crest, height);
      Optional<Vec3> high =
          kind == ConnectorKind.LINGUAL_PLATE
              ? station.tooth().isPresent()
                  ? onTooth(station)
                  : border.at(station, margin, crest, 0)
              : border.at(station, from, crest, 0);
      if (low.isPresent() && high.isPresent()) {
        above.add(high.get());
        below.add(low.get());
      }
    }
    straighten(above, below, KEPT_SHARE * height);
    if (above.size() < 3) {
      return Optional.empty();
    }
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < above.size(); i++) {
      least = Math.min(least, above.get(i).distance(below.get(i)));
    }
    List<Vec3> edge = chain(above);
    List<Vec3> foot = chain(below);
    List<Vec3> corners = new ArrayList<>(edge);
    corners.addAll(foot.reversed());
    Line outline = moved(Line.closed(corners));
    Line footLine = Line.open(foot);
    least = Math.min(least, edge.stream().mapToDouble(footLine::distanceMm).min().orElse(0));
    return Optional.of(
        new Part.MajorConnector(
            kind,
            outline,
            Optional.empty(),
            List.of(Line.open(edge)),
            band(above, below),
            least,
            room,
            because,
            choices.connector().isPresent()));
  }

  /**
   * Takes out the stations at which the two edges run into each other: where a tooth stands beside
   * a space, distances from the margin and from the crest lead to places that do not follow on.
   */
  private static void straighten(List<Vec3> above, List<Vec3> below, double leastMm) {
    boolean changed = true;
    while (changed && above.size() > 3) {
      Line edge = Line.open(above);
      Line foot = Line.open(below);
      int worst = -1;
      double least = leastMm;
      for (int i = 0; i < above.size(); i++) {
        double width = Math.min(foot.distanceMm(above.get(i)), edge.distanceMm(below.get(i)));
        if (width < least) {
          least = width;
          worst = i;
        }
      }
      changed = worst >= 0;
      if (changed) {
        above.remove(worst);
        below.remove(worst);
      }
    }
  }

  /** Where a plate ends on a tooth, along the surface up from its margin. */
  private Optional<Vec3> onTooth(Station station) {
    Tooth tooth = dentition.tooth(station.tooth().orElseThrow()).orElseThrow();
    double share = rules.lower().plateHeight().value();
    Predicate<Ground.Passed> there = p -> tooth.heightShare(p.point()) >= share;
    return ground
        .walk(station.at(), station.inward(), ground.frame.z(), p -> p.lengthMm() < 12, there)
        .map(way -> way.getLast().point());
  }

  /** Area between two rows of points that belong together [mm²]. */
  private static double band(List<Vec3> above, List<Vec3> below) {
    double sum = 0;
    for (int i = 0; i + 1 < above.size(); i++) {
      Vec3 a = above.get(i);
      Vec3 d = below.get(i + 1);
      sum += above.get(i + 1).minus(a).cross(d.minus(a)).length() / 2;
      sum += d.minus(a).cross(below.get(i).minus(a)).length() / 2;
    }
    return sum;
  }

  /** Stations from the last tooth reached on one side to that on the other. */
  private List<Station> between(Reach reach) {
    int first = -1;
    int last = -1;
    for (int i = 0; i < border.stations.size(); i++) {
      if (border.stations.get(i).tooth().filter(reach.teeth::contains).isPresent()) {
        first = first < 0 ? i : first;
        last = i;
      }
    }
    return first < 0 ? List.of() : border.stations.subList(first, last + 1);
  }

  private List<Edge> edges(double margin) {
    List<Edge> edges = new ArrayList<>();
    for (Station station : border.stations) {
      border
          .at(station, margin, rules.bases().finishLine().value(), 0)
          .ifPresent(p -> edges.add(new Edge(station, p)));
    }
    return edges;
  }

  /** From the first to the last edge of one side that is reached. */
  private List<Edge> side(List<Edge> edges, Reach reach, boolean right) {
    int first = -1;
    int last = -1;
    for (int i = 0; i < edges.size(); i++) {
      Edge edge = edges.get(i);
      if (reach.has(edge.station) && ground.onRight(edge.station.at().point()) == right) {
        first = first < 0 ? i : first;
        last = i;
      }
    }
    return first < 0 ? List.of() : edges.subList(first, last + 1);
  }

  /** The same piece, made longer at both ends in turn until it is so long from front to back. */
  private List<Edge> widened(List<Edge> edges, List<Edge> piece, double least) {
    int from = edges.indexOf(piece.getFirst());
    int to = edges.indexOf(piece.getLast());
    boolean right = ground.onRight(piece.getFirst().station.at().point());
    boolean front = false;
    for (int i = 0; i < edges.size(); i++) {
      if (depth(Line.open(edges.subList(from, to + 1).stream().map(Edge::at).toList())) >= least) {
        break;
      }
      if (front && to + 1 < edges.size() && right == ground.onRight(edges.get(to + 1).at)) {
        to++;
      } else if (from > 0 && right == ground.onRight(edges.get(from - 1).at)) {
        from--;
      }
      front = !front;
    }
    return edges.subList(from, to + 1);
  }

  private List<Vec3> laid(List<Edge> edges) {
    return chain(edges.stream().map(Edge::at).toList());
  }

  private List<Vec3> chain(List<Vec3> corners) {
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i + 1 < corners.size(); i++) {
      List<Vec3> way = ground.laidStraight(corners.get(i), corners.get(i + 1));
      points.addAll(way.subList(0, way.size() - 1));
    }
    points.add(corners.getLast());
    return points;
  }

  private static List<Vec3> chopped(List<Vec3> piece) {
    return piece.subList(0, piece.size() - 1);
  }

  /** The border with the points moved that a person moved; neighbours follow less and less. */
  private Line moved(Line line) {
    Line changed = line;
    for (Choices.BorderMove move : choices.moves()) {
      List<Vec3> points = new ArrayList<>();
      for (Vec3 p : changed.points()) {
        double off = p.distance(move.from()) / MOVE_REACH_MM;
        double weight = Math.exp(-off * off);
        points.add(
            weight > 1e-3
                ? ground.lay(p.plus(move.to().minus(move.from()).times(weight))).point()
                : p);
      }
      changed = Line.closed(points);
    }
    return changed;
  }
}
