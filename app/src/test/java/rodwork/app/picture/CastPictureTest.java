package rodwork.app.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.util.List;
import org.junit.jupiter.api.Test;
import rodwork.app.SphereCast;
import rodwork.geometry.Vec3;

/** The plan of a sphere, whose undercut R − ρ makes rings of known radii (closed form). */
class CastPictureTest {
  private static final double R = SphereCast.RADIUS_MM;

  private static double depth(int vertex) {
    Vec3 p = SphereCast.MESH.vertex(vertex);
    return p.z() < 0 ? R - Math.hypot(p.x(), p.y()) : 0;
  }

  private static PictureScene scene(boolean withUndercut) {
    return new PictureScene(
        SphereCast.MESH,
        withUndercut ? CastPictureTest::depth : vertex -> 0,
        triangle -> false,
        Vec3.Z,
        Vec3.Y,
        true,
        true,
        List.of(),
        "sphere",
        List.of("a note"));
  }

  @Test
  void eachBandOfThePlanHasItsRing() {
    int side = 700;
    Projection plan = Projection.fit(SphereCast.MESH, Vec3.Z, Vec3.Y, side, side, 20);
    Panel panel = new Panel(plan, side, side);
    panel.draw(scene(true), normals(), true);
    BufferedImage image = panel.image();
    for (double depth : new double[] {0.15, 0.38, 0.62, 1.5}) {
      Vec3 at = new Vec3((R - depth) * 0.8, (R - depth) * 0.6, 0);
      int rgb = image.getRGB((int) plan.x(at), (int) plan.y(at));
      assertThat(nearest(rgb)).as("at %s mm", depth).isEqualTo(Band.of(depth));
    }
  }

  @Test
  void withoutUndercutNothingIsShaded() {
    int side = 300;
    Projection plan = Projection.fit(SphereCast.MESH, Vec3.Z, Vec3.Y, side, side, 20);
    Panel panel = new Panel(plan, side, side);
    panel.draw(scene(false), normals(), true);
    Vec3 inside = new Vec3(R / 2, 0, 0);
    int rgb = panel.image().getRGB((int) plan.x(inside), (int) plan.y(inside));
    assertThat(nearest(rgb)).isEqualTo(Band.NONE);
  }

  @Test
  void bandsChangeExactlyAtTheGauges() {
    assertThat(Band.of(0.0499)).isEqualTo(Band.NONE);
    assertThat(Band.of(0.05)).isEqualTo(Band.SLIGHT);
    assertThat(Band.of(0.2499)).isEqualTo(Band.SLIGHT);
    assertThat(Band.of(0.25)).isEqualTo(Band.FIRST);
    assertThat(Band.of(0.50)).isEqualTo(Band.SECOND);
    assertThat(Band.of(0.75)).isEqualTo(Band.DEEP);
  }

  @Test
  void thePlanIsTurnedNeverMirrored() {
    Projection upper = Projection.fit(SphereCast.MESH, Vec3.Z, Vec3.Y, 100, 100, 0);
    // Upper cast, front up: +X is the patient's left, on the viewer's right.
    assertThat(upper.x(Vec3.X)).isGreaterThan(upper.x(Vec3.ZERO));
    assertThat(upper.y(Vec3.Y)).isLessThan(upper.y(Vec3.ZERO));
    Projection lower = Projection.fit(SphereCast.MESH, Vec3.Z, Vec3.Y.times(-1), 100, 100, 0);
    // Lower cast, front down: +X is the patient's right, on the viewer's left.
    assertThat(lower.x(Vec3.X)).isLessThan(lower.x(Vec3.ZERO));
    assertThat(lower.y(Vec3.Y)).isGreaterThan(lower.y(Vec3.ZERO));
  }

  @Test
  void whatLiesBehindIsHidden() {
    int side = 200;
    Projection view = Projection.fit(SphereCast.MESH, Vec3.Z, Vec3.Y, side, side, 10);
    Panel panel = new Panel(view, side, side);
    panel.draw(scene(false), normals(), false);
    assertThat(panel.hides(new Vec3(1, 1, -R), 0.25)).isTrue();
    assertThat(panel.hides(new Vec3(0, 0, R), 0.25)).isFalse();
  }

  @Test
  void theWholeSheetIsDrawn() {
    BufferedImage sheet = CastPicture.draw(scene(true));
    assertThat((double) sheet.getWidth() / sheet.getHeight()).isCloseTo(1.46, within(0.05));
    assertThat(sheet.getRGB(2, 200) & 0xffffff).isEqualTo(Palette.PAPER.getRGB() & 0xffffff);
  }

  private static float[] normals() {
    float[] normals = new float[3 * SphereCast.MESH.vertexCount()];
    for (int v = 0; v < SphereCast.MESH.vertexCount(); v++) {
      Vec3 n = SphereCast.MESH.vertex(v).unit();
      normals[3 * v] = (float) n.x();
      normals[3 * v + 1] = (float) n.y();
      normals[3 * v + 2] = (float) n.z();
    }
    return normals;
  }

  /** The band whose colour, in some light, comes nearest to a pixel. */
  private static Band nearest(int rgb) {
    Band best = Band.NONE;
    double least = Double.POSITIVE_INFINITY;
    for (Band band : Band.values()) {
      int plain = band == Band.NONE ? Palette.CAST : band.colourAt(1, 0);
      for (double light = 0.5; light <= 1; light += 0.02) {
        int lit = Palette.shade(plain, light);
        double off = 0;
        for (int shift = 0; shift <= 16; shift += 8) {
          off += Math.abs(((rgb >> shift) & 0xff) - ((lit >> shift) & 0xff));
        }
        if (off < least) {
          least = off;
          best = band;
        }
      }
    }
    return best;
  }
}
