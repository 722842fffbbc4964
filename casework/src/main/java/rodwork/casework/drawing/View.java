package rodwork.casework.drawing;

import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Vec3;

/**
 * One way of looking at a cast: an orthographic projection, to scale.
 *
 * @param right direction that runs to the right on paper, unit vector
 * @param up direction that runs up on paper, unit vector
 */
record View(Vec3 right, Vec3 up) {

  /**
   * From above. The patient's right is on the viewer's left in both jaws; the upper front is up and
   * the lower front down: turned, never mirrored.
   */
  static View occlusal(ArchFrame frame) {
    return frame.jaw() == Jaw.LOWER
        ? new View(frame.x().times(-1), frame.y().times(-1))
        : new View(frame.x(), frame.y());
  }

  /**
   * From one side, teeth standing as in the mouth: the lower crowns point up, the upper ones down.
   *
   * @param towards horizontal direction in which the eye looks
   */
  static View side(ArchFrame frame, Vec3 towards) {
    Vec3 up = frame.jaw() == Jaw.LOWER ? frame.z() : frame.z().times(-1);
    return new View(towards.cross(up).unit(), up);
  }

  /** From the right and upwards [mm]. */
  double[] at(Vec3 point) {
    return new double[] {point.dot(right), point.dot(up)};
  }

  /** Towards the eye. */
  Vec3 eye() {
    return right.cross(up);
  }
}
