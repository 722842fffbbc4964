package rodwork.anatomy;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The arch frame that the labels of an arch tell: up, the normal of the least-squares plane through
 * the highest points of all labelled teeth, each tooth counting once; front, across the mean
 * direction between the teeth of a pair (11 and 21, 12 and 22, ...), towards the incisors.
 *
 * @param residualMm how far the highest tooth point lies from the plane, largest [mm]
 */
record TrueFrame(Vec3 up, Vec3 front, Vec3 middle, double residualMm) {

  static TrueFrame of(SharedArch arch) {
    TriangleMesh mesh = arch.mesh();
    Map<Integer, TreeSet<Integer>> teeth = new TreeMap<>();
    Vec3 up = Vec3.ZERO;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      up = up.plus(mesh.doubleAreaNormal(t));
      if (arch.labels()[t] > 0) {
        for (int k = 0; k < 3; k++) {
          teeth.computeIfAbsent(arch.labels()[t], n -> new TreeSet<>()).add(mesh.corner(t, k));
        }
      }
    }
    up = up.unit();
    Vec3 middle = Vec3.ZERO;
    double residual = 0;
    for (int round = 0; round < 30; round++) {
      List<Vec3> tops = new ArrayList<>();
      for (TreeSet<Integer> tooth : teeth.values()) {
        tops.add(top(mesh, tooth, up));
      }
      middle = mean(tops);
      Vec3 u = up.anyPerpendicular();
      Vec3 v = up.cross(u);
      NormalEquations equations = new NormalEquations(2);
      for (Vec3 top : tops) {
        Vec3 d = top.minus(middle);
        equations.add(new double[] {d.dot(u), d.dot(v)}, d.dot(up), 1);
      }
      double[] plane = equations.solve();
      up = up.minus(u.times(plane[0])).minus(v.times(plane[1])).unit();
      residual = 0;
      for (Vec3 top : tops) {
        residual = Math.max(residual, Math.abs(top.minus(middle).dot(up)));
      }
    }
    Map<Integer, Vec3> centres = new TreeMap<>();
    teeth.forEach(
        (n, vertices) -> centres.put(n, mean(vertices.stream().map(mesh::vertex).toList())));
    Vec3 toLeft = Vec3.ZERO;
    Vec3 front = Vec3.ZERO;
    int incisors = 0;
    for (Map.Entry<Integer, Vec3> e : centres.entrySet()) {
      int quadrant = e.getKey() / 10;
      int place = e.getKey() % 10;
      int other = (quadrant == 1 ? 20 : quadrant == 4 ? 30 : 0) + place;
      if (centres.containsKey(other)) {
        toLeft = toLeft.plus(centres.get(other).minus(e.getValue()).unit());
      }
      if (place <= 2) {
        front = front.plus(e.getValue().minus(middle));
        incisors++;
      }
    }
    if (incisors == 0) {
      throw new IllegalArgumentException("no incisors in " + arch.name());
    }
    Vec3 across = toLeft.across(up).unit();
    Vec3 forward = across.cross(up);
    return new TrueFrame(
        up, forward.dot(front) > 0 ? forward : forward.times(-1), middle, residual);
  }

  private static Vec3 top(TriangleMesh mesh, TreeSet<Integer> tooth, Vec3 up) {
    return mean(
        tooth.stream()
            .map(mesh::vertex)
            .sorted(Comparator.comparingDouble(x -> -x.dot(up)))
            .limit(Math.max(1, tooth.size() / 50))
            .toList());
  }

  private static Vec3 mean(List<Vec3> points) {
    Vec3 sum = Vec3.ZERO;
    for (Vec3 point : points) {
      sum = sum.plus(point);
    }
    return sum.times(1.0 / points.size());
  }
}
