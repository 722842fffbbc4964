package rodwork.app.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.List;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Draws the sheet: the plan, seen along the withdrawal axis, and beside it four views from the
 * sides, all at the same tilt.
 */
public final class CastPicture {
  private static final int WIDTH = 1640;
  private static final int HEIGHT = 1120;
  private static final int HEAD = 76;
  private static final int FOOT = 64;
  private static final int PLAN_WIDTH = 1040;
  private static final int MARGIN = 26;

  /** How far the side views look down on the cast [degrees above the horizontal]. */
  private static final double LOOK_DOWN_DEG = 24;

  /** Curves lie on the surface: this much nearer still counts as the same place [mm]. */
  private static final double SLACK_MM = 0.25;

  private CastPicture() {}

  /** Draws a scene. */
  public static BufferedImage draw(PictureScene scene) {
    BufferedImage sheet = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = sheet.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    pen.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    pen.setColor(Palette.PAPER);
    pen.fillRect(0, 0, WIDTH, HEIGHT);

    float[] normals = shadingNormals(scene.mesh());
    int planHeight = HEIGHT - HEAD - FOOT;
    Vec3 front = scene.front().across(scene.axis()).unit();
    Vec3 up = scene.frontUp() ? front : front.times(-1);
    Projection plan =
        Projection.fit(scene.mesh(), scene.axis(), up, PLAN_WIDTH, planHeight, MARGIN);
    view(pen, scene, normals, plan, 0, HEAD, PLAN_WIDTH, planHeight, true);
    Lettering.small(
        pen, "along the path; undercut shows through what lies above it", 24, HEAD + 22);

    int sideHeight = planHeight / 4;
    List<View> views = sideViews(scene, front);
    for (int i = 0; i < views.size(); i++) {
      int top = HEAD + i * sideHeight;
      Projection side =
          Projection.fit(
              scene.mesh(),
              views.get(i).toViewer(),
              scene.axis(),
              WIDTH - PLAN_WIDTH,
              sideHeight,
              MARGIN / 2);
      view(pen, scene, normals, side, PLAN_WIDTH, top, WIDTH - PLAN_WIDTH, sideHeight, false);
      Lettering.small(pen, views.get(i).name(), PLAN_WIDTH + 16, top + 22);
    }
    pen.setColor(Palette.LINE);
    pen.drawLine(PLAN_WIDTH, HEAD, PLAN_WIDTH, HEIGHT - FOOT);
    Lettering.head(pen, scene, WIDTH, HEAD);
    Lettering.foot(pen, plan.pxPerMm(), WIDTH, HEIGHT, FOOT);
    pen.dispose();
    return sheet;
  }

  private record View(String name, Vec3 toViewer) {}

  private static List<View> sideViews(PictureScene scene, Vec3 front) {
    Vec3 up = scene.frontUp() ? front : front.times(-1);
    Vec3 viewersLeft = scene.axis().cross(up);
    boolean known = scene.sidesKnown();
    return List.of(
            new View(known ? "from the patient's right" : "from the left of the plan", viewersLeft),
            new View("from the front", front),
            new View(
                known ? "from the patient's left" : "from the right of the plan",
                viewersLeft.times(-1)),
            new View("from behind", front.times(-1)))
        .stream()
        .map(view -> new View(view.name(), raised(view.toViewer(), scene.axis())))
        .toList();
  }

  private static Vec3 raised(Vec3 level, Vec3 axis) {
    double angle = Math.toRadians(LOOK_DOWN_DEG);
    return level.times(Math.cos(angle)).plus(axis.times(Math.sin(angle))).unit();
  }

  private static void view(
      Graphics2D pen,
      PictureScene scene,
      float[] normals,
      Projection projection,
      int left,
      int top,
      int width,
      int height,
      boolean through) {
    Panel panel = new Panel(projection, width, height);
    panel.draw(scene, normals, through);
    pen.drawImage(panel.image(), left, top, null);
    Graphics2D own = (Graphics2D) pen.create(left, top, width, height);
    for (PictureCurve curve : scene.curves()) {
      boolean mark = curve.kind() == PictureCurve.Kind.GAUGE_MARK;
      own.setColor(mark ? Palette.BRASS : Palette.INK);
      float thickness = mark ? 1.1f : curve.kind() == PictureCurve.Kind.BAND_EDGE ? 1.2f : 2.2f;
      own.setStroke(
          new BasicStroke(
              through ? thickness : 0.8f * thickness,
              BasicStroke.CAP_ROUND,
              BasicStroke.JOIN_ROUND));
      own.draw(seen(curve, panel, through));
    }
    own.dispose();
  }

  /** The part of a curve that is to be drawn: all of it in the plan, else what is not hidden. */
  private static Path2D seen(PictureCurve curve, Panel panel, boolean through) {
    Path2D path = new Path2D.Double();
    boolean down = false;
    for (Vec3 p : curve.points()) {
      if (!through && panel.hides(p, SLACK_MM)) {
        down = false;
        continue;
      }
      double x = panel.projection().x(p);
      double y = panel.projection().y(p);
      if (down) {
        path.lineTo(x, y);
      } else {
        path.moveTo(x, y);
      }
      down = true;
    }
    return path;
  }

  /** Vertex normals for the light alone, stride 3; each triangle counts by its area. */
  static float[] shadingNormals(TriangleMesh mesh) {
    float[] normals = new float[3 * mesh.vertexCount()];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 n = mesh.doubleAreaNormal(t);
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(t, k);
        normals[3 * v] += (float) n.x();
        normals[3 * v + 1] += (float) n.y();
        normals[3 * v + 2] += (float) n.z();
      }
    }
    for (int i = 0; i < normals.length; i += 3) {
      double length = Math.hypot(Math.hypot(normals[i], normals[i + 1]), normals[i + 2]);
      double scale = length > 0 ? 1 / length : 0;
      normals[i] *= (float) scale;
      normals[i + 1] *= (float) scale;
      normals[i + 2] *= (float) scale;
    }
    return normals;
  }
}
