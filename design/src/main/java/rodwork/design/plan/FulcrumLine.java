package rodwork.design.plan;

import rodwork.anatomy.chart.ToothNumber;
import rodwork.geometry.Vec3;

/**
 * The axis about which a base can turn, through two rests (studylib 12822793; cram.com).
 *
 * @param right tooth of the rest towards the patient's right
 * @param left tooth of the other rest
 * @param from the rest on the right, scan frame [mm]
 * @param to the rest on the left
 * @param up occlusal direction: distances are seen along it
 */
public record FulcrumLine(ToothNumber right, ToothNumber left, Vec3 from, Vec3 to, Vec3 up) {
  /**
   * Distance of a point from the line, seen from above [mm].
   *
   * @return with a sign: points on opposite sides have opposite signs
   */
  public double offsetMm(Vec3 point) {
    Vec3 along = to.minus(from).across(up);
    double length = along.length();
    return length > 0 ? up.cross(along).dot(point.minus(from)) / length : 0;
  }
}
