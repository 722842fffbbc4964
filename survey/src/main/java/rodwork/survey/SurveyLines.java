package rodwork.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.VertexNormals;
import rodwork.geometry.overhang.Overhang;

/**
 * The survey lines of a cast at one path: where an upright rod touches.
 *
 * <p>A line is the zero of n·p, with averaged vertex normals n interpolated over the triangles. It
 * is kept where its upper side is free (u within the line tolerance) and the connected undercut
 * below it reaches the shallow depth; gaps up to the line gap are closed, shorter pieces are
 * counted and left out. Where the surface stays within the band angle of parallel over more than
 * the band height, the two edges of that band stand for the line.
 *
 * @param lines what is shown
 * @param hidden pieces left out: too short, or over too shallow an undercut
 */
record SurveyLines(List<SurveyLine> lines, int hidden) {

  static SurveyLines trace(
      MeshTopology topology,
      VertexNormals normals,
      IntPredicate anatomic,
      Overhang overhang,
      SurveyRules rules,
      Watch watch) {
    return new Tracer(topology, normals, overhang, rules).run(anatomic, watch);
  }

  private static final class Tracer {
    private final MeshTopology topology;
    private final TriangleMesh mesh;
    private final Overhang overhang;
    private final SurveyRules rules;
    private final Vec3 axis;

    /** n·p at each vertex: the sine of the angle by which the surface looks up. */
    private final double[] sine;

    /** Sine of the band angle. */
    private final double limit;

    private final List<SurveyLine> lines = new ArrayList<>();
    private int hidden;

    /** Triangles that the upper edge of a band runs through. */
    private final boolean[] banded;

    Tracer(MeshTopology topology, VertexNormals normals, Overhang overhang, SurveyRules rules) {
      this.topology = topology;
      this.mesh = topology.mesh();
      this.overhang = overhang;
      this.rules = rules;
      this.axis = overhang.axis();
      this.limit = Math.sin(Math.toRadians(rules.bandAngle().value()));
      this.banded = new boolean[mesh.triangleCount()];
      this.sine = new double[mesh.vertexCount()];
      for (int v = 0; v < sine.length; v++) {
        sine[v] = normals.x(v) * axis.x() + normals.y(v) * axis.y() + normals.z(v) * axis.z();
      }
    }

    SurveyLines run(IntPredicate anatomic, Watch watch) {
      boolean[] above = above(0);
      Undercuts undercuts = new Undercuts(topology, overhang, above);
      for (Contour.Chain chain : Contour.chains(topology, above(limit), anatomic)) {
        watch.check();
        bands(chain, undercuts);
      }
      for (Contour.Chain chain : Contour.chains(topology, above, anatomic)) {
        watch.check();
        Vec3[] points = points(chain, 0);
        boolean[] keep = new boolean[points.length];
        for (int i = 0; i < keep.length; i++) {
          keep[i] =
              free(chain.edges()[i]) && undercuts.deepest(lower(chain.edges()[i])) >= shallow();
        }
        bridge(points, keep, chain.closed());
        // Inside a band the line is one of the surface's roughness; its edges stand for it.
        for (int i = 0; i < keep.length; i++) {
          keep[i] = keep[i] && !inBand(points[i], triangle(chain, i));
        }
        int before = lines.size();
        runs(keep, chain.closed(), (from, count, whole) -> line(points, from, count, whole));
        if (lines.size() == before) {
          hidden++;
        }
      }
      return new SurveyLines(List.copyOf(lines), hidden);
    }

    private double shallow() {
      return rules.shallow().value();
    }

    private boolean[] above(double level) {
      boolean[] above = new boolean[sine.length];
      for (int v = 0; v < above.length; v++) {
        above[v] = sine[v] > level;
      }
      return above;
    }

    private Vec3[] points(Contour.Chain chain, double level) {
      Vec3[] points = new Vec3[chain.edges().length];
      for (int i = 0; i < points.length; i++) {
        int a = topology.edgeVertex(chain.edges()[i], 0);
        int b = topology.edgeVertex(chain.edges()[i], 1);
        double s = (sine[a] - level) / (sine[a] - sine[b]);
        points[i] =
            new Vec3(
                mesh.x(a) + s * (mesh.x(b) - mesh.x(a)),
                mesh.y(a) + s * (mesh.y(b) - mesh.y(a)),
                mesh.z(a) + s * (mesh.z(b) - mesh.z(a)));
      }
      return points;
    }

    private static int triangle(Contour.Chain chain, int i) {
      return chain.triangles()[Math.min(i, chain.triangles().length - 1)];
    }

    private int lower(int edge) {
      int a = topology.edgeVertex(edge, 0);
      int b = topology.edgeVertex(edge, 1);
      return sine[a] < sine[b] ? a : b;
    }

    /** Whether nothing lies above the upper end of an edge. */
    private boolean free(int edge) {
      int a = topology.edgeVertex(edge, 0);
      int b = topology.edgeVertex(edge, 1);
      return overhang.depth(sine[a] < sine[b] ? b : a) <= rules.lineTolerance().value();
    }

    /** Closes gaps that are no longer than a lead would bridge. */
    private void bridge(Vec3[] points, boolean[] keep, boolean closed) {
      int n = keep.length;
      int last = -1;
      double gap = 0;
      int steps = closed ? 2 * n : n;
      for (int j = 0; j < steps; j++) {
        int i = j % n;
        if (j > 0) {
          gap += points[i].distance(points[(j - 1) % n]);
        }
        if (keep[i]) {
          if (last >= 0 && j - last > 1 && j - last < n && gap <= rules.lineGap().value()) {
            for (int g = last + 1; g < j; g++) {
              keep[g % n] = true;
            }
          }
          last = j;
          gap = 0;
        }
      }
    }

    /** Called with each maximal run of kept points. */
    @FunctionalInterface
    private interface Run {
      void of(int from, int count, boolean whole);
    }

    private static void runs(boolean[] keep, boolean closed, Run run) {
      int n = keep.length;
      int start = 0;
      if (closed) {
        while (start < n && keep[start]) {
          start++;
        }
        if (start == n) {
          run.of(0, n, true);
          return;
        }
      }
      int from = -1;
      for (int j = 0; j <= n; j++) {
        boolean on = j < n && keep[(start + j) % n];
        if (on && from < 0) {
          from = j;
        } else if (!on && from >= 0) {
          run.of(start + from, j - from, false);
          from = -1;
        }
      }
    }

    private void line(Vec3[] points, int from, int count, boolean whole) {
      List<Vec3> run = new ArrayList<>(count);
      for (int j = 0; j < count; j++) {
        run.add(points[(from + j) % points.length]);
      }
      if (Polylines.length(run, whole) >= rules.lineLength().value()) {
        lines.add(new SurveyLine(SurveyLine.Kind.LINE, run, whole));
      }
    }

    /** Whether a point of the line lies below the upper edge of a band that stands for it. */
    private boolean inBand(Vec3 at, int triangle) {
      Foot upper = reach(at, triangle, 0, 1);
      return upper != null && banded[upper.triangle];
    }

    /** The bands below one upper edge. */
    private void bands(Contour.Chain chain, Undercuts undercuts) {
      int n = chain.edges().length;
      Vec3[] upper = points(chain, limit);
      Vec3[] lower = upper.clone();
      boolean[] keep = new boolean[n];
      for (int i = 0; i < n; i++) {
        if (!free(chain.edges()[i])) {
          continue;
        }
        Foot foot = reach(upper[i], triangle(chain, i), limit, -1);
        if (foot != null
            && axis.dot(upper[i].minus(foot.at)) > rules.bandHeight().value()
            && undercuts.deepest(foot.vertex) >= shallow()) {
          keep[i] = true;
          lower[i] = foot.at;
        }
      }
      runs(
          keep,
          chain.closed(),
          (from, count, whole) -> {
            int start = 0;
            for (int j = 1; j <= count; j++) {
              int i = (from + j) % n;
              int before = (from + j - 1) % n;
              if (j == count
                  || lower[i].distance(lower[before])
                      > upper[i].distance(upper[before]) + MOST_JUMP_MM) {
                band(
                    chain,
                    upper,
                    lower,
                    from + start,
                    j - start,
                    whole && start == 0 && j == count);
                start = j;
              }
            }
          });
    }

    private void band(
        Contour.Chain chain, Vec3[] upper, Vec3[] lower, int from, int count, boolean whole) {
      List<Vec3> top = new ArrayList<>(count);
      List<Vec3> foot = new ArrayList<>(count);
      for (int j = 0; j < count; j++) {
        top.add(upper[(from + j) % upper.length]);
        foot.add(lower[(from + j) % lower.length]);
      }
      if (Polylines.length(top, whole) >= rules.lineLength().value()) {
        lines.add(new SurveyLine(SurveyLine.Kind.BAND_UPPER, top, whole));
        lines.add(new SurveyLine(SurveyLine.Kind.BAND_LOWER, foot, whole));
        for (int j = 0; j < count; j++) {
          banded[triangle(chain, (from + j) % upper.length)] = true;
        }
      }
    }

    /** Where a walk comes to the band angle, in which triangle, and a vertex beyond it. */
    private record Foot(Vec3 at, int triangle, int vertex) {}

    /**
     * Where the walk up (sense 1) or down (−1) comes to a surface that looks up, or down, by the
     * band angle; null where the surface ends before, or turns back.
     */
    private @Nullable Foot reach(Vec3 at, int triangle, double sineThere, int sense) {
      Vec3 flat = mesh.doubleAreaNormal(triangle).across(axis);
      if (flat.length() < 1e-12) {
        return null;
      }
      Vec3 towards = axis.times(sense);
      double wanted = sense * limit;
      Vec3[] last = {at};
      double[] before = {sineThere};
      Foot[] found = new Foot[1];
      new SectionWalk(topology, at, axis.cross(flat).unit())
          .walk(
              triangle,
              towards,
              (q, a, b, s, t, length) -> {
                double value = sine[a] + s * (sine[b] - sine[a]);
                if (sense * value >= limit && sense * before[0] < limit) {
                  double share = (wanted - before[0]) / (value - before[0]);
                  found[0] =
                      new Foot(
                          last[0].plus(q.minus(last[0]).times(share)),
                          t,
                          sense * sine[a] > sense * sine[b] ? a : b);
                  return false;
                }
                // The way may begin with the edge that the point itself lies on.
                boolean on = q.minus(last[0]).dot(towards) > -1e-9;
                last[0] = q;
                before[0] = value;
                return on && length < MOST_BAND_MM;
              });
      return found[0];
    }
  }

  /** The edges of a band jump no further than this from point to point of the line [mm]. */
  private static final double MOST_JUMP_MM = 0.5;

  /** A band is not followed further than any guiding plane is high [mm]. */
  private static final double MOST_BAND_MM = 8;

  /** The connected undercuts: vertices that look down or have something above them. */
  private static final class Undercuts {
    private final int[] parent;
    private final float[] deepest;

    Undercuts(MeshTopology topology, Overhang overhang, boolean[] above) {
      int n = above.length;
      parent = new int[n];
      deepest = new float[n];
      for (int v = 0; v < n; v++) {
        parent[v] = !above[v] || overhang.depth(v) > 0 ? v : -1;
        deepest[v] = (float) overhang.depth(v);
      }
      for (int e = 0; e < topology.edgeCount(); e++) {
        int a = topology.edgeVertex(e, 0);
        int b = topology.edgeVertex(e, 1);
        if (parent[a] >= 0 && parent[b] >= 0) {
          int ra = root(a);
          int rb = root(b);
          if (ra != rb) {
            int low = Math.min(ra, rb);
            int high = Math.max(ra, rb);
            parent[high] = low;
            deepest[low] = Math.max(deepest[low], deepest[high]);
          }
        }
      }
    }

    private int root(int v) {
      int r = v;
      while (parent[r] != r) {
        parent[r] = parent[parent[r]];
        r = parent[r];
      }
      return r;
    }

    double deepest(int v) {
      return parent[v] < 0 ? 0 : deepest[root(v)];
    }
  }
}
