package rodwork.geometry.solid;

/**
 * A body as a function of place: negative inside, positive outside, 0 on its surface.
 *
 * <p>Values near the surface should grow by about 1 per mm outwards; far from it only the sign
 * counts. A field must be safe to ask from several threads and give the same value for the same
 * place.
 */
@FunctionalInterface
public interface Field {
  /** The value at a point [mm]. */
  double at(double x, double y, double z);

  /**
   * A field with the same values inside the box, cheaper to ask there; the parts of a body that
   * cannot matter in the box are left out.
   */
  default Field within(Box box) {
    return this;
  }
}
