package rodwork.anatomy.tooth;

import rodwork.geometry.Vec3;

/**
 * The directions of one tooth, unit vectors in the scan frame, perpendicular to each other.
 *
 * @param origin the middle of the crown at the level of its facial margin [mm]
 * @param mesial to the midline along the arch
 * @param facial to lip or cheek
 * @param axis along the tooth to occlusal
 */
public record ToothAxes(Vec3 origin, Vec3 mesial, Vec3 facial, Vec3 axis) {
  public ToothAxes {
    if (Math.abs(mesial.dot(axis)) > 1e-6
        || Math.abs(facial.dot(axis)) > 1e-6
        || Math.abs(mesial.dot(facial)) > 1e-6) {
      throw new IllegalArgumentException("the axes of a tooth are perpendicular to each other");
    }
  }

  /** A point in the tooth's own frame: to mesial, to facial, along the axis [mm]. */
  public Vec3 toTooth(Vec3 point) {
    Vec3 d = point.minus(origin);
    return new Vec3(d.dot(mesial), d.dot(facial), d.dot(axis));
  }

  /** A point of the tooth's own frame in the scan frame. */
  public Vec3 toScan(Vec3 point) {
    return origin
        .plus(mesial.times(point.x()))
        .plus(facial.times(point.y()))
        .plus(axis.times(point.z()));
  }

  /** The way out of the tooth through a surface [unit vector]. */
  public Vec3 outOf(Surface surface) {
    return switch (surface) {
      case FACIAL -> facial;
      case LINGUAL -> facial.times(-1);
      case MESIAL -> mesial;
      case DISTAL -> mesial.times(-1);
      case OCCLUSAL -> axis;
    };
  }

  ToothAxes at(Vec3 other) {
    return new ToothAxes(other, mesial, facial, axis);
  }
}
