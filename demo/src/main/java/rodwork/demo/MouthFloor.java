package rodwork.demo;

import rodwork.geometry.solid.Blend;

/**
 * The floor of the mouth: deepest in the sulcus along the ridge, raised under the tongue, with the
 * fold of the frenum in front.
 *
 * @param sulcusZ height of the sulcus [mm]
 * @param rise of the middle over the sulcus [mm]
 * @param halfWidth from the midline to the sulcus at the back [mm]
 * @param backY where the floor ends [mm]
 * @param frontY where the sulcus lies in front [mm]
 */
record MouthFloor(double sulcusZ, double rise, double halfWidth, double backY, double frontY)
    implements InnerSurface {

  @Override
  public double height(double x, double y) {
    double u = x / halfWidth;
    double v = Math.max(0, y - backY) / (frontY - backY);
    double q = Math.clamp(1 - u * u - v * v, 0.0, 1.0);
    double z = sulcusZ + rise * q * q * (3 - 2 * q);
    // Two folds from the frenum backwards, over the ducts under the tongue.
    double spread = 1.8 + 0.22 * (frontY - y);
    double d = (Math.abs(x) - spread) / 1.6;
    z += 1.1 * Math.exp(-d * d) * Math.min(1, 3 * q) * Blend.step(-28, -4, y - frontY);
    double front = (frontY - y) / 3.2;
    double fold = x / 1.0;
    z += 3.2 * Math.exp(-fold * fold) * Math.exp(-front * front);
    return z;
  }
}
