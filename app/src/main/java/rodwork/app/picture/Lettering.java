package rodwork.app.picture;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;

/** The words of the sheet: what it shows above, how to read it below. */
final class Lettering {
  private static final Font TITLE = new Font(Font.SANS_SERIF, Font.BOLD, 19);
  private static final Font TEXT = new Font(Font.SANS_SERIF, Font.PLAIN, 15);
  private static final int EDGE = 24;
  private static final int SWATCH_WIDTH = 34;
  private static final int SWATCH_HEIGHT = 15;

  private Lettering() {}

  static void head(Graphics2D pen, PictureScene scene, int width, int height) {
    pen.setColor(Palette.SHEET);
    pen.fillRect(0, 0, width, height);
    pen.setColor(Palette.LINE);
    pen.drawLine(0, height, width, height);
    pen.setColor(Palette.INK);
    pen.setFont(TITLE);
    pen.drawString(scene.title(), EDGE, 32);
    pen.setFont(TEXT);
    pen.setColor(Palette.SOFT);
    pen.drawString(String.join("   ·   ", scene.notes()), EDGE, 58);
  }

  static void small(Graphics2D pen, String words, int x, int y) {
    pen.setFont(TEXT);
    pen.setColor(Palette.SOFT);
    pen.drawString(words, x, y);
  }

  /**
   * The legend and the scale bar of the plan.
   *
   * @param pxPerMm scale of the plan
   */
  static void foot(Graphics2D pen, double pxPerMm, int width, int height, int foot) {
    pen.setColor(Palette.SHEET);
    pen.fillRect(0, height - foot, width, foot);
    pen.setColor(Palette.LINE);
    pen.drawLine(0, height - foot, width, height - foot);
    int base = height - foot / 2 + 6;
    int x = EDGE;
    x = word(pen, "undercut, mm", x, base) + 6;
    for (Band band : Band.values()) {
      if (band != Band.NONE) {
        x = swatch(pen, band, x, base);
        x = word(pen, band.label(), x, base);
      }
    }
    x = line(pen, 2.2f, false, x, base);
    x = word(pen, "survey line", x, base);
    x = line(pen, 1.1f, true, x, base);
    x = word(pen, "gauge mark", x, base);
    pen.setColor(Palette.INK);
    pen.setStroke(new BasicStroke(1.4f));
    int bar = (int) Math.round(10 * pxPerMm);
    pen.drawLine(x, base - 5, x + bar, base - 5);
    pen.drawLine(x, base - 10, x, base);
    pen.drawLine(x + bar, base - 10, x + bar, base);
    word(pen, "10 mm in the plan", x + bar + 8, base);
  }

  private static int word(Graphics2D pen, String words, int x, int y) {
    pen.setFont(TEXT);
    pen.setColor(Palette.INK);
    pen.drawString(words, x, y);
    return x + pen.getFontMetrics().stringWidth(words) + 22;
  }

  private static int swatch(Graphics2D pen, Band band, int x, int y) {
    int top = y - SWATCH_HEIGHT + 2;
    for (int dx = 0; dx < SWATCH_WIDTH; dx++) {
      for (int dy = 0; dy < SWATCH_HEIGHT; dy++) {
        pen.setColor(new java.awt.Color(band.colourAt(x + dx, top + dy)));
        pen.fillRect(x + dx, top + dy, 1, 1);
      }
    }
    return x + SWATCH_WIDTH + 8;
  }

  private static int line(Graphics2D pen, float thickness, boolean mark, int x, int y) {
    pen.setColor(mark ? Palette.BRASS : Palette.INK);
    pen.setStroke(new BasicStroke(thickness));
    pen.drawLine(x, y - 5, x + SWATCH_WIDTH, y - 5);
    return x + SWATCH_WIDTH + 8;
  }
}
