package rodwork.design.plan;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.rules.Wording;
import rodwork.survey.path.Zone;

/**
 * What of the cast the rigid parts of a plan pass on their way out: what a search for a path looks
 * at once there is a plan, in place of the zones that anatomy suggests.
 */
public final class RigidParts {
  /** A border is drawn on the surface this close [mm], so that nothing slips through it. */
  private static final double BORDER_STEP_MM = 0.1;

  private final Arch arch;
  private final ToothLabels labels;
  private final TriangleTree tree;
  private final Vec3 up;

  private RigidParts(Arch arch, ToothLabels labels) {
    this.arch = arch;
    this.labels = labels;
    this.tree = TriangleTree.of(arch.mesh());
    this.up = arch.frame().z();
  }

  /** The zones of a plan: each base, the major connector, and the gum under each bar arm. */
  public static List<Zone> zones(Arch arch, Dentition dentition, Plan plan) {
    RigidParts parts = new RigidParts(arch, dentition.labels());
    List<Zone> zones = new ArrayList<>();
    for (Part.DentureBase base : plan.bases()) {
      // A base too short for a tooth has none; its space has its numbers still.
      List<ToothNumber> missing = base.space().missing();
      Wording name =
          missing.size() > 1
              ? Wording.of(missing.getFirst(), " to ", missing.getLast())
              : Wording.of(missing.getFirst());
      zones.add(parts.over(Zone.Kind.BASE, name, base.outline(), Optional.empty()));
    }
    plan.majorConnector()
        .ifPresent(
            c ->
                zones.add(parts.over(Zone.Kind.CONNECTOR, Wording.of(), c.outline(), c.opening())));
    for (Part.Clasp clasp : plan.clasps()) {
      if (clasp.approach() == Part.Approach.BAR) {
        parts.bar(clasp, dentition).ifPresent(zones::add);
      }
    }
    return zones.stream().filter(zone -> !zone.samples().isEmpty()).toList();
  }

  private Zone over(Zone.Kind kind, Wording name, Line outline, Optional<Line> opening) {
    BitSet within = within(outline);
    opening.ifPresent(hole -> within.andNot(within(hole)));
    return Zone.over(arch, kind, name, within.stream().toArray(), null);
  }

  /**
   * The gum within a closed curve, with the undercut flanks that hang from what is seen from above,
   * down to the curve.
   */
  private BitSet within(Line loop) {
    BitSet border = border(loop);
    BitSet inside = new BitSet();
    Deque<Integer> open = new ArrayDeque<>();
    for (int t : CoveredGum.within(arch, labels, loop)) {
      inside.set(t);
      open.add(t);
    }
    TriangleMesh mesh = arch.mesh();
    while (!open.isEmpty()) {
      int t = open.remove();
      if (border.get(t)) {
        continue;
      }
      for (int k = 0; k < 3; k++) {
        int next = arch.topology().neighbour(t, k);
        if (next >= 0
            && !inside.get(next)
            && labels.of(next) == ToothLabels.GUM
            && !arch.surface().isBase(next)
            && mesh.doubleAreaNormal(next).dot(up) <= 0) {
          inside.set(next);
          open.add(next);
        }
      }
    }
    return inside;
  }

  /** The triangles that a curve passes. */
  private BitSet border(Line loop) {
    BitSet border = new BitSet();
    List<Vec3> points = loop.points();
    for (int i = 0; i < points.size(); i++) {
      Vec3 a = points.get(i);
      Vec3 b = points.get((i + 1) % points.size());
      int n = Math.max(1, (int) Math.ceil(a.distance(b) / BORDER_STEP_MM));
      for (int k = 0; k < n; k++) {
        tree.closest(a.plus(b.minus(a).times((double) k / n)))
            .ifPresent(on -> border.set(on.triangle()));
      }
    }
    return border;
  }

  /** The gum below the margin that a bar arm passes; it stands off in the facial direction. */
  private Optional<Zone> bar(Part.Clasp clasp, Dentition dentition) {
    Optional<Tooth> tooth = dentition.tooth(clasp.tooth());
    int[] gum =
        clasp.retentive().map(Line::points).stream()
            .flatMap(List::stream)
            .flatMap(p -> tree.closest(p).stream())
            .mapToInt(SurfacePoint::triangle)
            .filter(t -> labels.of(t) == ToothLabels.GUM)
            .distinct()
            .toArray();
    return tooth.map(
        t -> Zone.over(arch, Zone.Kind.BAR, Wording.of(clasp.tooth()), gum, t.axes().facial()));
  }
}
