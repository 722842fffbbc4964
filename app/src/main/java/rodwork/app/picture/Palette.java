package rodwork.app.picture;

import java.awt.Color;

/** Paper, ink, brass: the colours of the bench. */
final class Palette {
  static final Color PAPER = new Color(0xf5f2eb);
  static final Color SHEET = new Color(0xfffdf8);
  static final Color INK = new Color(0x22303a);
  static final Color SOFT = new Color(0x6d7780);
  static final Color LINE = new Color(0xd9d2c3);
  static final Color BRASS = new Color(0x9a6a2f);

  /** The cast itself, and its plaster base, 0xRRGGBB in full light. */
  static final int CAST = 0xf7efe1;

  static final int BASE = 0xdedbd3;

  private Palette() {}

  /** A colour 0xRRGGBB in light of a given strength [0 to 1]. */
  static int shade(int rgb, double light) {
    return mix(0, rgb, light);
  }

  /** A colour between two, 0xRRGGBB; share 1 gives the second. */
  static int mix(int first, int second, double share) {
    int mixed = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      double a = (first >> shift) & 0xff;
      double b = (second >> shift) & 0xff;
      mixed |= (int) Math.round(a + (b - a) * share) << shift;
    }
    return mixed;
  }
}
