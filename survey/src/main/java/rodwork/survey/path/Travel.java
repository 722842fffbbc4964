package rodwork.survey.path;

import rodwork.survey.Tilt;

/**
 * What a denture does on its way out along one path.
 *
 * @param alongMm way along the path until the last contact (a guiding plane's lower edge passing
 *     its ridge, or a terminal passing the height of contour) is free [mm]
 * @param forwardMm how far it moves to the front meanwhile, against the occlusal normal [mm];
 *     negative: backward
 * @param rightMm how far it moves to the patient's right [mm]; negative: to the left
 * @param roomMm how far it rises above the occlusal plane [mm]: room that the open mouth must have
 *     beyond the height of the denture itself
 */
public record Travel(double alongMm, double forwardMm, double rightMm, double roomMm) {

  static Travel of(Tilt tilt, double alongMm) {
    // The axis in the arch frame, right being the patient's right in both jaws: the front goes down
    // under an anterior tilt, so the way out leads backward.
    double x = -Math.tan(Math.toRadians(tilt.rightDeg()));
    double y = -Math.tan(Math.toRadians(tilt.anteriorDeg()));
    double length = Math.sqrt(1 + x * x + y * y);
    return new Travel(alongMm, alongMm * y / length, alongMm * x / length, alongMm / length);
  }

  /** The sideways shift [mm]. */
  public double shiftMm() {
    return Math.hypot(forwardMm, rightMm);
  }
}
