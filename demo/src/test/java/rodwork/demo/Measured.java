package rodwork.demo;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.overhang.Overhang;
import rodwork.geometry.overhang.OverhangLimits;

/**
 * Measures a demo cast on its triangles, as a person would on the plaster; labels tell the teeth.
 */
final class Measured {
  private static final OverhangLimits LIMITS = new OverhangLimits(4, 0.5, 0.05);

  final DemoCast cast;
  final TriangleMesh mesh;
  final MeshTopology topology;

  /** Everything that casts a shadow, at the reference orientation. */
  final Overhang all;

  /** The same without the teeth. */
  final Overhang gum;

  /** The label of each vertex; of a vertex between two parts, the larger. */
  private final int[] vertexLabel;

  /** Whether all triangles at a vertex have one label. */
  private final boolean[] within;

  Measured(DemoCast cast) {
    this.cast = cast;
    mesh = cast.mesh();
    topology = MeshTopology.of(mesh);
    all = along(mesh, Vec3.Z);
    gum = along(withoutTeeth(cast), Vec3.Z);
    vertexLabel = new int[mesh.vertexCount()];
    within = new boolean[mesh.vertexCount()];
    Arrays.fill(within, true);
    Arrays.fill(vertexLabel, Integer.MIN_VALUE);
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(t, k);
        within[v] &= vertexLabel[v] == Integer.MIN_VALUE || vertexLabel[v] == cast.label(t);
        vertexLabel[v] = Math.max(vertexLabel[v], cast.label(t));
      }
    }
  }

  /** The vertices of a tooth in its own frame: to mesial, to facial, along its axis [mm]. */
  List<Vec3> points(int fdi) {
    DemoTooth tooth = cast.tooth(fdi);
    List<Vec3> points = new ArrayList<>();
    for (int v = 0; v < vertexLabel.length; v++) {
      if (vertexLabel[v] == fdi && within[v]) {
        points.add(tooth.toTooth(mesh.vertex(v)));
      }
    }
    return points;
  }

  /** Height of a tooth's occlusal surface at a place of its own frame [mm]. */
  double top(int fdi, double m, double f) {
    return points(fdi).stream()
        .filter(p -> Math.hypot(p.x() - m, p.y() - f) < 0.25)
        .mapToDouble(Vec3::z)
        .max()
        .orElseThrow();
  }

  /** Greatest height of the gum within a circle seen from above [mm]. */
  double gumTop(double x, double y, double radius) {
    double most = -1e9;
    for (int v = 0; v < vertexLabel.length; v++) {
      if (vertexLabel[v] == DemoCast.GUM && Math.hypot(mesh.x(v) - x, mesh.y(v) - y) < radius) {
        most = Math.max(most, mesh.z(v));
      }
    }
    return most;
  }

  /** The vertices where two teeth touch. */
  List<Vec3> contact(int a, int b) {
    int[] touches = new int[mesh.vertexCount()];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      int label = cast.label(t);
      for (int k = 0; k < 3; k++) {
        touches[mesh.corner(t, k)] |= label == a ? 1 : label == b ? 2 : 0;
      }
    }
    List<Vec3> points = new ArrayList<>();
    for (int v = 0; v < touches.length; v++) {
      if (touches[v] == 3) {
        points.add(mesh.vertex(v));
      }
    }
    return points;
  }

  private static Overhang along(TriangleMesh mesh, Vec3 axis) {
    MeshTopology topology = MeshTopology.of(mesh);
    return new Overhang.Caster(topology, BoundaryLoops.of(topology))
        .along(axis, LIMITS, Watch.NONE);
  }

  private static TriangleMesh withoutTeeth(DemoCast cast) {
    int[] corners = cast.mesh().copyOfCorners();
    int count = 0;
    for (int t = 0; t < cast.mesh().triangleCount(); t++) {
      if (cast.label(t) <= 0) {
        System.arraycopy(corners, 3 * t, corners, 3 * count++, 3);
      }
    }
    return TriangleMesh.of(cast.mesh().copyOfCoordinates(), Arrays.copyOf(corners, 3 * count));
  }

  /**
   * A point of a section down the side of a tooth.
   *
   * @param point where it is
   * @param label of the triangle there
   * @param fromMargin along the surface from the margin [mm], positive on the gum
   * @param depth undercut depth at the reference orientation [mm]
   */
  record Spot(Vec3 point, int label, double fromMargin, double depth) {}

  /** A section down one side of a tooth, from its highest point to 14 mm on the gum. */
  record Side(DemoTooth tooth, Vec3 out, List<Spot> spots) {
    List<Spot> onTooth() {
      return spots.stream().filter(s -> s.fromMargin <= 0).toList();
    }

    Spot margin() {
      return spots.stream().filter(s -> s.fromMargin >= 0).findFirst().orElseThrow();
    }

    /** Height of a point between margin (0) and cusp tip or edge (1) of this section. */
    double share(Spot spot) {
      double low = tooth.toTooth(margin().point).z();
      double high = tooth.toTooth(spots.getFirst().point).z();
      return (tooth.toTooth(spot.point).z() - low) / (high - low);
    }

    /** The lowest free place above the undercut; empty where the side has none of 0.05 mm. */
    Optional<Spot> surveyLine() {
      List<Spot> down = onTooth();
      @Nullable Spot last = null;
      boolean under = false;
      for (Spot s : down) {
        if (s.depth < 0.012) {
          if (!under) {
            last = s;
          }
        } else if (s.depth > 0.05) {
          under = true;
        }
      }
      return under ? Optional.ofNullable(last) : Optional.empty();
    }

    /** Deepest undercut on the tooth, at least 0.3 mm from the margin [mm]. */
    double deepest() {
      return onTooth().stream()
          .filter(s -> s.fromMargin < -0.3)
          .mapToDouble(Spot::depth)
          .max()
          .orElse(0);
    }

    /** The point a given way down the gum from the margin. */
    Spot below(double mm) {
      return spots.stream().filter(s -> s.fromMargin >= mm).findFirst().orElseThrow();
    }

    /** How far below the margin the section goes on steeply, before the vestibule turns up [mm]. */
    double reach() {
      double z = margin().point.z();
      double least = spots.stream().mapToDouble(s -> s.point.z()).min().orElse(z);
      return z - least;
    }
  }

  /**
   * The section through a tooth, at {@code m} mm to mesial of its middle, down its facial or
   * lingual side, in the plane of the upright axis.
   */
  Side down(int fdi, double m, boolean facial) {
    DemoTooth tooth = cast.tooth(fdi);
    Vec3 out = tooth.facial().across(Vec3.Z).unit().times(facial ? 1 : -1);
    return down(tooth, tooth.origin().plus(tooth.mesial().times(m)), out);
  }

  /** The section down the mesial or distal side. */
  Side downProximal(int fdi, double f, boolean mesial) {
    DemoTooth tooth = cast.tooth(fdi);
    Vec3 out = tooth.mesial().across(Vec3.Z).unit().times(mesial ? 1 : -1);
    return down(tooth, tooth.origin().plus(tooth.facial().times(f)), out);
  }

  private Side down(DemoTooth tooth, Vec3 through, Vec3 out) {
    Vec3 n = out.cross(Vec3.Z);
    double at = through.dot(n);
    // Start on the tooth's triangle that the plane cuts furthest out.
    int start = -1;
    double furthest = -1e9;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (cast.label(t) == tooth.fdi() && cuts(t, n, at)) {
        double reach = mesh.pointOn(t, 1 / 3.0, 1 / 3.0).dot(out);
        if (reach > furthest) {
          furthest = reach;
          start = t;
        }
      }
    }
    List<Vec3> points = new ArrayList<>();
    List<Integer> labels = new ArrayList<>();
    List<Vec3> up = new ArrayList<>();
    List<Integer> upLabels = new ArrayList<>();
    walk(start, n, at, true, 12, up, upLabels);
    walk(start, n, at, false, 22, points, labels);
    // From the highest point of the tooth on the way up.
    int top = 0;
    for (int i = 0; i < up.size() && upLabels.get(i) == tooth.fdi(); i++) {
      if (tooth.toTooth(up.get(i)).z() > tooth.toTooth(up.get(top)).z()) {
        top = i;
      }
    }
    List<Vec3> line = new ArrayList<>(up.subList(0, top + 1));
    List<Integer> lineLabels = new ArrayList<>(upLabels.subList(0, top + 1));
    Collections.reverse(line);
    Collections.reverse(lineLabels);
    line.addAll(points);
    lineLabels.addAll(labels);
    int margin = 0;
    while (margin < line.size() && lineLabels.get(margin) == tooth.fdi()) {
      margin++;
    }
    double[] along = new double[line.size()];
    for (int i = 1; i < along.length; i++) {
      along[i] = along[i - 1] + line.get(i).distance(line.get(i - 1));
    }
    double zero = along[Math.min(margin, along.length - 1)];
    List<Spot> spots = new ArrayList<>();
    for (int i = 0; i < along.length && along[i] - zero < 14; i++) {
      Vec3 p = line.get(i);
      spots.add(new Spot(p, lineLabels.get(i), along[i] - zero, all.depthAt(p)));
    }
    return new Side(tooth, out, spots);
  }

  private boolean cuts(int t, Vec3 n, double at) {
    double a = mesh.vertex(mesh.corner(t, 0)).dot(n) - at;
    double b = mesh.vertex(mesh.corner(t, 1)).dot(n) - at;
    double c = mesh.vertex(mesh.corner(t, 2)).dot(n) - at;
    return !(a < 0 == b < 0 && b < 0 == c < 0);
  }

  /** Walks from triangle to triangle in the plane, up or down at first, for some length. */
  private void walk(
      int start,
      Vec3 n,
      double at,
      boolean up,
      double length,
      List<Vec3> points,
      List<Integer> labels) {
    int t = start;
    int from = -1;
    double walked = 0;
    @Nullable Vec3 last = null;
    while (t >= 0 && walked < length) {
      int best = -1;
      Vec3 bestPoint = Vec3.ZERO;
      for (int k = 0; k < 3; k++) {
        int edge = topology.triangleEdge(t, k);
        Vec3 a = mesh.vertex(topology.edgeVertex(edge, 0));
        Vec3 b = mesh.vertex(topology.edgeVertex(edge, 1));
        double da = a.dot(n) - at;
        double db = b.dot(n) - at;
        if (edge == from || da < 0 == db < 0) {
          continue;
        }
        Vec3 p = a.plus(b.minus(a).times(da / (da - db)));
        if (best < 0 || (up ? p.z() > bestPoint.z() : p.z() < bestPoint.z())) {
          best = k;
          bestPoint = p;
        }
      }
      if (best < 0) {
        return;
      }
      points.add(bestPoint);
      labels.add(cast.label(t));
      walked += last == null ? 0 : bestPoint.distance(last);
      last = bestPoint;
      from = topology.triangleEdge(t, best);
      t = topology.neighbour(t, best);
    }
  }

  /** Least and greatest place of a tooth's triangles along a direction [mm]. */
  double[] extent(int fdi, Vec3 direction) {
    double low = 1e9;
    double high = -1e9;
    for (int v = 0; v < vertexLabel.length; v++) {
      if (vertexLabel[v] == fdi) {
        double d = mesh.vertex(v).dot(direction);
        low = Math.min(low, d);
        high = Math.max(high, d);
      }
    }
    return new double[] {low, high};
  }

  /** The middle of a crown: the mean of its vertices. */
  Vec3 middle(int fdi) {
    Vec3 sum = Vec3.ZERO;
    int count = 0;
    for (int v = 0; v < vertexLabel.length; v++) {
      if (vertexLabel[v] == fdi) {
        sum = sum.plus(mesh.vertex(v));
        count++;
      }
    }
    return sum.times(1.0 / count);
  }

  /** Crown length: from the margin at the middle of the facial side to the highest point [mm]. */
  double crownLength(int fdi) {
    DemoTooth tooth = cast.tooth(fdi);
    Vec3 margin = down(fdi, 0, true).margin().point;
    return extent(fdi, tooth.axis())[1] - margin.dot(tooth.axis());
  }

  /**
   * Tops of a tooth along its axis, each with how far one must go down from it to reach a higher
   * one [mm]; the highest first, with 99 mm.
   */
  List<double[]> tops(int fdi) {
    Vec3 axis = cast.tooth(fdi).axis();
    List<Integer> order = new ArrayList<>();
    for (int v = 0; v < vertexLabel.length; v++) {
      if (vertexLabel[v] == fdi && within[v]) {
        order.add(v);
      }
    }
    double[] height = new double[vertexLabel.length];
    order.forEach(v -> height[v] = mesh.vertex(v).dot(axis));
    order.sort(Comparator.comparingDouble(v -> -height[v]));
    int[][] neighbours = neighbours(fdi);
    int[] root = new int[vertexLabel.length];
    Arrays.fill(root, -1);
    List<double[]> tops = new ArrayList<>();
    for (int v : order) {
      root[v] = v;
      for (int other : neighbours[v]) {
        if (root[other] < 0) {
          continue;
        }
        int a = find(root, v);
        int b = find(root, other);
        if (a != b) {
          int lower = height[a] < height[b] ? a : b;
          if (lower != v) {
            tops.add(new double[] {lower, height[lower] - height[v]});
          }
          root[lower] = lower == a ? b : a;
        }
      }
    }
    tops.add(new double[] {order.getFirst(), 99});
    tops.sort(Comparator.comparingDouble(t -> -t[1]));
    return tops;
  }

  private int[][] neighbours(int fdi) {
    int[][] lists = new int[vertexLabel.length][0];
    for (int e = 0; e < topology.edgeCount(); e++) {
      int a = topology.edgeVertex(e, 0);
      int b = topology.edgeVertex(e, 1);
      if (vertexLabel[a] == fdi && vertexLabel[b] == fdi && within[a] && within[b]) {
        lists[a] = Arrays.copyOf(lists[a], lists[a].length + 1);
        lists[a][lists[a].length - 1] = b;
        lists[b] = Arrays.copyOf(lists[b], lists[b].length + 1);
        lists[b][lists[b].length - 1] = a;
      }
    }
    return lists;
  }

  private static int find(int[] root, int v) {
    int r = v;
    while (root[r] != r) {
      r = root[r];
    }
    return r;
  }
}
