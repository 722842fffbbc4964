package rodwork.geometry.mesh;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntConsumer;
import rodwork.geometry.Vec3;

/**
 * The curve in which a plane cuts a mesh, joined into polylines.
 *
 * <p>A vertex in the plane counts as above it, so that every triangle is cut in one segment or not
 * at all, and lines neither break nor branch at such vertices; a face that lies in the plane counts
 * as above it too, and shows by its border where the surface goes on below. A line of a watertight
 * mesh is closed; at a boundary it ends. At an edge with more than two triangles lines are joined
 * in pairs.
 *
 * <p>A line begins along plane normal × surface normal: seen against the plane's normal it goes
 * counter-clockwise round a body that faces outward.
 */
public final class Section {
  private Section() {}

  /** Cuts a mesh by looking at every triangle; for one cut of a mesh that has no tree. */
  public static List<SectionLine> of(MeshTopology topology, Plane plane) {
    Cut cut = new Cut(topology, plane);
    for (int t = 0; t < topology.mesh().triangleCount(); t++) {
      cut.accept(t);
    }
    return cut.lines();
  }

  /**
   * Cuts a mesh with the help of its tree.
   *
   * @throws IllegalArgumentException if the two are not of the same mesh
   */
  public static List<SectionLine> of(MeshTopology topology, TriangleTree tree, Plane plane) {
    if (!topology.mesh().equals(tree.mesh())) {
      throw new IllegalArgumentException("the tree is that of another mesh");
    }
    Cut cut = new Cut(topology, plane);
    tree.nearPlane(plane, 0, cut);
    return cut.lines();
  }

  /** One cut while it is made. */
  private static final class Cut implements IntConsumer {
    private final MeshTopology topology;
    private final TriangleMesh mesh;
    private final Plane plane;
    private int[] triangles = new int[64];
    private int count;

    Cut(MeshTopology topology, Plane plane) {
      this.topology = topology;
      this.mesh = topology.mesh();
      this.plane = plane;
    }

    @Override
    public void accept(int t) {
      boolean a = above(mesh.corner(t, 0));
      boolean b = above(mesh.corner(t, 1));
      boolean c = above(mesh.corner(t, 2));
      if ((a == b && b == c) || topology.triangleEdge(t, 0) < 0) {
        return;
      }
      if (count == triangles.length) {
        triangles = Arrays.copyOf(triangles, 2 * count);
      }
      triangles[count++] = t;
    }

    private double distance(int v) {
      Vec3 n = plane.normal();
      return n.x() * mesh.x(v) + n.y() * mesh.y(v) + n.z() * mesh.z(v) - plane.offset();
    }

    private boolean above(int v) {
      return distance(v) >= 0;
    }

    List<SectionLine> lines() {
      Arrays.sort(triangles, 0, count); // the same lines whatever the tree's order
      Map<Integer, Deque<Integer>> atEdge = new HashMap<>();
      for (int i = 0; i < count; i++) {
        int t = triangles[i];
        atEdge.computeIfAbsent(edge(t, true), e -> new ArrayDeque<>(2)).add(t);
        atEdge.computeIfAbsent(edge(t, false), e -> new ArrayDeque<>(2)).add(t);
      }
      Set<Integer> left = new HashSet<>();
      for (int i = 0; i < count; i++) {
        left.add(triangles[i]);
      }
      List<SectionLine> lines = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        if (left.contains(triangles[i])) {
          SectionLine line = line(triangles[i], left, atEdge);
          if (line.segmentCount() > 0) { // a vertex that just reaches the plane makes none
            lines.add(line);
          }
        }
      }
      return lines;
    }

    /** The cut edge of a triangle that runs down through the plane along its winding, or up. */
    private int edge(int t, boolean down) {
      for (int k = 0; k < 3; k++) {
        boolean from = above(mesh.corner(t, k));
        boolean to = above(mesh.corner(t, k == 2 ? 0 : k + 1));
        if (from == down && to != down) {
          return topology.triangleEdge(t, k);
        }
      }
      throw new AssertionError("triangle " + t + " does not meet the plane");
    }

    private int other(int t, int edge) {
      int down = edge(t, true);
      return down == edge ? edge(t, false) : down;
    }

    private SectionLine line(int seed, Set<Integer> left, Map<Integer, Deque<Integer>> atEdge) {
      Deque<Integer> segments = new ArrayDeque<>();
      Deque<Integer> edges = new ArrayDeque<>();
      left.remove(seed);
      segments.add(seed);
      // Counter-clockwise round an upright body: in through the edge that runs down.
      edges.add(edge(seed, true));
      edges.add(edge(seed, false));
      boolean closed = false;
      for (int next = take(edges.getLast(), left, atEdge);
          next >= 0;
          next = take(edges.getLast(), left, atEdge)) {
        segments.addLast(next);
        edges.addLast(other(next, edges.getLast()));
        if (edges.getLast().equals(edges.getFirst())) {
          break;
        }
      }
      if (edges.getLast().equals(edges.getFirst()) && segments.size() > 1) {
        closed = true;
      } else {
        for (int next = take(edges.getFirst(), left, atEdge);
            next >= 0;
            next = take(edges.getFirst(), left, atEdge)) {
          segments.addFirst(next);
          edges.addFirst(other(next, edges.getFirst()));
        }
      }
      return polyline(segments, edges, closed);
    }

    /** A triangle at an edge that is in no line yet; −1 where there is none. */
    private static int take(int edge, Set<Integer> left, Map<Integer, Deque<Integer>> atEdge) {
      Deque<Integer> candidates = atEdge.getOrDefault(edge, new ArrayDeque<>());
      while (!candidates.isEmpty()) {
        int t = candidates.removeFirst();
        if (left.remove(t)) {
          return t;
        }
      }
      return -1;
    }

    /** Points where the edges meet the plane; those in one place are one. */
    private SectionLine polyline(Deque<Integer> segments, Deque<Integer> edges, boolean closed) {
      double[] xyz = new double[3 * edges.size()];
      int[] on = new int[segments.size()];
      int points = 0;
      int kept = 0;
      var segment = segments.iterator();
      int last = -1;
      for (int edge : edges) {
        Vec3 p = crossing(edge);
        boolean same =
            points > 0
                && p.x() == xyz[3 * points - 3]
                && p.y() == xyz[3 * points - 2]
                && p.z() == xyz[3 * points - 1];
        if (!same) {
          if (points > 0) {
            on[kept++] = last;
          }
          xyz[3 * points] = p.x();
          xyz[3 * points + 1] = p.y();
          xyz[3 * points + 2] = p.z();
          points++;
        }
        last = segment.hasNext() ? segment.next() : -1;
      }
      if (closed && points > 1) {
        points--; // the last edge is the first one again
      }
      return new SectionLine(
          Arrays.copyOf(xyz, 3 * points),
          Arrays.copyOf(on, closed ? Math.min(kept, points) : kept),
          closed);
    }

    private Vec3 crossing(int edge) {
      int a = topology.edgeVertex(edge, 0);
      int b = topology.edgeVertex(edge, 1);
      double da = distance(a);
      double db = distance(b);
      double s = da / (da - db);
      return s == 0 ? mesh.vertex(a) : s == 1 ? mesh.vertex(b) : between(a, b, s);
    }

    private Vec3 between(int a, int b, double s) {
      return mesh.vertex(a).times(1 - s).plus(mesh.vertex(b).times(s));
    }
  }
}
