package rodwork.design.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.plan.Part.ConnectorKind;
import rodwork.geometry.Vec3;
import rodwork.rules.Reading;

/** Draws the major connector. */
final class ConnectorMaker {
  /** From the last tooth, over half of a tooth that is replaced [mm]. */
  private static final double LAP_MM = 8;

  /** A lower edge is not farther from the row than this [mm]. */
  private static final double FAR_MM = 20;

  /** A scan that ends nearer than this to the edge wanted shows it: as edges are known [mm]. */
  private static final double SHOWN_MM = 0.1;

  /** A notch takes no more than this share of the height. */
  private static final double MOST_NOTCHED = 0.5;

  private final Ground ground;
  private final Dentition dentition;
  private final PlanRules rules;
  private final Border border;
  private final Tori tori;
  private final BorderMoves moves;
  private final List<Part.Rest> rests;

  ConnectorMaker(Draft draft) {
    this.rests = draft.rests;
    this.ground = draft.ground;
    this.dentition = draft.dentition;
    this.rules = draft.rules;
    this.border = draft.border;
    this.tori = draft.tori;
    this.moves = new BorderMoves(ground, draft.choices);
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

  /** An upper connector between the right and the left. */
  Optional<Part.MajorConnector> upper(
      Reach reach, ConnectorKind kind, boolean front, String because) {
    Edges edges =
        Edges.at(
            ground, border, rules.upper().border().value(), rules.bases().finishLine().value());
    return new UpperConnector(ground, rules, border, edges, moves, tori)
        .draw(reach, kind, front, because);
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
    double from = upperEdgeMm(kind);
    for (Station station : shown(reach, kind)) {
      Optional<Vec3> low = border.at(station, from, crest, height - lifted(kind, station));
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
    straighten(above, below, rules.bases().keptShare().value() * height);
    if (above.size() < 3) {
      return Optional.empty();
    }
    List<Vec3> edge = Edges.laidChain(ground, above);
    List<Vec3> foot =
        notched(
            Edges.laidChain(
                ground,
                kind == ConnectorKind.LINGUAL_PLATE
                    ? below
                    : Edges.apart(ground, edge, below, height, _ -> false)),
            edge);
    List<Vec3> corners = new ArrayList<>(edge);
    corners.addAll(foot.reversed());
    Line outline = moves.of(Line.closed(corners));
    double least =
        Line.open(edge.stream().map(moves::of).toList())
            .distanceMm(Line.open(foot.stream().map(moves::of).toList()));
    return Optional.of(
        new Part.MajorConnector(
            kind,
            outline,
            Optional.empty(),
            List.of(Line.open(edge)),
            band(above, notched(below, above)),
            least,
            room,
            because,
            moves.kindChosen()));
  }

  /**
   * A place where the scan ends before the lower edge of a lower connector.
   *
   * @param place of the tooth, or of the one that is missing
   * @param shownMm how far below the margin, over a space from the crest, the scan shows the slope
   * @param wantedMm how far it would have to
   */
  record TooShort(ToothNumber place, double shownMm, double wantedMm) {}

  /**
   * Where a lower connector has no room on the scan, on the way between all that it has to join:
   * the worst of each place, from the patient's right to left.
   */
  List<TooShort> tooShort(Reach reach, ConnectorKind kind) {
    Map<ToothNumber, TooShort> worst = new LinkedHashMap<>();
    for (Station station : joined(reach)) {
      double wanted = wantedMm(kind, station);
      double shown = way(kind, station).shownMm();
      if (shown < wanted - SHOWN_MM) {
        worst.merge(
            station.place(),
            new TooShort(station.place(), shown, wanted),
            (a, b) -> a.shownMm <= b.shownMm ? a : b);
      }
    }
    return List.copyOf(worst.values());
  }

  /** From the margins to the upper edge, beside a tooth [mm]. */
  private double upperEdgeMm(ConnectorKind kind) {
    double margin = rules.lower().border().value();
    return kind == ConnectorKind.SUBLINGUAL_BAR
        ? margin + rules.lower().barHeight().value() / 2
        : margin;
  }

  private double wantedMm(ConnectorKind kind, Station station) {
    double upper =
        station.tooth().isPresent() ? upperEdgeMm(kind) : rules.bases().finishLine().value();
    return upper + rules.lower().barHeight().value() - lifted(kind, station);
  }

  /** To the lower edge. */
  private Border.Way way(ConnectorKind kind, Station station) {
    return border.way(
        station,
        upperEdgeMm(kind),
        rules.bases().finishLine().value(),
        rules.lower().barHeight().value() - lifted(kind, station));
  }

  /**
   * Stations that a lower connector is laid at: all that it has to join, and beyond as far as the
   * scan shows its place without a break.
   */
  private List<Station> shown(Reach reach, ConnectorKind kind) {
    List<Station> all = between(reach);
    List<Station> joined = joined(reach);
    if (joined.isEmpty()) {
      return all;
    }
    int from = all.indexOf(joined.getFirst());
    int to = all.indexOf(joined.getLast());
    while (from > 0 && way(kind, all.get(from - 1)).at().isPresent()) {
      from--;
    }
    while (to + 1 < all.size() && way(kind, all.get(to + 1)).at().isPresent()) {
      to++;
    }
    return all.subList(from, to + 1);
  }

  /** Stations between the first and the last rest or base that a lower connector joins. */
  private List<Station> joined(Reach reach) {
    List<Station> all = between(reach);
    Set<Station> carry =
        rests.stream().flatMap(r -> border.beside(r).stream()).collect(Collectors.toSet());
    int first = -1;
    int last = -1;
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i).tooth().isEmpty() ? reach.has(all.get(i)) : carry.contains(all.get(i))) {
        first = first < 0 ? i : first;
        last = i;
      }
    }
    return first < 0 ? List.of() : all.subList(first, last + 1);
  }

  /** How much higher a plate ends beside a torus, so as to keep clear of it [mm]. */
  private double lifted(ConnectorKind kind, Station station) {
    OptionalDouble below = tori.belowMm(station);
    double height = rules.lower().barHeight().value();
    if (kind != ConnectorKind.LINGUAL_PLATE || below.isEmpty()) {
      return 0;
    }
    double left = below.getAsDouble() - tori.clearMm() - rules.lower().border().value();
    // Where not even that is left the plate goes over the torus, with relief.
    return left >= 0 ? Math.max(0, height - left) : 0;
  }

  /** The lower edge with a notch round each lingual frenum. */
  private List<Vec3> notched(List<Vec3> foot, List<Vec3> edge) {
    List<Vec3> points = foot;
    for (List<ToothNumber> frenum :
        Notch.frena(
            ground.frame.jaw(), t -> dentition.chart().place(t).lingualFrenum() == Answer.YES)) {
      List<Vec3> feet =
          border.stations.stream()
              .filter(s -> frenum.contains(s.place()))
              .map(s -> s.at().point())
              .toList();
      if (!feet.isEmpty()) {
        Station at = border.nearest(Notch.mean(feet));
        Vec3 along = at.inward().cross(ground.frame.z());
        Vec3 middle =
            points.stream()
                .min(
                    Comparator.comparingDouble(
                        p -> {
                          Vec3 d = p.minus(at.at().point());
                          return Math.abs(d.dot(along)) + (d.length() > FAR_MM ? FAR_MM : 0);
                        }))
                .orElseThrow();
        points = Notch.by(ground, rules).in(points, middle, Line.open(edge), MOST_NOTCHED);
      }
    }
    return points;
  }

  /**
   * Takes out the stations at which the two edges run into each other: where a tooth stands beside
   * a space, distances from the margin and from the crest lead to places that do not follow on.
   */
  static void straighten(List<Vec3> above, List<Vec3> below, double leastMm) {
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
    if (first < 0) {
      return List.of();
    }
    int from = lapped(reach, first, -1);
    return border.stations.subList(from, lapped(reach, last, 1) + 1);
  }

  /** How far along a base behind the last tooth a connector runs, so that both are one piece. */
  private int lapped(Reach reach, int end, int step) {
    Vec3 tooth = border.stations.get(end).at().point();
    int at = end;
    for (int i = end + step; i >= 0 && i < border.stations.size(); i += step) {
      Station station = border.stations.get(i);
      if (station.tooth().isPresent()
          || !reach.has(station)
          || station.at().point().distance(tooth) > LAP_MM) {
        break;
      }
      at = i;
    }
    return at;
  }
}
