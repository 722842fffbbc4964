package rodwork.design.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.design.plan.Edges.Edge;
import rodwork.design.plan.Edges.Piece;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;

/** Straps and plates on a palate that is a half cylinder or a plane: widths are closed forms. */
class SpansTest {
  /** The row runs at this distance from the middle on both sides [mm]. */
  private static final double HALF = 15;

  private static final double RADIUS = 20;

  /** Edges of the row lie from back to front at whole millimetres of this range. */
  private static final int BACK = -20;

  private static final int FRONT = 20;

  @Test
  void aStrapIsGrownUntilItIsAsWideAsWantedOnTheVault() {
    Edges edges = edges(ground(true, x -> false));
    Spans.Span span = Spans.asWide(edges, right(-2, 2), left(-2, 2), false, 8).orElseThrow();
    // Both borders run straight across at whole millimetres: the width is one of them.
    assertThat(span.widthMm()).isCloseTo(8, within(1e-6));
    assertThat(Line.open(span.behind()).lengthMm())
        .isCloseTo(2 * RADIUS * Math.asin(HALF / RADIUS), within(0.1));
  }

  @Test
  void aStrapThatSlantsIsMeasuredAcrossItsRun() {
    Edges edges = edges(ground(false, x -> false));
    Spans.Span narrow = Spans.between(edges, right(-12, -4), left(4, 12), false).orElseThrow();
    // Borders 8 mm apart from front to back that rise 16 mm on 30 mm.
    assertThat(narrow.widthMm()).isCloseTo(8 * 30 / Math.hypot(30, 16), within(1e-6));
    Spans.Span wide = Spans.asWide(edges, right(-12, -4), left(4, 12), false, 8).orElseThrow();
    assertThat(wide.widthMm()).isBetween(8.0, 9.0);
  }

  @Test
  void aPlateCoversItsShareAndIsWiderThanAStrap() {
    Edges edges = edges(ground(false, x -> false));
    Spans.Span plate = Spans.covering(edges, right(-2, 2), left(-2, 2), false, 0.5).orElseThrow();
    assertThat(plate.widthMm()).isCloseTo((FRONT - BACK) / 2.0, within(1.0));
  }

  @Test
  void nothingIsDrawnWhereTheScanShowsNoPalate() {
    // A slit as a scanner leaves it is bridged; a palate that was never scanned is not.
    assertThat(strap(1)).isPresent();
    assertThat(strap(8)).isEmpty();
  }

  private static Optional<Spans.Span> strap(int halfHole) {
    Ground ground = ground(false, x -> Math.abs(x) < halfHole);
    return Spans.asWide(edges(ground), right(-2, 2), left(-2, 2), false, 8);
  }

  private static Piece right(int from, int to) {
    return new Piece(from - BACK, to - BACK + 1);
  }

  private static Piece left(int from, int to) {
    int n = FRONT - BACK + 1;
    return new Piece(n + FRONT - to, n + FRONT - from + 1);
  }

  private static Edges edges(Ground ground) {
    List<Edge> all = new ArrayList<>();
    for (int y = BACK; y <= FRONT; y++) {
      all.add(edge(ground, -HALF, y));
    }
    for (int y = FRONT; y >= BACK; y--) {
      all.add(edge(ground, HALF, y));
    }
    return new Edges(ground, all);
  }

  private static Edge edge(Ground ground, double x, double y) {
    SurfacePoint at = ground.lay(new Vec3(x, y, height(ground, x)));
    Vec3 inward = new Vec3(-Math.signum(x), 0, 0);
    return new Edge(new Station(at, inward, Optional.empty(), Optional.empty()), at.point());
  }

  private static double height(Ground ground, double x) {
    boolean level = ground.mesh().vertex(0).z() == 0;
    return level ? 0 : -Math.sqrt(RADIUS * RADIUS - x * x);
  }

  /**
   * An upper palate seen from the occlusal side, −Z being the roof of the mouth.
   *
   * @param hole columns of half millimetres from x on that were not scanned
   */
  private static Ground ground(boolean vault, IntPredicate hole) {
    int across = 64;
    int along = 100;
    double step = 0.5;
    double[] xyz = new double[3 * (across + 1) * (along + 1)];
    List<Integer> corners = new ArrayList<>();
    for (int i = 0; i <= across; i++) {
      double x = (i - across / 2) * step;
      for (int j = 0; j <= along; j++) {
        int v = i * (along + 1) + j;
        xyz[3 * v] = x;
        xyz[3 * v + 1] = (j - along / 2) * step;
        xyz[3 * v + 2] = vault ? -Math.sqrt(RADIUS * RADIUS - x * x) : 0;
        if (i < across && j < along && !hole.test((int) Math.floor(x + step / 2))) {
          int right = v + along + 1;
          corners.addAll(List.of(v, right, right + 1, v, right + 1, v + 1));
        }
      }
    }
    TriangleMesh mesh =
        TriangleMesh.of(xyz, corners.stream().mapToInt(Integer::intValue).toArray());
    Arch arch =
        new Arch(
            MeshTopology.of(mesh),
            AnatomicSurface.whole(mesh),
            new ArchFrame(Vec3.ZERO, Vec3.Y, Vec3.Z, Jaw.UPPER, 0, 0));
    return new Ground(arch, ToothLabels.of(new int[mesh.triangleCount()]), TriangleTree.of(mesh));
  }
}
