package rodwork.anatomy;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The first guesses of the occlusal direction, from what the anatomic surface shows as a whole.
 *
 * <p>The area-weighted normals of an open shell sum up to the vector area of its rim, whatever the
 * crowns look like; that of an arch points to the occlusal side, on real arches within 25°. The
 * floor of a plaster base is trimmed about parallel to the occlusal plane. The rim lies low: with
 * normals that point inwards it tells up from down.
 */
final class UpSearch {
  /** A surface whose normals sum up to less than this share of its area shows no side. */
  private static final double LEAST_SHARE = 0.1;

  /** The rim must lie at least this far below the middle of the surface to tell up from down. */
  private static final double RIM_DROP_MM = 1.0;

  final @Nullable Vec3 normalSum;
  final @Nullable Vec3 awayFromFloor;

  private UpSearch(@Nullable Vec3 normalSum, @Nullable Vec3 awayFromFloor) {
    this.normalSum = normalSum;
    this.awayFromFloor = awayFromFloor;
  }

  static UpSearch of(MeshTopology topology, AnatomicSurface surface) {
    TriangleMesh mesh = topology.mesh();
    double x = 0;
    double y = 0;
    double z = 0;
    double area = 0;
    Vec3 moment = Vec3.ZERO;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (!surface.isBase(t)) {
        Vec3 twice = mesh.doubleAreaNormal(t);
        double a = twice.length() / 2;
        x += twice.x() / 2;
        y += twice.y() / 2;
        z += twice.z() / 2;
        area += a;
        moment = moment.plus(mesh.pointOn(t, 1.0 / 3, 1.0 / 3).times(a));
      }
    }
    Vec3 floor = floor(surface);
    Vec3 sum = new Vec3(x, y, z);
    if (!(sum.length() > LEAST_SHARE * area)) {
      return new UpSearch(null, floor);
    }
    Vec3 up = sum.unit();
    if (floor != null) {
      return new UpSearch(up.dot(floor) < 0 ? up.times(-1) : up, floor);
    }
    double drop = moment.times(1 / area).minus(rimMiddle(topology)).dot(up);
    return new UpSearch(drop < -RIM_DROP_MM ? up.times(-1) : up, null);
  }

  private static @Nullable Vec3 floor(AnatomicSurface surface) {
    return surface.planes().isEmpty() ? null : surface.planes().getFirst().outward().times(-1);
  }

  /** The middle of the open edges, weighted by length. */
  private static Vec3 rimMiddle(MeshTopology topology) {
    TriangleMesh mesh = topology.mesh();
    Vec3 sum = Vec3.ZERO;
    double length = 0;
    for (int e = 0; e < topology.edgeCount(); e++) {
      if (topology.isBoundary(e)) {
        Vec3 a = mesh.vertex(topology.edgeVertex(e, 0));
        Vec3 b = mesh.vertex(topology.edgeVertex(e, 1));
        double l = a.distance(b);
        sum = sum.plus(a.plus(b).times(l / 2));
        length += l;
      }
    }
    return length > 0 ? sum.times(1 / length) : Vec3.ZERO;
  }

  /** The directions to start from: what was seen, and 15° to each side of it. */
  List<Vec3> starts(PointCloud cloud) {
    List<Vec3> starts = new ArrayList<>();
    for (Vec3 seen : new Vec3[] {normalSum, awayFromFloor}) {
      if (seen == null) {
        continue;
      }
      Vec3 u = longest(cloud, seen);
      Vec3 v = seen.cross(u);
      starts.add(seen);
      for (Vec3 side : List.of(u, v, u.times(-1), v.times(-1))) {
        starts.add(seen.plus(side.times(Math.tan(Math.toRadians(15)))).unit());
      }
    }
    return starts;
  }

  /** The direction across an axis in which a cloud spreads most: it turns with the cloud. */
  static Vec3 longest(PointCloud cloud, Vec3 axis) {
    Vec3 u = axis.anyPerpendicular();
    Vec3 v = axis.cross(u);
    Vec3 mean = cloud.mean();
    double uu = 0;
    double uv = 0;
    double vv = 0;
    for (int i = 0; i < cloud.size(); i++) {
      double a = cloud.along(i, u) - mean.dot(u);
      double b = cloud.along(i, v) - mean.dot(v);
      uu += a * a;
      uv += a * b;
      vv += b * b;
    }
    double angle = Math.atan2(2 * uv, uu - vv) / 2;
    return u.times(Math.cos(angle)).plus(v.times(Math.sin(angle)));
  }
}
