package rodwork.anatomy;

import java.util.ArrayList;
import java.util.List;
import rodwork.anatomy.ArchTops.Top;
import rodwork.geometry.Vec3;

/**
 * The plane that rests on the cusp tips and edges of an arch.
 *
 * <p>Fitted by least squares over the {@linkplain ArchTops tops} with Tukey's biweight, whose scale
 * shrinks from one round to the next while the tops are sought anew along the plane's own normal:
 * it starts as a plane through everything high and ends as one through what lies in one plane;
 * ridges, palate and a tooth out of line lose their say. (Beaton and Tukey, Technometrics 16, 1974,
 * for the weights.)
 *
 * @param point a point on the plane, amid the tops [mm]
 * @param up unit normal to the occlusal side
 * @param tops the points it rests on
 * @param weights what each of them counts [0 to 1]
 * @param rmsMm how far they lie from it, weighted root mean square [mm]
 */
record OcclusalPlane(Vec3 point, Vec3 up, List<Top> tops, List<Double> weights, double rmsMm) {
  /** The scale of the weights, round by round [mm]: tops farther off than it count nothing. */
  private static final double[] SCALES_MM = {8, 6, 5, 4, 3.5, 3, 3, 3};

  private static final int REWEIGHTINGS = 12;

  OcclusalPlane {
    tops = List.copyOf(tops);
    weights = List.copyOf(weights);
  }

  double height(Vec3 x) {
    return x.minus(point).dot(up);
  }

  /** Sum of the weights: about the number of cusps and edges that the plane rests on. */
  double support() {
    return weights.stream().mapToDouble(Double::doubleValue).sum();
  }

  /** The plane near a first guess of its normal; where there are too few tops its support is 0. */
  static OcclusalPlane near(PointCloud cloud, Vec3 firstUp) {
    Vec3 up = firstUp;
    Vec3 point = null;
    OcclusalPlane plane = none(Vec3.ZERO, firstUp);
    for (double scale : SCALES_MM) {
      List<Top> tops = ArchTops.of(cloud, up);
      plane = fit(tops, up, point == null ? quantilePoint(tops, up) : point, scale);
      if (plane.support() < 3) {
        return none(plane.point, up);
      }
      up = plane.up;
      point = plane.point;
    }
    return plane;
  }

  /** The plane with a given normal. */
  static OcclusalPlane across(PointCloud cloud, Vec3 up) {
    List<Top> tops = ArchTops.of(cloud, up);
    Vec3 point = quantilePoint(tops, up);
    OcclusalPlane plane = none(point, up);
    for (double scale : SCALES_MM) {
      List<Double> weights = new ArrayList<>();
      double sum = 0;
      double moment = 0;
      Vec3 middle = Vec3.ZERO;
      double squares = 0;
      for (Top top : tops) {
        double h = top.point().minus(point).dot(up);
        double w = top.sharpness() * tukey(h / scale);
        weights.add(w);
        sum += w;
        moment += w * h;
        squares += w * h * h;
        middle = middle.plus(top.point().times(w));
      }
      if (sum > 0) {
        double shift = moment / sum;
        middle = middle.times(1 / sum);
        point = middle.plus(up.times(point.plus(up.times(shift)).minus(middle).dot(up)));
      }
      plane = new OcclusalPlane(point, up, tops, weights, Math.sqrt(squares / Math.max(sum, 1e-9)));
    }
    return plane;
  }

  private static OcclusalPlane none(Vec3 point, Vec3 up) {
    return new OcclusalPlane(point, up, List.of(), List.of(), 0);
  }

  /** A point at the height that seven in ten of the tops keep below. */
  private static Vec3 quantilePoint(List<Top> tops, Vec3 up) {
    double[] heights = tops.stream().mapToDouble(t -> t.point().dot(up)).sorted().toArray();
    return heights.length == 0 ? Vec3.ZERO : up.times(heights[(int) (0.7 * (heights.length - 1))]);
  }

  static double tukey(double x) {
    double s = 1 - x * x;
    return s <= 0 ? 0 : s * s;
  }

  /** Least squares over given tops, starting from a plane, with weights of one scale. */
  static OcclusalPlane fit(List<Top> tops, Vec3 firstUp, Vec3 firstPoint, double scale) {
    Vec3 up = firstUp;
    Vec3 point = firstPoint;
    List<Double> weights = List.of();
    double squares = 0;
    double sum = 0;
    double[] row = {0, 0, 1};
    for (int round = 0; round < REWEIGHTINGS; round++) {
      Vec3 u = up.anyPerpendicular();
      Vec3 v = up.cross(u);
      NormalEquations equations = new NormalEquations(3);
      weights = new ArrayList<>(tops.size());
      squares = 0;
      sum = 0;
      double sumU = 0;
      double sumV = 0;
      for (Top top : tops) {
        Vec3 d = top.point().minus(point);
        double h = d.dot(up);
        double w = top.sharpness() * tukey(h / scale);
        weights.add(w);
        sum += w;
        squares += w * h * h;
        row[0] = d.dot(u);
        row[1] = d.dot(v);
        sumU += w * row[0];
        sumV += w * row[1];
        equations.add(row, h, w);
      }
      double[] plane = equations.solve();
      if (plane.length == 0) {
        return none(point, firstUp);
      }
      double du = sumU / sum;
      double dv = sumV / sum;
      Vec3 middle = point.plus(u.times(du)).plus(v.times(dv));
      point = middle.plus(up.times(plane[0] * du + plane[1] * dv + plane[2]));
      up = up.minus(u.times(plane[0])).minus(v.times(plane[1])).unit();
    }
    return new OcclusalPlane(point, up, tops, weights, Math.sqrt(squares / Math.max(sum, 1e-9)));
  }
}
