package rodwork.design.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import java.util.stream.Stream;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.chart.Torus;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.space.Space;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.SurfaceDistance;
import rodwork.geometry.mesh.SurfacePoint;

/**
 * The tori of the chart on the cast.
 *
 * <p>A palatal torus is taken for an ellipse over the midline, seen from above, as wide as the
 * chart says, between the levels of the two teeth that it names. Of a mandibular torus the upper
 * edge is known: so far below the margins of the teeth that the chart names.
 */
final class Tori {
  private static final int CORNERS = 64;

  /** Points of a border no farther from an upright section are in it [mm]. */
  private static final double SECTION_MM = 0.4;

  /** A lower border is not farther below its margin than this [mm]. */
  private static final double FAR_MM = 20;

  /** Borders are laid so much farther off than the rule wants: they are known to a tenth [mm]. */
  private static final double RESERVE_MM = 0.3;

  private final Ground ground;
  private final Dentition dentition;
  private final Border border;
  private final double clearMm;
  private final Map<Torus.Site, Line> edges = new EnumMap<>(Torus.Site.class);

  Tori(Ground ground, Dentition dentition, Border border, PlanRules rules) {
    this.ground = ground;
    this.dentition = dentition;
    this.border = border;
    this.clearMm = rules.tissue().torusClear().value() + RESERVE_MM;
    for (Torus.Site site : there()) {
      (site == Torus.Site.PALATAL ? round() : along(site)).ifPresent(e -> edges.put(site, e));
    }
  }

  /** The tori that are there. */
  List<Torus.Site> there() {
    return said(Answer.YES);
  }

  /** Those of which nobody knows. */
  List<Torus.Site> notKnown() {
    return said(Answer.NOT_KNOWN);
  }

  private List<Torus.Site> said(Answer answer) {
    return Arrays.stream(Torus.Site.values())
        .filter(site -> site.jaw() == dentition.chart().jaw() && torus(site).there() == answer)
        .toList();
  }

  Torus torus(Torus.Site site) {
    return dentition.chart().torus(site);
  }

  /** Where a torus lies; empty where chart or scan does not tell. */
  Optional<Line> edge(Torus.Site site) {
    return Optional.ofNullable(edges.get(site));
  }

  /** Least distance that the chart tells from lingual margins to a torus [mm]. */
  OptionalDouble leastBelowMm() {
    return there().stream()
        .map(site -> torus(site).belowMarginMm())
        .filter(OptionalDouble::isPresent)
        .mapToDouble(OptionalDouble::getAsDouble)
        .min();
  }

  /** Room that borders are laid with [mm]. */
  double clearMm() {
    return clearMm;
  }

  /** Whether the chart tells where a torus lies. */
  boolean placed(Torus.Site site) {
    Torus torus = torus(site);
    return torus.from().isPresent()
        && torus.to().isPresent()
        && (site == Torus.Site.PALATAL ? torus.widthMm() : torus.belowMarginMm()).isPresent();
  }

  /**
   * How far below the margins the torus at a station, or no farther from it than the room wanted,
   * begins [mm]; empty: none is known.
   */
  OptionalDouble belowMm(Station station) {
    return there().stream()
        .filter(site -> site != Torus.Site.PALATAL && placed(site))
        .filter(
            site ->
                border.stations.stream()
                    .anyMatch(
                        s ->
                            beside(site, s)
                                && s.at().point().distance(station.at().point()) <= clearMm))
        .map(site -> torus(site).belowMarginMm())
        .filter(OptionalDouble::isPresent)
        .mapToDouble(OptionalDouble::getAsDouble)
        .min();
  }

  /** All of them, with the room between each and the connector. */
  List<TorusMark> marks(Optional<Part.MajorConnector> connector) {
    return there().stream()
        .map(
            site ->
                new TorusMark(
                    site,
                    edge(site),
                    connector.map(c -> roomMm(site, c)).orElse(OptionalDouble.empty())))
        .toList();
  }

  /** Between a torus and a connector [mm]; 0 or less where the one lies over the other. */
  OptionalDouble roomMm(Torus.Site site, Part.MajorConnector connector) {
    return site == Torus.Site.PALATAL
        ? edge(site)
            .map(edge -> OptionalDouble.of(roundAbout(edge, connector)))
            .orElse(OptionalDouble.empty())
        : placed(site) ? above(site, connector) : OptionalDouble.empty();
  }

  /** Whether a point lies on the palatal torus, or nearer to it than borders are laid. */
  boolean near(Vec3 point) {
    return edge(Torus.Site.PALATAL)
        .filter(
            edge ->
                edge.distanceMm(point) < clearMm || Ground.contains(seen(edge), ground.plan(point)))
        .isPresent();
  }

  private double roundAbout(Line edge, Part.MajorConnector connector) {
    List<double[]> outer = seen(connector.outline());
    List<double[]> inner = connector.opening().map(this::seen).orElse(List.of());
    boolean over =
        seen(edge).stream().anyMatch(p -> Ground.contains(outer, p) && !Ground.contains(inner, p));
    if (over) {
      return 0;
    }
    List<double[]> torus = seen(edge);
    if (outer.stream().anyMatch(p -> Ground.contains(torus, p))) {
      return 0;
    }
    return Stream.concat(Stream.of(connector.outline()), connector.opening().stream())
        .mapToDouble(edge::distanceMm)
        .min()
        .orElseThrow();
  }

  /**
   * What is left of the way from the margin to the torus below the lowest place of a connector, in
   * the upright sections of the stations that the torus lies below.
   */
  private OptionalDouble above(Torus.Site site, Part.MajorConnector connector) {
    double below = torus(site).belowMarginMm().orElseThrow();
    double deepest = Double.NEGATIVE_INFINITY;
    for (Station station : border.stations) {
      if (beside(site, station)) {
        for (Vec3 p : connector.outline().points()) {
          if (underneath(station, p)) {
            deepest =
                Math.max(
                    deepest,
                    station.tooth().isPresent()
                        ? border.fromMargins(p)
                        : p.distance(station.at().point()));
          }
        }
      }
    }
    return Double.isFinite(deepest) ? OptionalDouble.of(below - deepest) : OptionalDouble.empty();
  }

  /** Whether a point lies below a station in its upright section, on its own side of the jaw. */
  private boolean underneath(Station station, Vec3 point) {
    Vec3 from = point.minus(station.at().point());
    Vec3 along = station.inward().cross(ground.frame.z());
    return from.dot(ground.frame.z()) < 0
        && Math.abs(from.dot(along)) <= SECTION_MM
        && from.length() <= FAR_MM;
  }

  private List<double[]> seen(Line line) {
    return line.points().stream().map(ground::plan).toList();
  }

  private Optional<Line> round() {
    Torus torus = torus(Torus.Site.PALATAL);
    if (!placed(Torus.Site.PALATAL)) {
      return Optional.empty();
    }
    Optional<double[]> front = level(torus.from().orElseThrow());
    Optional<double[]> back = level(torus.to().orElseThrow());
    if (front.isEmpty() || back.isEmpty()) {
      return Optional.empty();
    }
    double half = Math.abs(front.get()[1] - back.get()[1]) / 2;
    double x = (front.get()[0] + back.get()[0]) / 2;
    double y = (front.get()[1] + back.get()[1]) / 2;
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i < CORNERS; i++) {
      double angle = 2 * Math.PI * i / CORNERS;
      ground
          .under(
              x + torus.widthMm().getAsDouble() / 2 * Math.cos(angle), y + half * Math.sin(angle))
          .ifPresent(points::add);
    }
    return points.size() < CORNERS ? Optional.empty() : Optional.of(Line.closed(points));
  }

  /** The midline at the level of a tooth, seen from above [mm]; empty where neither side shows. */
  private Optional<double[]> level(ToothNumber tooth) {
    List<double[]> both =
        Stream.of(tooth, tooth.mirrored())
            .flatMap(t -> place(t).stream())
            .map(ground::plan)
            .toList();
    return both.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new double[] {
              both.size() < 2 ? 0 : (both.getFirst()[0] + both.getLast()[0]) / 2,
              both.stream().mapToDouble(p -> p[1]).average().orElseThrow()
            });
  }

  private Optional<Vec3> place(ToothNumber tooth) {
    return dentition
        .tooth(tooth)
        .map(t -> t.centroid())
        .or(
            () ->
                dentition.openSpaces().stream()
                    .flatMap(s -> s.positions().stream())
                    .filter(p -> p.tooth().equals(tooth))
                    .map(Space.Position::at)
                    .findFirst());
  }

  private Optional<Line> along(Torus.Site site) {
    Torus torus = torus(site);
    if (!placed(site)) {
      return Optional.empty();
    }
    double below = torus.belowMarginMm().getAsDouble();
    List<Vec3> points = new ArrayList<>();
    for (Station station : border.stations) {
      if (beside(site, station)) {
        border.at(station, below, below, 0).ifPresent(points::add);
      }
    }
    return points.size() < 2
        ? Optional.empty()
        : Optional.of(Line.open(Edges.laidChain(ground, points)));
  }

  /** Whether a mandibular torus lies below a station. */
  private boolean beside(Torus.Site site, Station station) {
    Torus torus = torus(site);
    if (torus.from().isEmpty() || torus.to().isEmpty()) {
      return false;
    }
    int a = torus.from().get().place();
    int b = torus.to().get().place();
    ToothNumber place = station.place();
    return place.side() == (site == Torus.Site.MANDIBULAR_RIGHT ? Side.RIGHT : Side.LEFT)
        && place.place() >= Math.min(a, b)
        && place.place() <= Math.max(a, b);
  }

  /**
   * At vertices, how far within the palatal torus and the room that it wants they lie [mm]; less
   * than 0 outside.
   */
  Optional<IntToDoubleFunction> within() {
    return edge(Torus.Site.PALATAL)
        .map(
            edge -> {
              List<SurfacePoint> seeds = new ArrayList<>();
              edge.points().forEach(p -> seeds.add(ground.lay(p)));
              for (int t : ground.within(edge)) {
                seeds.add(ground.lay(ground.mesh().pointOn(t, 1 / 3.0, 1 / 3.0)));
              }
              SurfaceDistance away = SurfaceDistance.from(ground.mesh(), seeds, 2 * clearMm + 1);
              return v -> clearMm - away.at(v);
            });
  }
}
