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

    private final boolean[] above;
    private final List<SurveyLine> lines = new ArrayList<>();
    private int hidden;

    Tracer(MeshTopology topology, VertexNormals normals, Overhang overhang, SurveyRules rules) {
      this.topology = topology;
      this.mesh = topology.mesh();
      this.overhang = overhang;
      this.rules = rules;
      this.axis = overhang.axis();
      int n = mesh.vertexCount();
      this.sine = new double[n];
      this.above = new boolean[n];
      for (int v = 0; v < n; v++) {
        sine[v] = normals.x(v) * axis.x() + normals.y(v) * axis.y() + normals.z(v) * axis.z();
        above[v] = sine[v] > 0;
      }
    }

    SurveyLines run(IntPredicate anatomic, Watch watch) {
      Undercuts undercuts = new Undercuts(topology, overhang, above);
      for (Contour.Chain chain : Contour.chains(topology, above, anatomic)) {
        watch.check();
        follow(chain, undercuts);
      }
      return new SurveyLines(List.copyOf(lines), hidden);
    }

    /** Cuts a chain into the runs that are kept. */
    private void follow(Contour.Chain chain, Undercuts undercuts) {
      int n = chain.edges().length;
      Vec3[] points = new Vec3[n];
      boolean[] keep = new boolean[n];
      boolean any = false;
      for (int i = 0; i < n; i++) {
        points[i] = point(chain.edges()[i]);
        keep[i] = kept(chain.edges()[i], undercuts);
        any |= keep[i];
      }
      if (!any) {
        hidden++;
        return;
      }
      bridge(points, keep, chain.closed());
      int start = 0;
      if (chain.closed()) {
        while (start < n && keep[start]) {
          start++;
        }
        if (start == n) {
          emit(chain, points, 0, n, true);
          return;
        }
      }
      int from = -1;
      for (int j = 0; j <= n; j++) {
        boolean on = j < n && keep[(start + j) % n];
        if (on && from < 0) {
          from = j;
        } else if (!on && from >= 0) {
          emit(chain, points, start + from, j - from, false);
          from = -1;
        }
      }
    }

    private boolean kept(int edge, Undercuts undercuts) {
      int a = topology.edgeVertex(edge, 0);
      int b = topology.edgeVertex(edge, 1);
      int up = above[a] ? a : b;
      int down = above[a] ? b : a;
      return overhang.depth(up) <= rules.lineTolerance().value()
          && undercuts.deepest(down) >= rules.shallow().value();
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

    private void emit(Contour.Chain chain, Vec3[] points, int from, int count, boolean closed) {
      int n = points.length;
      List<Vec3> run = new ArrayList<>(count);
      for (int j = 0; j < count; j++) {
        run.add(points[(from + j) % n]);
      }
      if (Polylines.length(run, closed) < rules.lineLength().value()) {
        hidden++;
        return;
      }
      Band[] bands = new Band[count];
      for (int j = 0; j < count; j++) {
        int i = (from + j) % n;
        int triangle =
            i < chain.triangles().length ? chain.triangles()[i] : chain.triangles()[i - 1];
        bands[j] = band(run.get(j), triangle);
      }
      smooth(bands);
      int start = 0;
      for (int j = 1; j <= count; j++) {
        if (j == count || !bands[j].continues(bands[j - 1])) {
          piece(run, bands, start, j, closed && start == 0 && j == count);
          start = j;
        }
      }
    }

    private void piece(List<Vec3> run, Band[] bands, int from, int to, boolean closed) {
      if (bands[from].wide) {
        List<Vec3> upper = new ArrayList<>();
        List<Vec3> lower = new ArrayList<>();
        for (int k = from; k < to; k++) {
          upper.add(bands[k].upper);
          lower.add(bands[k].lower);
        }
        if (upper.size() > 1) {
          lines.add(new SurveyLine(SurveyLine.Kind.BAND_UPPER, upper, closed));
          lines.add(new SurveyLine(SurveyLine.Kind.BAND_LOWER, lower, closed));
        }
      } else {
        // A line runs on to the first point of the band that follows, so that they meet.
        List<Vec3> points = run.subList(from, Math.min(run.size(), to + 1));
        if (points.size() > 1) {
          lines.add(new SurveyLine(SurveyLine.Kind.LINE, points, closed));
        }
      }
    }

    /** A stretch of band shorter than the shortest line shown is a line with a rough edge. */
    private void smooth(Band[] bands) {
      int start = 0;
      double length = 0;
      for (int j = 1; j <= bands.length; j++) {
        if (j < bands.length && bands[j].continues(bands[j - 1])) {
          length += bands[j].at.distance(bands[j - 1].at);
          continue;
        }
        if (bands[start].wide && length < rules.lineLength().value()) {
          for (int k = start; k < j; k++) {
            bands[k] = bands[k].asLine();
          }
        }
        start = j;
        length = 0;
      }
    }

    /** How far the surface stays within the band angle above and below a point of the line. */
    private record Band(Vec3 at, Vec3 upper, Vec3 lower, boolean wide) {
      /** Whether a band or line goes on from a neighbour without a jump of its edges. */
      boolean continues(Band before) {
        if (wide != before.wide) {
          return false;
        }
        double step = at.distance(before.at) + MOST_JUMP_MM;
        return !wide
            || (upper.distance(before.upper) <= step && lower.distance(before.lower) <= step);
      }

      Band asLine() {
        return new Band(at, upper, lower, false);
      }
    }

    private Band band(Vec3 at, int triangle) {
      double limit = Math.sin(Math.toRadians(rules.bandAngle().value()));
      Vec3 n = mesh.doubleAreaNormal(triangle);
      Vec3 flat = n.across(axis);
      if (flat.length() < 1e-12) {
        return new Band(at, at, at, false);
      }
      Vec3 plane = axis.cross(flat).unit();
      SectionWalk walk = new SectionWalk(topology, at, plane);
      Vec3 upper = reach(walk, triangle, at, axis, limit);
      Vec3 lower = reach(walk, triangle, at, axis.times(-1), -limit);
      if (upper == null || lower == null) {
        return new Band(at, at, at, false);
      }
      double height = axis.dot(upper.minus(lower));
      return new Band(at, upper, lower, height > rules.bandHeight().value());
    }

    /**
     * Where the walk in a direction comes to a surface that looks up by a sine; null where the
     * surface ends before, or turns back up the height it came down.
     */
    private @Nullable Vec3 reach(
        SectionWalk walk, int triangle, Vec3 at, Vec3 towards, double limit) {
      Vec3[] found = {at};
      double[] before = {0};
      boolean[] there = {false};
      walk.walk(
          triangle,
          towards,
          (q, a, b, s, t, length) -> {
            double value = sine[a] + s * (sine[b] - sine[a]);
            if (limit > 0 ? value >= limit : value <= limit) {
              double share = (limit - before[0]) / (value - before[0]);
              found[0] = found[0].plus(q.minus(found[0]).times(share));
              there[0] = true;
              return false;
            }
            boolean on = q.minus(found[0]).dot(towards) > 0;
            found[0] = q;
            before[0] = value;
            return on && length < MOST_BAND_MM;
          });
      return there[0] ? found[0] : null;
    }

    private Vec3 point(int edge) {
      int a = topology.edgeVertex(edge, 0);
      int b = topology.edgeVertex(edge, 1);
      double s = sine[a] / (sine[a] - sine[b]);
      return new Vec3(
          mesh.x(a) + s * (mesh.x(b) - mesh.x(a)),
          mesh.y(a) + s * (mesh.y(b) - mesh.y(a)),
          mesh.z(a) + s * (mesh.z(b) - mesh.z(a)));
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
