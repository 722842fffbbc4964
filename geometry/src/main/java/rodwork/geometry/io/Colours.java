package rodwork.geometry.io;

/** Packs colours as {@code 0xAARRGGBB}. */
final class Colours {
  static final int WHITE = 0xFFFFFFFF;

  private Colours() {}

  /** Packs channels of 0 to 1; what lies outside is moved to the nearer end, NaN to 0. */
  static int ofShares(double red, double green, double blue, double alpha) {
    return of255(255 * red, 255 * green, 255 * blue, 255 * alpha);
  }

  /** Packs channels of 0 to 255; what lies outside is moved to the nearer end, NaN to 0. */
  static int of255(double red, double green, double blue, double alpha) {
    return channel(alpha) << 24 | channel(red) << 16 | channel(green) << 8 | channel(blue);
  }

  private static int channel(double value) {
    return (int) Math.max(0, Math.min(255, Math.round(value)));
  }
}
