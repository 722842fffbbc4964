package rodwork.app.picture;

import java.awt.image.BufferedImage;
import java.util.Arrays;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * One view of the cast: a depth buffer finds the nearest surface in each of {@value #FINE} ×
 * {@value #FINE} samples a pixel. Mutable while it is drawn.
 */
final class Panel {
  /** Samples a pixel along each side. */
  static final int FINE = 3;

  /** How much of what lies above a hidden undercut stays to be seen. */
  private static final double SEEN_THROUGH = 0.18;

  private static final double AMBIENT = 0.55;

  private final Projection projection;
  private final int width;
  private final int height;
  private final int fineWidth;
  private final float[] nearest;
  private final int[] colour;

  /** What stands at one corner of the triangle being drawn. */
  private static final class Corner {
    double x;
    double y;
    double z;
    double depth;
    double light;
  }

  private final Corner[] corners = {new Corner(), new Corner(), new Corner()};

  Panel(Projection projection, int width, int height) {
    this.projection = projection;
    this.width = width;
    this.height = height;
    this.fineWidth = width * FINE;
    this.nearest = new float[fineWidth * height * FINE];
    this.colour = new int[nearest.length];
  }

  /**
   * Draws the surface with its undercut bands.
   *
   * @param through whether undercut shows through what lies nearer to the viewer
   */
  void draw(PictureScene scene, float[] normals, boolean through) {
    Arrays.fill(nearest, Float.NEGATIVE_INFINITY);
    pass(scene, normals, false, !through);
    if (through) {
      float[] surface = nearest.clone();
      Arrays.fill(nearest, Float.NEGATIVE_INFINITY);
      pass(scene, normals, true, true);
      System.arraycopy(surface, 0, nearest, 0, surface.length);
    }
  }

  private void pass(PictureScene scene, float[] normals, boolean undercutOnly, boolean bands) {
    TriangleMesh mesh = scene.mesh();
    // The light comes over the viewer's left shoulder.
    Vec3 lamp =
        projection
            .toViewer()
            .plus(projection.up().times(0.5))
            .minus(projection.right().times(0.5))
            .unit();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      boolean base = scene.base().test(t);
      if (undercutOnly && base) {
        continue;
      }
      boolean any = false;
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(t, k);
        Vec3 p = mesh.vertex(v);
        Corner c = corners[k];
        c.x = FINE * projection.x(p) - 0.5;
        c.y = FINE * projection.y(p) - 0.5;
        c.z = projection.z(p);
        c.depth = base ? 0 : scene.depthMm().applyAsDouble(v);
        // Surfaces are two-sided: what is seen from behind is lit all the same.
        double facing =
            Math.abs(
                normals[3 * v] * lamp.x()
                    + normals[3 * v + 1] * lamp.y()
                    + normals[3 * v + 2] * lamp.z());
        c.light = AMBIENT + (1 - AMBIENT) * facing;
        any |= Band.of(c.depth) != Band.NONE;
      }
      if (any || !undercutOnly) {
        fill(base ? Palette.BASE : Palette.CAST, undercutOnly, bands);
      }
    }
  }

  private void fill(int plain, boolean undercutOnly, boolean bands) {
    Corner a = corners[0];
    Corner b = corners[1];
    Corner c = corners[2];
    double area = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    if (area == 0) {
      return;
    }
    int fromX = Math.max(0, (int) Math.ceil(Math.min(a.x, Math.min(b.x, c.x))));
    int toX = Math.min(fineWidth - 1, (int) Math.floor(Math.max(a.x, Math.max(b.x, c.x))));
    int fromY = Math.max(0, (int) Math.ceil(Math.min(a.y, Math.min(b.y, c.y))));
    int toY = Math.min(height * FINE - 1, (int) Math.floor(Math.max(a.y, Math.max(b.y, c.y))));
    for (int y = fromY; y <= toY; y++) {
      for (int x = fromX; x <= toX; x++) {
        double wa = ((b.x - x) * (c.y - y) - (b.y - y) * (c.x - x)) / area;
        double wb = ((c.x - x) * (a.y - y) - (c.y - y) * (a.x - x)) / area;
        double wc = 1 - wa - wb;
        int at = y * fineWidth + x;
        float z = (float) (wa * a.z + wb * b.z + wc * c.z);
        if (wa < 0 || wb < 0 || wc < 0 || z <= nearest[at]) {
          continue;
        }
        Band band = bands ? Band.of(wa * a.depth + wb * b.depth + wc * c.depth) : Band.NONE;
        if (undercutOnly && band == Band.NONE) {
          continue;
        }
        nearest[at] = z;
        double light = wa * a.light + wb * b.light + wc * c.light;
        int rgb = band == Band.NONE ? plain : band.colourAt((double) x / FINE, (double) y / FINE);
        int lit = Palette.shade(rgb, Math.min(1, light));
        colour[at] = 0xff000000 | (undercutOnly ? Palette.mix(lit, colour[at], SEEN_THROUGH) : lit);
      }
    }
  }

  /**
   * Whether a point of the surface is hidden behind a nearer one.
   *
   * @param slackMm how much nearer still counts as the same surface [mm]
   */
  boolean hides(Vec3 p, double slackMm) {
    int x = (int) (FINE * projection.x(p));
    int y = (int) (FINE * projection.y(p));
    if (x < 0 || y < 0 || x >= fineWidth || y >= height * FINE) {
      return true;
    }
    return nearest[y * fineWidth + x] > projection.z(p) + slackMm;
  }

  Projection projection() {
    return projection;
  }

  /** The panel at its final size, transparent where there is no cast. */
  BufferedImage image() {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int covered = 0;
        int red = 0;
        int green = 0;
        int blue = 0;
        for (int s = 0; s < FINE * FINE; s++) {
          int argb = colour[(y * FINE + s / FINE) * fineWidth + x * FINE + s % FINE];
          if (argb != 0) {
            covered++;
            red += (argb >> 16) & 0xff;
            green += (argb >> 8) & 0xff;
            blue += argb & 0xff;
          }
        }
        if (covered > 0) {
          int alpha = 255 * covered / (FINE * FINE);
          image.setRGB(
              x,
              y,
              (alpha << 24)
                  | ((red / covered) << 16)
                  | ((green / covered) << 8)
                  | (blue / covered));
        }
      }
    }
    return image;
  }
}
