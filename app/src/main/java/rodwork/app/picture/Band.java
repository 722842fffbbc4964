package rodwork.app.picture;

/**
 * The bands in which undercut is shown; they change at the gauge sizes. Hatching is a second cue
 * beside the colour, for those who tell colours badly and for paper copies.
 */
enum Band {
  NONE(0, "", 0, 0),
  SLIGHT(0.05, "0.05–0.25", 0xefd9a0, 0),
  FIRST(0.25, "0.25–0.50", 0xcf8f52, 1),
  SECOND(0.50, "0.50–0.75", 0x8a4a66, -1),
  DEEP(0.75, "0.75 and more", 0x33224a, 0);

  private static final int HATCH_PERIOD_PX = 6;
  private static final int HATCH_PX = 1;
  private static final double HATCH_DARKENING = 0.72;

  private final double fromMm;
  private final String label;
  private final int colour;
  private final int slant;

  Band(double fromMm, String label, int colour, int slant) {
    this.fromMm = fromMm;
    this.label = label;
    this.colour = colour;
    this.slant = slant;
  }

  /** The band of an undercut depth [mm]. */
  static Band of(double depthMm) {
    if (depthMm >= SECOND.fromMm) {
      return depthMm >= DEEP.fromMm ? DEEP : SECOND;
    }
    if (depthMm >= SLIGHT.fromMm) {
      return depthMm >= FIRST.fromMm ? FIRST : SLIGHT;
    }
    return NONE;
  }

  /** The band's limits as the legend says them [mm]. */
  String label() {
    return label;
  }

  /**
   * The colour at a place of the picture, 0xRRGGBB, darker where a hatch line runs.
   *
   * @param x to the right [px]
   * @param y down [px]
   */
  int colourAt(double x, double y) {
    boolean line =
        slant != 0 && Math.floorMod((int) Math.floor(x + slant * y), HATCH_PERIOD_PX) < HATCH_PX;
    return line ? Palette.shade(colour, HATCH_DARKENING) : colour;
  }
}
