package rodwork.app.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Locale;

/**
 * The tilt map as a sheet, like a spirit level: every tilt tried as a square, the darker the
 * better; rings at 5° of total tilt; the reference orientation, the best tilt and the choices
 * marked.
 *
 * <p>The dot moves towards the side of the cast that goes down; the patient's right lies on the
 * viewer's left, the front up for an upper cast and down for a lower one.
 */
public final class TiltMapPicture {
  private static final int SIZE = 900;
  private static final int EDGE = 90;
  private static final int FOOT = 60;
  private static final int LIGHTEST = 0xfffdf8;
  private static final int DARKEST = 0x6b4a1f;
  private static final Font TITLE = new Font(Font.SANS_SERIF, Font.BOLD, 19);
  private static final Font TEXT = new Font(Font.SANS_SERIF, Font.PLAIN, 15);

  /**
   * One tilt.
   *
   * @param anteriorDeg positive: the front goes down [degrees]
   * @param rightDeg positive: the patient's right goes down [degrees]
   * @param value what it is shaded by
   */
  public record Spot(double anteriorDeg, double rightDeg, double value) {}

  /**
   * A tilt that is marked.
   *
   * @param name a word or number beside it
   * @param main drawn stronger
   */
  public record Mark(double anteriorDeg, double rightDeg, String name, boolean main) {}

  private final boolean frontUp;
  private final double coneDeg;
  private final Graphics2D pen;

  private TiltMapPicture(boolean frontUp, double coneDeg, Graphics2D pen) {
    this.frontUp = frontUp;
    this.coneDeg = coneDeg;
    this.pen = pen;
  }

  /** Draws a map. */
  public static BufferedImage draw(
      String title,
      boolean frontUp,
      double coneDeg,
      double stepDeg,
      List<Spot> spots,
      List<Mark> marks) {
    BufferedImage image = new BufferedImage(SIZE, SIZE + FOOT, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = image.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.setColor(Palette.PAPER);
    pen.fillRect(0, 0, SIZE, SIZE + FOOT);
    TiltMapPicture map = new TiltMapPicture(frontUp, coneDeg, pen);
    map.spots(spots, stepDeg);
    map.rings();
    map.words(title);
    marks.forEach(map::mark);
    pen.dispose();
    return image;
  }

  private double scale() {
    return (SIZE / 2.0 - EDGE) / coneDeg;
  }

  private double x(double rightDeg) {
    return SIZE / 2.0 - rightDeg * scale();
  }

  private double y(double anteriorDeg) {
    return SIZE / 2.0 + (frontUp ? -1 : 1) * anteriorDeg * scale();
  }

  private void spots(List<Spot> spots, double stepDeg) {
    double least = spots.stream().mapToDouble(Spot::value).min().orElse(0);
    double most = spots.stream().mapToDouble(Spot::value).max().orElse(1);
    double side = stepDeg * scale() + 0.8;
    for (Spot spot : spots) {
      double share = most > least ? (spot.value() - least) / (most - least) : 0;
      pen.setColor(new Color(Palette.mix(LIGHTEST, DARKEST, share * share)));
      pen.fill(
          new Rectangle2D.Double(
              x(spot.rightDeg()) - side / 2, y(spot.anteriorDeg()) - side / 2, side, side));
    }
  }

  private void rings() {
    pen.setStroke(new BasicStroke(1));
    pen.setFont(TEXT);
    for (double ring = 5; ring <= coneDeg + 1e-9; ring += 5) {
      double r = ring * scale();
      pen.setColor(Palette.SOFT);
      pen.draw(new Ellipse2D.Double(SIZE / 2.0 - r, SIZE / 2.0 - r, 2 * r, 2 * r));
      pen.drawString(
          String.format(Locale.ROOT, "%.0f°", ring),
          (float) (SIZE / 2.0 + r * 0.72),
          (float) (SIZE / 2.0 + r * 0.72));
    }
    double r = coneDeg * scale();
    pen.draw(new Line2D.Double(SIZE / 2.0 - r, SIZE / 2.0, SIZE / 2.0 + r, SIZE / 2.0));
    pen.draw(new Line2D.Double(SIZE / 2.0, SIZE / 2.0 - r, SIZE / 2.0, SIZE / 2.0 + r));
  }

  private void words(String title) {
    pen.setColor(Palette.INK);
    pen.setFont(TITLE);
    pen.drawString(title, 24, 34);
    pen.setFont(TEXT);
    pen.setColor(Palette.SOFT);
    centred(frontUp ? "front down" : "back down", 60);
    centred(frontUp ? "back down" : "front down", SIZE - 46);
    pen.drawString("right", 24, SIZE / 2 - 4);
    pen.drawString("down", 24, SIZE / 2 + 16);
    pen.drawString("left", SIZE - 62, SIZE / 2 - 4);
    pen.drawString("down", SIZE - 62, SIZE / 2 + 16);
    pen.drawString(
        "Darker: better. Right and left are the patient's.  An aid: the prescriber examines the"
            + " patient, decides and signs.",
        24,
        SIZE + FOOT / 2);
  }

  private void centred(String words, int y) {
    pen.drawString(words, (SIZE - pen.getFontMetrics().stringWidth(words)) / 2, y);
  }

  private void mark(Mark mark) {
    double x = x(mark.rightDeg());
    double y = y(mark.anteriorDeg());
    double r = mark.main() ? 8 : 5;
    pen.setColor(Palette.SHEET);
    pen.fill(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r));
    pen.setColor(Palette.INK);
    pen.setStroke(new BasicStroke(mark.main() ? 2.4f : 1.4f));
    pen.draw(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r));
    pen.setFont(TEXT);
    int width = pen.getFontMetrics().stringWidth(mark.name());
    pen.setColor(Palette.SHEET);
    pen.fill(new Rectangle2D.Double(x + r + 2, y - 15, width + 4, 18));
    pen.setColor(Palette.INK);
    pen.drawString(mark.name(), (float) (x + r + 4), (float) (y - 1));
  }
}
