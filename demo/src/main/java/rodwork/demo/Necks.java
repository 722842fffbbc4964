package rodwork.demo;

import java.util.ArrayList;
import java.util.List;
import rodwork.geometry.Vec3;

/** What the gum must meet along the arch: necks and margins of the teeth, papillae, bare ridges. */
final class Necks {
  private final Curve facialT;
  private final Curve lingualT;
  private final Curve facialZ;
  private final Curve lingualZ;
  private final Curve papilla;
  private final List<Range> bare = new ArrayList<>();
  private final double first;
  private final double last;

  /** A bare part of the ridge; its ends blend over {@link #BLEND_MM}. */
  private record Range(double from, double to) {}

  /** The rounded edge of the gum ends this far below its crest on the tooth [mm]. */
  private static final double EDGE_MM = 0.22;

  private static final double BLEND_MM = 4.5;

  /** One place where the necks are known: s, facial t and z, lingual t and z. */
  private record Knot(double s, double ft, double fz, double lt, double lz) {}

  Necks(ArchLayout layout, GumShape shape) {
    List<Tooth> teeth = layout.teeth();
    List<Knot> knots = new ArrayList<>();
    for (Tooth tooth : teeth) {
      knots.add(knot(layout.curve(), tooth));
    }
    first = teeth.getFirst().s() - teeth.getFirst().crown().size.md() / 2;
    last = teeth.getLast().s() + teeth.getLast().crown().size.md() / 2;
    List<Knot> bareKnots = new ArrayList<>();
    for (ArchLayout.PlacedSpace space : layout.spaces()) {
      Knot before = nearest(knots, space.from(), true);
      Knot after = nearest(knots, space.to(), false);
      bare.add(new Range(space.from() - 0.6, space.to() + 0.6));
      int n = Math.max(1, (int) Math.round((space.to() - space.from()) / 7));
      for (int i = 0; i < n; i++) {
        double s = space.from() + (i + 0.5) / n * (space.to() - space.from());
        double share = before.s >= after.s ? 0 : (s - before.s) / (after.s - before.s);
        bareKnots.add(sunk(mix(before, after, share, s), shape));
      }
    }
    boolean openLow = bare.stream().anyMatch(r -> r.from < first);
    boolean openHigh = bare.stream().anyMatch(r -> r.to > last);
    List<Knot> all = new ArrayList<>(knots);
    all.addAll(bareKnots);
    all.sort(java.util.Comparator.comparingDouble(Knot::s));
    double low = openLow ? bare.stream().mapToDouble(Range::from).min().orElse(first) : first;
    double high = openHigh ? bare.stream().mapToDouble(Range::to).max().orElse(last) : last;
    addEnd(all, low, -1, shape);
    addEnd(all, high, 1, shape);
    bare.add(new Range(-200, low + 0.6));
    bare.add(new Range(high - 0.6, 200));
    facialT = curve(all, k -> k.ft);
    lingualT = curve(all, k -> k.lt);
    facialZ = curve(all, k -> k.fz);
    lingualZ = curve(all, k -> k.lz);
    papilla = papillae(teeth);
  }

  private static Knot knot(ArchCurve curve, Tooth tooth) {
    Crown crown = tooth.crown();
    Vec3 f = tooth.point(0, crown.facialHalf(0), 0);
    Vec3 l = tooth.point(0, -crown.lingualHalf(0.3), 0.3);
    return new Knot(
        tooth.s(),
        curve.across(tooth.s(), f.x(), f.y()),
        f.z() + EDGE_MM,
        curve.across(tooth.s(), l.x(), l.y()),
        l.z() + EDGE_MM);
  }

  private static Knot nearest(List<Knot> knots, double s, boolean before) {
    Knot best = null;
    for (Knot k : knots) {
      if (before && k.s <= s) {
        best = k;
      }
      if (!before && k.s >= s && (best == null || best.s < s)) {
        best = k;
      }
    }
    return best != null ? best : before ? knots.getFirst() : knots.getLast();
  }

  private static Knot mix(Knot a, Knot b, double share, double s) {
    return new Knot(
        s,
        a.ft + share * (b.ft - a.ft),
        a.fz + share * (b.fz - a.fz),
        a.lt + share * (b.lt - a.lt),
        a.lz + share * (b.lz - a.lz));
  }

  private static Knot sunk(Knot k, GumShape shape) {
    double z = (k.fz + k.lz) / 2 - shape.resorption();
    return new Knot(k.s, k.ft - shape.narrowing(), z, k.lt + shape.narrowing(), z);
  }

  /** The ridge behind the last tooth or space: retromolar pad or tuberosity. */
  private static void addEnd(List<Knot> all, double s, int side, GumShape shape) {
    Knot end = side < 0 ? all.getFirst() : all.getLast();
    for (int i = 0; i < 9; i++) {
      double behind = 3 + 2.5 * i;
      double z = shape.backZ().at(behind);
      Knot k = new Knot(s + side * behind, end.ft - 1.0, z, Math.max(end.lt, -4.6) + 0.8, z);
      all.add(side < 0 ? 0 : all.size(), k);
    }
  }

  private static Curve curve(List<Knot> knots, java.util.function.ToDoubleFunction<Knot> value) {
    double[] points = new double[2 * knots.size()];
    for (int i = 0; i < knots.size(); i++) {
      points[2 * i] = knots.get(i).s;
      points[2 * i + 1] = value.applyAsDouble(knots.get(i));
    }
    return Curve.through(points);
  }

  /** Rise of the gum's edge over the straight line between margins: 0 at each tooth's middle. */
  private static Curve papillae(List<Tooth> teeth) {
    double from = -80;
    double[] points = new double[2 * 1600];
    for (int i = 0; i < 1600; i++) {
      double s = from + 0.1 * i;
      double rise = 0;
      for (int k = 0; k + 1 < teeth.size(); k++) {
        Tooth a = teeth.get(k);
        Tooth b = teeth.get(k + 1);
        double gap = b.s() - a.s() - (a.crown().size.md() + b.crown().size.md()) / 2;
        if (gap > 2 || s < a.s() || s > b.s()) {
          continue;
        }
        double shareA = a.crown().size.md();
        double shareB = b.crown().size.md();
        double contact = a.s() + (b.s() - a.s()) * shareA / (shareA + shareB);
        double u =
            s < contact ? (contact - s) / (contact - a.s()) : (s - contact) / (b.s() - contact);
        double height = Math.min(a.crown().contactFoot(), b.crown().contactFoot());
        // An arc from the middle of each tooth, blunted where two arcs meet.
        double arc = 1 - Math.sqrt(u * u + 0.012) / Math.sqrt(1.012);
        rise =
            height * Math.pow(Math.max(arc, 0), 1.9) / Math.pow(1 - Math.sqrt(0.012 / 1.012), 1.9);
      }
      points[2 * i] = s;
      points[2 * i + 1] = rise;
    }
    return Curve.through(points);
  }

  double facialT(double s) {
    return facialT.at(s);
  }

  double lingualT(double s) {
    return lingualT.at(s);
  }

  double facialZ(double s) {
    return facialZ.at(s);
  }

  double lingualZ(double s) {
    return lingualZ.at(s);
  }

  double papilla(double s) {
    return papilla.at(s);
  }

  /** 1 on a bare ridge, 0 at teeth, smooth between. */
  double bare(double s) {
    double most = 0;
    for (Range r : bare) {
      double in = Math.min(s - r.from, r.to - s);
      most = Math.max(most, rodwork.geometry.solid.Blend.step(0, BLEND_MM, in));
    }
    return Math.clamp(most, 0.0, 1.0);
  }
}
