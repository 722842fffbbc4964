package rodwork.demo;

import java.util.List;
import rodwork.geometry.Vec3;

/**
 * What is known of a tooth of a demo cast by construction, in the frame of the mesh.
 *
 * @param fdi tooth number
 * @param origin the middle of the crown at the level of its facial margin [mm]
 * @param axis unit vector along the tooth to occlusal
 * @param mesial unit vector to mesial, perpendicular to the axis
 * @param facial unit vector to facial, perpendicular to both
 * @param lengthMm crown length along the axis from the facial margin to cusp tip or edge, as
 *     designed
 * @param mesiodistalMm greatest width, as designed
 * @param faciolingualMm greatest depth, as designed
 * @param margin the gingival margin, closed: the last point joins the first; within 0.1 mm of the
 *     mesh
 */
public record DemoTooth(
    int fdi,
    Vec3 origin,
    Vec3 axis,
    Vec3 mesial,
    Vec3 facial,
    double lengthMm,
    double mesiodistalMm,
    double faciolingualMm,
    List<Vec3> margin) {
  public DemoTooth {
    margin = List.copyOf(margin);
  }

  /** A point of the mesh frame in the tooth's own: to mesial, to facial, along the axis [mm]. */
  public Vec3 toTooth(Vec3 point) {
    Vec3 d = point.minus(origin);
    return new Vec3(d.dot(mesial), d.dot(facial), d.dot(axis));
  }
}
