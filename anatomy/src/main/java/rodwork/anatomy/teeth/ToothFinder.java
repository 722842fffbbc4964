package rodwork.anatomy.teeth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.rules.Wording;

/**
 * Finds which triangles belong to which tooth. What depends on the cast alone is kept, so that one
 * finder answers corrections quickly; each answer is a pure function of arch and hints.
 */
public final class ToothFinder {
  /** A point farther from the cast than this was not meant for it [mm]. */
  private static final double OFF_CAST_MM = 3;

  /** How far the steps of cells are evened out on a dense scan [mm]. */
  private static final double SMOOTHED_MM = 0.3;

  /**
   * Triangles at edges count as no smaller than this, so that a broken scan costs no hours [mm²].
   */
  private static final double LEAST_AREA_MM2 = 0.002;

  /** A point within this of the middle of its crown stays [mm]. */
  private static final double AMID_MM = 0.5;

  /** This share of what is seen from above or below, and it is seen from below. */
  private static final double MOST_AWAY = 0.6;

  /** How often crowns are grown anew from their middles at most. */
  private static final int ROUNDS = 4;

  /** How often what was left of crowns is looked for at most. */
  private static final int CLAIMS = 2;

  /** A second piece with this share of the largest is more than an island. */
  private static final double SECOND_PIECE = 0.5;

  private final Arch arch;
  private final CellGraph graph;
  private final boolean[] base;

  private ToothFinder(Arch arch) {
    this.arch = arch;
    graph = CellGraph.of(arch);
    base = new boolean[graph.size()];
    for (int t = 0; t < graph.cellOf.length; t++) {
      base[graph.cellOf[t]] |= arch.surface().isBase(t);
    }
  }

  public static ToothFinder on(Arch arch) {
    return new ToothFinder(arch);
  }

  /**
   * Finds the teeth of one arch; {@link #on} is quicker where it is asked more than once.
   *
   * @throws rodwork.geometry.Refusal where no tooth is found, or a hint does not fit the cast; see
   *     {@link TeethProblem}
   * @throws java.util.concurrent.CancellationException if the watch says so
   */
  public static ToothFinding find(Arch arch, ToothHints hints, Watch watch) {
    return on(arch).find(hints, watch);
  }

  /** Finds the teeth; throws as the static form does. */
  public ToothFinding find(ToothHints hints, Watch watch) {
    watch.progress("finding teeth", 0);
    List<ToothFinding.Remark> remarks = new ArrayList<>();
    Map<Integer, Double> numbering = new TreeMap<>();
    Map<Integer, double[]> points = new TreeMap<>();
    pieces(remarks);
    upright();
    for (ToothHints.Point point : hints.points()) {
      points.put(point.fdi(), onCast(point));
      numbering.put(point.fdi(), 1.0);
    }
    int[] fixed = fixed(hints);
    boolean found = points.isEmpty();
    if (found) {
      RowSearch.Found row =
          new RowSearch(graph, base, arch.frame().jaw())
              .find(hints.missing(), tops -> grown(tops, fixed, 0, watch));
      points = new TreeMap<>(row.tops());
      numbering.putAll(row.numbering());
      remarks.addAll(row.remarks());
    }
    watch.progress("spreading teeth", 0.4);
    CrownSpread spread = whole(points, fixed, found ? 0 : AMID_MM, watch);
    Map<Integer, Vec3> places = new TreeMap<>();
    points.forEach((fdi, at) -> places.put(fdi, inScan(at)));
    return new ToothFinding(
        ToothLabels.of(onTriangles(spread, hints.pins(), watch)),
        spread.certainty(graph),
        numbering,
        places,
        remarks);
  }

  /**
   * Spreads crowns from their points, which move to the middle of what they gave until they stay.
   */
  private CrownSpread grown(Map<Integer, double[]> points, int[] fixed, double amid, Watch watch) {
    CrownSpread spread = CrownSpread.of(graph, points, fixed, watch);
    for (int round = 0; round < ROUNDS; round++) {
      if (!recentred(points, spread, round == 0 ? amid : AMID_MM)) {
        break;
      }
      spread = CrownSpread.of(graph, points, fixed, watch);
    }
    return spread;
  }

  /** Crowns with the parts that a groove kept from them. */
  private CrownSpread whole(Map<Integer, double[]> points, int[] fixed, double amid, Watch watch) {
    CrownSpread spread = grown(points, fixed, amid, watch);
    int[] known = fixed.clone();
    for (int round = 0; round < CLAIMS; round++) {
      if (!HalfCrowns.claim(graph, points, spread, known)) {
        break;
      }
      spread = CrownSpread.of(graph, points, known, watch);
      if (recentred(points, spread, AMID_MM)) {
        spread = CrownSpread.of(graph, points, known, watch);
      }
    }
    return spread;
  }

  private int[] onTriangles(CrownSpread spread, List<ToothHints.Pin> pins, Watch watch) {
    int n = arch.mesh().triangleCount();
    int[] label = new int[n];
    boolean[] kept = new boolean[n];
    for (int t = 0; t < n; t++) {
      label[t] = spread.label[graph.cellOf[t]];
      kept[t] = arch.surface().isBase(t);
    }
    for (ToothHints.Pin pin : pins) {
      for (int t = 0; t < n; t++) {
        if (arch.mesh().pointOn(t, 1.0 / 3, 1.0 / 3).distance(pin.at()) <= pin.radius()) {
          label[t] = pin.fdi();
          kept[t] = true;
        }
      }
    }
    if (graph.size() == n) {
      return label;
    }
    watch.progress("drawing margins", 0.8);
    double spacing = spacingAtEdges(label);
    int[] drawn = MarginRefinement.of(arch, label, kept, spacing, watch);
    return MarginSmoothing.of(arch.topology(), drawn, kept, SMOOTHED_MM, spacing);
  }

  /** Distance of the centres of neighbouring triangles where labels meet, on average [mm]. */
  private double spacingAtEdges(int[] label) {
    double area = 0;
    int count = 0;
    for (int e = 0; e < arch.topology().edgeCount(); e++) {
      int first = arch.topology().edgeTriangle(e, 0);
      int second = arch.topology().edgeTriangle(e, 1);
      if (second >= 0 && label[first] != label[second]) {
        area += arch.mesh().area(first) + arch.mesh().area(second);
        count += 2;
      }
    }
    // An even triangle of area A has neighbours at 2/3 of its height: √(4A/(3√3)).
    return Math.sqrt(4 * Math.max(LEAST_AREA_MM2, area / Math.max(1, count)) / (3 * Math.sqrt(3)));
  }

  /**
   * Moves each point to the middle of the crown that it gave, since reach is measured from there
   * and a person points anywhere on a tooth. Points within so much of it [mm] stay.
   *
   * @return whether any moved
   */
  private boolean recentred(Map<Integer, double[]> points, CrownSpread spread, double amid) {
    boolean moved = false;
    for (var top : CrownTops.again(graph, spread.label, points.keySet()).entrySet()) {
      double[] to = top.getValue();
      double[] from = points.getOrDefault(top.getKey(), to);
      if (Math.hypot(to[0] - from[0], to[1] - from[1]) > amid) {
        points.put(top.getKey(), to);
        moved = true;
      }
    }
    return moved;
  }

  /** Plaster base, pins, and the cells under the points that were given. */
  private int[] fixed(ToothHints hints) {
    int[] fixed = new int[graph.size()];
    Arrays.fill(fixed, -1);
    for (ToothHints.Point point : hints.points()) {
      Vec3 at = inArch(point.at());
      int nearest = 0;
      for (int c = 1; c < fixed.length; c++) {
        nearest = place(c).distance(at) < place(nearest).distance(at) ? c : nearest;
      }
      fixed[nearest] = point.fdi();
    }
    for (ToothHints.Pin pin : hints.pins()) {
      Vec3 at = inArch(pin.at());
      for (int c = 0; c < fixed.length; c++) {
        if (place(c).distance(at) <= pin.radius()) {
          fixed[c] = pin.fdi();
        }
      }
    }
    for (int c = 0; c < fixed.length; c++) {
      fixed[c] = base[c] ? ToothLabels.GUM : fixed[c];
    }
    return fixed;
  }

  /** Of an arch seen from above more faces up than down, be it a shell or a trimmed cast. */
  private void upright() {
    Vec3 up = arch.frame().z();
    double away = 0;
    double all = 0;
    for (int t = 0; t < arch.mesh().triangleCount(); t++) {
      if (!arch.surface().isBase(t)) {
        Vec3 n = arch.mesh().doubleAreaNormal(t);
        double level = Math.abs(n.dot(up));
        all += level;
        away += n.dot(up) < 0 ? level : 0;
      }
    }
    if (away > MOST_AWAY * all) {
      throw TeethProblem.UPSIDE_DOWN.with(100 * away / all);
    }
  }

  private void pieces(List<ToothFinding.Remark> remarks) {
    int n = graph.size();
    int[] queue = new int[n];
    boolean[] seen = new boolean[n];
    double first = 0;
    double second = 0;
    for (int s = 0; s < n; s++) {
      if (seen[s]) {
        continue;
      }
      int tail = 0;
      queue[tail++] = s;
      seen[s] = true;
      double area = 0;
      for (int head = 0; head < tail; head++) {
        int c = queue[head];
        area += graph.area[c];
        for (int l = graph.start[c]; l < graph.start[c + 1]; l++) {
          if (!seen[graph.to[l]]) {
            seen[graph.to[l]] = true;
            queue[tail++] = graph.to[l];
          }
        }
      }
      second = Math.max(second, Math.min(first, area));
      first = Math.max(first, area);
    }
    if (second > SECOND_PIECE * first) {
      remarks.add(TeethProblem.TWO_SURFACES.remark(first, second));
    }
  }

  private Vec3 place(int cell) {
    return new Vec3(graph.x(cell), graph.y(cell), graph.z(cell));
  }

  private Vec3 inArch(Vec3 at) {
    return arch.frame().toArch(at.minus(arch.frame().origin()));
  }

  private Vec3 inScan(double[] at) {
    return arch.frame().toScan(new Vec3(at[0], at[1], at[2])).plus(arch.frame().origin());
  }

  private double[] onCast(ToothHints.Point point) {
    boolean upper = arch.frame().jaw() == Jaw.UPPER;
    if (point.fdi() < 30 != upper) {
      throw TeethProblem.WRONG_JAW.with(
          new Wording.Piece.Tooth(point.fdi()), upper ? "upper" : "lower");
    }
    Vec3 at = inArch(point.at());
    double nearest = Double.POSITIVE_INFINITY;
    for (int c = 0; c < graph.size(); c++) {
      nearest = Math.min(nearest, place(c).distance(at));
    }
    if (nearest > OFF_CAST_MM) {
      throw TeethProblem.POINT_OFF_CAST.with(
          new Wording.Piece.Tooth(point.fdi()), nearest, OFF_CAST_MM);
    }
    return new double[] {at.x(), at.y(), at.z()};
  }
}
