package rodwork.anatomy;

import java.util.Random;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/** A rigid motion, or one with a reflection in it, that tests put casts through. */
record Posed(Vec3 x, Vec3 y, Vec3 z, Vec3 shift) {

  /** A turn drawn evenly over all turns, and a shift of some centimetres. */
  static Posed random(long seed) {
    Random random = new Random(seed);
    Vec3 z = direction(random);
    Vec3 x = direction(random).across(z).unit();
    return new Posed(x, z.cross(x), z, direction(random).times(50));
  }

  static Posed mirror() {
    return new Posed(Vec3.X.times(-1), Vec3.Y, Vec3.Z, Vec3.ZERO);
  }

  private static Vec3 direction(Random random) {
    return new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
  }

  Vec3 turn(Vec3 d) {
    return x.times(d.x()).plus(y.times(d.y())).plus(z.times(d.z()));
  }

  Vec3 move(Vec3 point) {
    return turn(point).plus(shift);
  }

  /** The mesh in its new pose; a reflected one has its triangles turned round as well. */
  TriangleMesh of(TriangleMesh mesh) {
    double[] xyz = new double[3 * mesh.vertexCount()];
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vec3 moved = move(mesh.vertex(v));
      xyz[3 * v] = moved.x();
      xyz[3 * v + 1] = moved.y();
      xyz[3 * v + 2] = moved.z();
    }
    int[] corners = mesh.copyOfCorners();
    if (x.cross(y).dot(z) < 0) {
      for (int t = 0; t < corners.length; t += 3) {
        int first = corners[t];
        corners[t] = corners[t + 1];
        corners[t + 1] = first;
      }
    }
    return TriangleMesh.of(xyz, corners);
  }
}
