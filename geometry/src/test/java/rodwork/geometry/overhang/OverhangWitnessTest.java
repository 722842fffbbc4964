package rodwork.geometry.overhang;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.operation.overlayng.UnaryUnionNG;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.Reshape;

/**
 * Undercut depth against an independent witness: JTS unites the parts of all triangles above a
 * level, and measures the distance to the edge of that union.
 */
class OverhangWitnessTest {
  private static final long SEED = 20261;
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private static final double SLIT_MM = 1e-4;

  /** JTS rounds to a grid of 1e-6 mm. */
  private static final PrecisionModel GRID = new PrecisionModel(1e6);

  /** A rough body of bumps, closed, about 2,000 triangles. */
  static TriangleMesh lump(long seed, double edge) {
    Random random = new Random(seed);
    double[] phase = random.doubles(12, 0, 6).toArray();
    return Reshape.each(
        Bodies.sphere(5, edge),
        p -> {
          double bump = 0;
          for (int k = 0; k < 6; k++) {
            bump +=
                0.22
                    * Math.sin((1 + k * 0.4) * p.x() + phase[k])
                    * Math.sin((1.5 + k * 0.3) * p.y() + phase[k + 6])
                    * Math.cos((1.2 + k * 0.2) * p.z() + phase[k]);
          }
          return p.times(1 + bump * 0.6);
        });
  }

  private static double witness(TriangleMesh mesh, Overhang overhang, Vec3 x) {
    Vec3 p = overhang.axis();
    Vec3 e1 = p.anyPerpendicular();
    Vec3 e2 = p.cross(e1);
    double level = x.dot(p);
    List<Geometry> parts = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      List<Coordinate> ring = new ArrayList<>();
      for (int k = 0; k < 3; k++) {
        Vec3 a = mesh.vertex(mesh.corner(t, k));
        Vec3 b = mesh.vertex(mesh.corner(t, (k + 1) % 3));
        double ha = a.dot(p) - level;
        double hb = b.dot(p) - level;
        if (ha > 1e-9) {
          ring.add(new Coordinate(a.dot(e1), a.dot(e2)));
        }
        if (ha > 1e-9 != hb > 1e-9) {
          // From the higher end, so that both triangles of an edge cut it at the same place.
          Vec3 c =
              ha > hb
                  ? a.plus(b.minus(a).times(ha / (ha - hb)))
                  : b.plus(a.minus(b).times(hb / (hb - ha)));
          ring.add(new Coordinate(c.dot(e1), c.dot(e2)));
        }
      }
      if (ring.size() >= 3) {
        ring.add(ring.getFirst());
        Geometry polygon = FACTORY.createPolygon(ring.toArray(new Coordinate[0]));
        if (polygon.getArea() > 1e-14) {
          parts.add(polygon);
        }
      }
    }
    Point at = FACTORY.createPoint(new Coordinate(x.dot(e1), x.dot(e2)));
    // Rounding to the grid leaves slits between neighbours; a rim of 0.1 µm shuts
    // them, far below what is asserted.
    Geometry shadow = UnaryUnionNG.union(FACTORY.buildGeometry(parts), GRID).buffer(SLIT_MM);
    return shadow.contains(at) ? shadow.getBoundary().distance(at) : 0;
  }

  private static void agrees(TriangleMesh mesh, Vec3 axis, Random random, int wanted) {
    Overhang overhang = Overhangs.of(mesh, axis);
    int deep = 0;
    for (int tries = 0; deep < wanted && tries < 4000; tries++) {
      int t = random.nextInt(mesh.triangleCount());
      double s = random.nextDouble();
      double r = random.nextDouble() * (1 - s);
      Vec3 x = mesh.pointOn(t, s, r);
      double depth = overhang.depthAt(x);
      if (depth == 0 && random.nextInt(20) > 0) {
        continue;
      }
      double truth = witness(mesh, overhang, x);
      assertThat(depth)
          .as("seed %d, triangle %d, point %s, axis %s", SEED, t, x, axis)
          .isCloseTo(Math.min(4, truth), within(0.005));
      if (depth > 0.05) {
        deep++;
      }
    }
    assertThat(deep).as("points with an undercut").isEqualTo(wanted);
  }

  @Test
  void closedLump() {
    Random random = new Random(SEED);
    TriangleMesh mesh = lump(SEED, 0.8);
    agrees(mesh, Vec3.Z, random, 12);
    agrees(mesh, new Vec3(0.5, -0.2, 0.7), random, 12);
  }

  @Test
  void openShell() {
    Random random = new Random(SEED + 1);
    TriangleMesh mesh = Reshape.above(lump(SEED + 1, 0.8), -2.5);
    agrees(mesh, new Vec3(0.1, 0.3, 1), random, 20);
  }

  @Test
  void shellSeenFromWithin() {
    Random random = new Random(SEED + 2);
    TriangleMesh mesh = Reshape.above(lump(SEED + 2, 0.8), -1);
    agrees(mesh, new Vec3(0.2, 0.1, -1), random, 20);
  }

  @Test
  void twoBodiesThatPassThroughEachOther() {
    Random random = new Random(SEED + 3);
    TriangleMesh mesh =
        Bodies.join(lump(SEED + 3, 0.9), Bodies.moved(lump(SEED + 4, 0.9), new Vec3(6, 1, -1)));
    agrees(mesh, new Vec3(0.1, -0.1, 1), random, 20);
  }
}
