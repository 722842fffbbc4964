package rodwork.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.overhang.Overhang;

/**
 * The marks of one gauge: the lower edge of the connected region 0 &lt; u &lt; g that touches the
 * survey line.
 *
 * <p>Traced over the mesh between vertices of lesser and greater depth. On long edges, and where
 * the depth jumps, the place of the gauge is found on the triangles themselves by bisection; a jump
 * past the gauge is no mark. A point is kept where the surface, followed upwards in its own
 * section, gets back to the survey line without being deeper than the gauge, and where the reading
 * carries no flag.
 */
final class GaugeMarks {
  /** Edges up to this length are interpolated: at a radius of 3 mm that is within 2 µm [mm]. */
  private static final double SHORT_EDGE_MM = 0.3;

  /** How near bisection brings a depth to its gauge [mm]. */
  private static final double DEPTH_ERROR_MM = 5e-4;

  /**
   * How much deeper than the gauge the way up to the survey line may be [mm]: roughness of the
   * scan.
   */
  private static final double ROUGH_MM = 0.01;

  /** The way up to the survey line is followed this far [mm]. */
  private static final double MOST_WAY_MM = 12;

  private final MeshTopology topology;
  private final TriangleMesh mesh;
  private final Overhang overhang;
  private final SurveyRules rules;

  GaugeMarks(MeshTopology topology, Overhang overhang, SurveyRules rules) {
    this.topology = topology;
    this.mesh = topology.mesh();
    this.overhang = overhang;
    this.rules = rules;
  }

  List<GaugeMark> trace(double gaugeMm, IntPredicate anatomic, Watch watch) {
    boolean[] deeper = new boolean[mesh.vertexCount()];
    for (int v = 0; v < deeper.length; v++) {
      deeper[v] = overhang.depth(v) >= gaugeMm;
    }
    List<GaugeMark> marks = new ArrayList<>();
    IntPredicate downwards = t -> anatomic.test(t) && deepensDownwards(t);
    for (Contour.Chain chain : Contour.chains(topology, deeper, downwards)) {
      watch.check();
      follow(chain, gaugeMm, marks);
    }
    return marks;
  }

  /** Whether the depth of a triangle grows going down: its lower edge, not the upper one. */
  private boolean deepensDownwards(int t) {
    int a = mesh.corner(t, 0);
    int b = mesh.corner(t, 1);
    int c = mesh.corner(t, 2);
    Vec3 n = mesh.doubleAreaNormal(t);
    // Gradients over the triangle, both times the same positive factor.
    Vec3 ga = n.cross(mesh.vertex(c).minus(mesh.vertex(b)));
    Vec3 gb = n.cross(mesh.vertex(a).minus(mesh.vertex(c)));
    Vec3 gc = n.cross(mesh.vertex(b).minus(mesh.vertex(a)));
    Vec3 gradient =
        ga.times(overhang.depth(a))
            .plus(gb.times(overhang.depth(b)))
            .plus(gc.times(overhang.depth(c)));
    return gradient.dot(overhang.axis()) < 0;
  }

  private void follow(Contour.Chain chain, double gaugeMm, List<GaugeMark> marks) {
    int n = chain.edges().length;
    Vec3[] points = new Vec3[n];
    boolean[] keep = new boolean[n];
    IntStream.range(0, n)
        .parallel()
        .forEach(
            i -> {
              Vec3 q = place(chain.edges()[i], gaugeMm);
              if (q != null) {
                points[i] = q;
                int t =
                    i < chain.triangles().length ? chain.triangles()[i] : chain.triangles()[i - 1];
                Vec3 out = overhang.freeLine(q).minus(q).across(overhang.axis());
                keep[i] = touchesLine(q, out, t, gaugeMm) && !overhang.read(q).flagged();
              }
            });
    int start = 0;
    if (chain.closed()) {
      while (start < n && keep[start]) {
        start++;
      }
      if (start == n) {
        marks.add(new GaugeMark(gaugeMm, Arrays.asList(points), true));
        return;
      }
    }
    List<Vec3> run = new ArrayList<>();
    for (int j = 0; j <= n; j++) {
      int i = (start + j) % n;
      if (j < n && keep[i]) {
        run.add(points[i]);
      } else if (!run.isEmpty()) {
        if (run.size() > 1) {
          marks.add(new GaugeMark(gaugeMm, run, false));
        }
        run = new ArrayList<>();
      }
    }
  }

  /** Where the depth along an edge is that of the gauge; null where it jumps past it. */
  private @Nullable Vec3 place(int edge, double gaugeMm) {
    int a = topology.edgeVertex(edge, 0);
    int b = topology.edgeVertex(edge, 1);
    double da = overhang.depth(a);
    double db = overhang.depth(b);
    Vec3 va = mesh.vertex(a);
    Vec3 vb = mesh.vertex(b);
    double length = va.distance(vb);
    if (length <= SHORT_EDGE_MM && Math.abs(da - db) <= length) {
      return va.plus(vb.minus(va).times((gaugeMm - da) / (db - da)));
    }
    // Along an edge the depth changes by no more than its length, but for jumps: a jump that passes
    // the
    // gauge from further away than that leaves no place for it.
    if (length <= SHORT_EDGE_MM
        && gaugeMm - Math.min(da, db) > length
        && Math.max(da, db) - gaugeMm > length) {
      return null;
    }
    Vec3 less = da < db ? va : vb;
    Vec3 more = da < db ? vb : va;
    Crossing found = bisect(overhang, less, more, gaugeMm);
    return Math.abs(found.depthMm() - gaugeMm) <= rules.fits().value() ? found.point() : null;
  }

  /** A place and its depth [mm]. */
  record Crossing(Vec3 point, double depthMm) {}

  /** The place between a shallower and a deeper point at which the depth comes to the gauge. */
  static Crossing bisect(Overhang overhang, Vec3 less, Vec3 more, double gaugeMm) {
    Vec3 low = less;
    Vec3 high = more;
    Vec3 q = low;
    double depth = 0;
    for (int i = 0; i < 24; i++) {
      q = low.plus(high).times(0.5);
      depth = overhang.depthAt(q);
      if (Math.abs(depth - gaugeMm) <= DEPTH_ERROR_MM) {
        break;
      }
      if (depth < gaugeMm) {
        low = q;
      } else {
        high = q;
      }
    }
    return new Crossing(q, depth);
  }

  /** Whether the surface leads up from a mark to the survey line without passing its depth. */
  private boolean touchesLine(Vec3 point, Vec3 out, int triangle, double gaugeMm) {
    Vec3 axis = overhang.axis();
    if (out.length() < 1e-9) {
      return false;
    }
    SectionWalk walk = new SectionWalk(topology, point, axis.cross(out).unit());
    boolean[] reached = {false};
    walk.walk(
        triangle,
        axis,
        (q, a, b, s, t, length) -> {
          double depth = overhang.depth(a) + s * (overhang.depth(b) - overhang.depth(a));
          if (depth <= rules.lineTolerance().value()) {
            reached[0] = true;
            return false;
          }
          if (depth > gaugeMm + ROUGH_MM && overhang.depthAt(q) > gaugeMm + ROUGH_MM) {
            return false;
          }
          return length < MOST_WAY_MM;
        });
    return reached[0];
  }
}
