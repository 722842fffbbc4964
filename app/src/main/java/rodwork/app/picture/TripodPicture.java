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
import rodwork.geometry.Vec3;

/**
 * Tripod marks as a sheet: the cast seen along the path with the three marks and the distances
 * between them, and beside it each mark near by, with its distances from two landmarks.
 */
public final class TripodPicture {
  private static final int WIDTH = 1640;
  private static final int HEIGHT = 1120;
  private static final int HEAD = 76;
  private static final int PLAN_WIDTH = 1040;
  private static final int MARGIN = 30;
  private static final int RING = 9;

  /** A line shorter than this has no room for its figure [px]. */
  private static final double SHORT = 110;

  private static final Font FIGURE = new Font(Font.SANS_SERIF, Font.BOLD, 15);

  /** A mark is looked at from this far off the path, on the side it faces [degrees]. */
  private static final double LOOK_DEG = 30;

  /** What of the cast is seen around a mark and its landmarks at least [mm]. */
  private static final double AROUND_MM = 9;

  private TripodPicture() {}

  /**
   * One mark.
   *
   * @param point scan frame [mm]
   * @param normal of the surface there [unit vector]
   * @param bearings from landmarks; may be empty
   */
  public record Mark(Vec3 point, Vec3 normal, List<Bearing> bearings) {}

  /**
   * A distance from a landmark.
   *
   * @param from the landmark, scan frame [mm]
   * @param words what it is
   * @param mm to the mark [mm]
   */
  public record Bearing(Vec3 from, String words, double mm) {}

  /** Draws a scene's cast with three marks; its curves and depths are not drawn. */
  public static BufferedImage draw(PictureScene scene, List<Mark> marks) {
    BufferedImage sheet = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = sheet.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    pen.setColor(Palette.PAPER);
    pen.fillRect(0, 0, WIDTH, HEIGHT);
    float[] normals = CastPicture.shadingNormals(scene.mesh());
    Vec3 front = scene.front().across(scene.axis()).unit();
    Vec3 up = scene.frontUp() ? front : front.times(-1);
    int height = HEIGHT - HEAD;
    Projection plan = Projection.fit(scene.mesh(), scene.axis(), up, PLAN_WIDTH, height, MARGIN);
    Graphics2D own = view(pen, scene, normals, plan, 0, HEAD, PLAN_WIDTH, height);
    for (int i = 0; i < marks.size(); i++) {
      Vec3 from = marks.get(i).point();
      Vec3 to = marks.get((i + 1) % marks.size()).point();
      line(own, plan, from, to, mm(from.distance(to)));
    }
    for (int i = 0; i < marks.size(); i++) {
      ring(own, plan, marks.get(i).point(), Integer.toString(i + 1));
    }
    own.dispose();
    Lettering.small(pen, "along the path: the three marks are level", 24, HEAD + 22);
    int each = height / marks.size();
    for (int i = 0; i < marks.size(); i++) {
      near(pen, scene, normals, marks.get(i), i, HEAD + i * each, each);
    }
    pen.setColor(Palette.LINE);
    pen.drawLine(PLAN_WIDTH, HEAD, PLAN_WIDTH, HEIGHT);
    Lettering.head(pen, scene, WIDTH, HEAD);
    pen.dispose();
    return sheet;
  }

  private static void near(
      Graphics2D pen,
      PictureScene scene,
      float[] normals,
      Mark mark,
      int number,
      int top,
      int height) {
    Vec3 side = mark.normal().across(scene.axis());
    Vec3 aside = side.length() > 1e-6 ? side.unit() : scene.axis().anyPerpendicular();
    double lean = Math.toRadians(LOOK_DEG);
    Vec3 eye = scene.axis().times(Math.cos(lean)).plus(aside.times(Math.sin(lean))).unit();
    Vec3 middle = mark.point();
    for (Bearing bearing : mark.bearings()) {
      middle = middle.plus(bearing.from());
    }
    middle = middle.times(1.0 / (1 + mark.bearings().size()));
    double reach = AROUND_MM;
    for (Bearing bearing : mark.bearings()) {
      reach = Math.max(reach, 1.35 * bearing.from().distance(middle));
    }
    reach = Math.max(reach, 1.35 * mark.point().distance(middle));
    int width = WIDTH - PLAN_WIDTH;
    double scale = Math.min(width, height) / (2 * reach);
    Projection near = Projection.about(middle, eye, scene.axis(), scale, width, height);
    Graphics2D own = view(pen, scene, normals, near, PLAN_WIDTH, top, width, height);
    for (Bearing bearing : mark.bearings()) {
      line(own, near, bearing.from(), mark.point(), mm(bearing.mm()));
      double x = near.x(bearing.from());
      double y = near.y(bearing.from());
      own.setColor(Palette.BRASS);
      own.fill(new Ellipse2D.Double(x - 4, y - 4, 8, 8));
      // The words stand on the far side of the landmark, seen from the mark.
      double away = Math.hypot(x - near.x(mark.point()), y - near.y(mark.point()));
      double down = away > 1 ? (y - near.y(mark.point())) / away : -1;
      label(own, bearing.words(), x, y + (down > 0.2 ? 18 : -18), Palette.BRASS);
    }
    ring(own, near, mark.point(), Integer.toString(number + 1));
    own.dispose();
    pen.setColor(Palette.LINE);
    pen.drawLine(PLAN_WIDTH, top, WIDTH, top);
    String words =
        mark.bearings().isEmpty()
            ? "mark " + (number + 1) + ": no two landmarks are near enough"
            : "mark " + (number + 1);
    Lettering.small(pen, words, PLAN_WIDTH + 16, top + 22);
  }

  private static Graphics2D view(
      Graphics2D pen,
      PictureScene scene,
      float[] normals,
      Projection projection,
      int left,
      int top,
      int width,
      int height) {
    Panel panel = new Panel(projection, width, height);
    panel.draw(scene, normals, false);
    pen.drawImage(panel.image(), left, top, null);
    return (Graphics2D) pen.create(left, top, width, height);
  }

  /** A mark crossed and ringed, as the trade draws it. */
  private static void ring(Graphics2D pen, Projection view, Vec3 at, String name) {
    double x = view.x(at);
    double y = view.y(at);
    pen.setColor(Palette.INK);
    pen.setStroke(new BasicStroke(2));
    pen.draw(new Ellipse2D.Double(x - RING, y - RING, 2 * RING, 2 * RING));
    pen.draw(new Line2D.Double(x - RING, y, x + RING, y));
    pen.draw(new Line2D.Double(x, y - RING, x, y + RING));
    label(pen, name, x, y - 2.2 * RING, Palette.INK);
  }

  private static void line(Graphics2D pen, Projection view, Vec3 from, Vec3 to, String words) {
    double x = view.x(from);
    double y = view.y(from);
    double toX = view.x(to);
    double toY = view.y(to);
    pen.setColor(Palette.INK);
    pen.setStroke(
        new BasicStroke(
            1.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {6, 4}, 0));
    pen.draw(new Line2D.Double(x, y, toX, toY));
    // Beside a short line, on a long one.
    double aside = Math.hypot(toX - x, toY - y) < SHORT ? SHORT / 2 : 0;
    label(pen, words, (x + toX) / 2 + aside, (y + toY) / 2, Palette.INK);
  }

  private static void label(Graphics2D pen, String words, double x, double y, Color colour) {
    pen.setFont(FIGURE);
    int width = pen.getFontMetrics().stringWidth(words);
    int most = pen.getClipBounds().width;
    double left = Math.clamp(x - width / 2.0, 4, Math.max(4, most - width - 8.0));
    pen.setColor(Palette.SHEET);
    pen.fill(new Rectangle2D.Double(left - 3, y - 10, width + 6, 20));
    pen.setColor(colour);
    pen.drawString(words, (float) left, (float) (y + 5));
  }

  private static String mm(double mm) {
    return String.format(Locale.ROOT, "%.1f mm", mm);
  }
}
