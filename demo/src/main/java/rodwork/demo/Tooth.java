package rodwork.demo;

import rodwork.geometry.Vec3;
import rodwork.geometry.solid.Box;

/**
 * A crown in its place.
 *
 * @param fdi tooth number
 * @param crown its form
 * @param origin the middle of the crown at the level of its facial margin [mm]
 * @param mesial unit vector to mesial
 * @param facial unit vector to facial
 * @param axis unit vector along the tooth to occlusal
 * @param s place along the arch [mm]
 */
record Tooth(int fdi, Crown crown, Vec3 origin, Vec3 mesial, Vec3 facial, Vec3 axis, double s) {
  /** The point of the tooth's own frame in the frame of the cast. */
  Vec3 point(double m, double f, double z) {
    return origin.plus(mesial.times(m)).plus(facial.times(f)).plus(axis.times(z));
  }

  /** Negative inside the crown and its root; about the distance near the surface [mm]. */
  double at(double x, double y, double z) {
    double dx = x - origin.x();
    double dy = y - origin.y();
    double dz = z - origin.z();
    return crown.at(
        mesial.x() * dx + mesial.y() * dy + mesial.z() * dz,
        facial.x() * dx + facial.y() * dy + facial.z() * dz,
        axis.x() * dx + axis.y() * dy + axis.z() * dz);
  }

  /** A box that holds crown and root with {@code margin} to spare [mm]. */
  Box box(double margin) {
    CrownSize size = crown.size;
    double half = Math.max(size.md(), size.bl()) / 2 + 0.6;
    Vec3 low = new Vec3(1e9, 1e9, 1e9);
    Vec3 high = low.times(-1);
    for (int i = 0; i < 8; i++) {
      Vec3 p =
          point(
              (i & 1) == 0 ? -half : half,
              (i & 2) == 0 ? -half : half,
              (i & 4) == 0 ? -Crown.ROOT_MM : size.length() + 0.5);
      low = new Vec3(Math.min(low.x(), p.x()), Math.min(low.y(), p.y()), Math.min(low.z(), p.z()));
      high =
          new Vec3(Math.max(high.x(), p.x()), Math.max(high.y(), p.y()), Math.max(high.z(), p.z()));
    }
    Vec3 spare = new Vec3(margin, margin, margin);
    return new Box(low.minus(spare), high.plus(spare));
  }
}
