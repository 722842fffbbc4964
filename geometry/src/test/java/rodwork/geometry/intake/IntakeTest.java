package rodwork.geometry.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.FileFacts;
import rodwork.geometry.io.Format;
import rodwork.geometry.io.LengthUnit;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.io.RawMesh;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.MeshCheck;
import rodwork.geometry.testing.Reshape;
import rodwork.geometry.testing.Shared;

/** One sound body, and one broken sister for each defect that is mended, told or refused. */
class IntakeTest {
  /** Spans 66 mm, as an arch does. */
  private static final TriangleMesh RING = Bodies.torus(25, 8, 1.985);

  private static final IntakeOptions USUAL = IntakeOptions.usual();

  private static FileFacts facts(int triangles) {
    return FileFacts.plain("ring.ply", Format.PLY, true, triangles);
  }

  private static RawMesh raw(TriangleMesh mesh) {
    return raw(mesh.copyOfCoordinates(), mesh.copyOfCorners());
  }

  private static RawMesh raw(double[] xyz, int[] corners) {
    return RawMesh.of(xyz, corners, facts(corners.length / 3));
  }

  private static Cast take(TriangleMesh mesh) {
    return Intake.of(raw(mesh), USUAL, Watch.NONE);
  }

  /** The remarks, but for the one on edge length, which these bodies of few triangles all get. */
  private static List<String> lines(Cast cast) {
    return cast.report().remarks().stream()
        .filter(r -> !r.code().equals("too-coarse"))
        .map(Remark::line)
        .toList();
  }

  private static int[] plus(int[] corners, int... more) {
    int[] all = Arrays.copyOf(corners, corners.length + more.length);
    System.arraycopy(more, 0, all, corners.length, more.length);
    return all;
  }

  private static Refusal refusal(RawMesh raw, IntakeOptions options) {
    Refusal refusal =
        catchThrowableOfType(Refusal.class, () -> Intake.of(raw, options, Watch.NONE));
    assertThat(refusal).isNotNull();
    assertThat(refusal.advice()).isNotBlank();
    return refusal;
  }

  @Test
  void aSoundFileIsKeptAsItIs() {
    Cast cast = take(RING);
    assertThat(cast.mesh()).isEqualTo(RING);
    assertThat(cast.files().isIdentity()).isTrue();
    assertThat(cast.files().meshVertex(7)).isEqualTo(7);
    assertThat(cast.files().fileTriangle(9)).isEqualTo(9);
    assertThat(lines(cast)).isEmpty();
    assertThat(cast.report().surface().watertight()).isTrue();
    assertThat(cast.report().surface().volumeMm3()).isCloseTo(MeshCheck.volume(RING), within(1e-6));
    assertThat(cast.report().lines())
        .startsWith(
            "ring.ply: PLY, "
                + grouped(RING.vertexCount())
                + " vertices, "
                + grouped(RING.triangleCount())
                + " triangles.",
            "Extent 66.0 × 66.0 × 16.0 mm; unit mm, found from the span (an arch spans 40 to 90"
                + " mm).");
  }

  private static String grouped(int n) {
    return String.format(Locale.ROOT, "%,d", n);
  }

  @Test
  void unfiniteVerticesGoWithTheirTriangles() {
    double[] xyz = RING.copyOfCoordinates();
    xyz[0] = Double.NaN;
    xyz[3 * 500 + 1] = Double.NEGATIVE_INFINITY;
    xyz[3 * 900 + 2] = 1e30;
    Cast cast = Intake.of(raw(xyz, RING.copyOfCorners()), USUAL, Watch.NONE);
    assertThat(lines(cast))
        .contains(
            "Vertices whose coordinates are no numbers within ±1e9: 3; removed, with the triangles"
                + " at them: 18.");
    assertThat(cast.mesh().vertexCount()).isEqualTo(RING.vertexCount() - 3);
    assertThat(cast.files().meshVertex(0)).isEqualTo(-1);
    assertThat(cast.files().meshVertex(1)).isZero();
    assertThat(cast.files().fileVertex(0)).isEqualTo(1);
    assertThat(cast.files().distinctFileVertices().count()).isEqualTo(RING.vertexCount());
    assertThat(cast.report().loops()).hasSize(3);
    assertThat(lines(cast)).anyMatch(l -> l.startsWith("Holes in the surface: 3, the longest"));
  }

  @Test
  void aSoupOfTrianglesIsWelded() {
    double[] xyz = new double[9 * RING.triangleCount()];
    int[] corners = new int[3 * RING.triangleCount()];
    for (int i = 0; i < corners.length; i++) {
      corners[i] = i;
      Vec3 p = RING.vertex(RING.corner(i / 3, i % 3));
      xyz[3 * i] = p.x();
      xyz[3 * i + 1] = p.y();
      xyz[3 * i + 2] = p.z() == 0 ? -0.0 : p.z();
    }
    Cast cast = Intake.of(raw(xyz, corners), USUAL, Watch.NONE);
    assertThat(lines(cast))
        .containsExactly(
            "Vertices at exactly the place of an earlier one: "
                + grouped(corners.length - RING.vertexCount())
                + "; welded.");
    MeshCheck.closedAndOriented(cast.mesh());
    assertThat(cast.files().distinctFileVertices().count()).isEqualTo(RING.vertexCount());
    assertThat(cast.files().meshVertex(corners.length - 1))
        .isEqualTo(cast.mesh().corner(RING.triangleCount() - 1, 2));
  }

  @Test
  void unusedVerticesAreLeftOut() {
    double[] xyz = Arrays.copyOf(RING.copyOfCoordinates(), 3 * RING.vertexCount() + 6);
    Cast cast = Intake.of(raw(xyz, RING.copyOfCorners()), USUAL, Watch.NONE);
    assertThat(lines(cast)).containsExactly("Vertices that no triangle names: 2; left out.");
    assertThat(cast.mesh()).isEqualTo(RING);
  }

  @Test
  void collapsedTrianglesAreRemoved() {
    Cast cast =
        Intake.of(
            raw(RING.copyOfCoordinates(), plus(RING.copyOfCorners(), 5, 5, 9, 3, 3, 3)),
            USUAL,
            Watch.NONE);
    assertThat(lines(cast)).containsExactly("Triangles with two corners in one place: 2; removed.");
    assertThat(cast.mesh()).isEqualTo(RING);
    assertThat(cast.files().meshTriangle(RING.triangleCount())).isEqualTo(-1);
  }

  @Test
  void repeatedTrianglesAreRemovedWhicheverWayTheyFace() {
    int[] c = RING.copyOfCorners();
    int[] more = plus(c, c[1], c[2], c[0], c[30], c[32], c[31], c[30], c[31], c[32]);
    Cast cast = Intake.of(raw(RING.copyOfCoordinates(), more), USUAL, Watch.NONE);
    assertThat(lines(cast)).containsExactly("Triangles that repeat an earlier one: 3; removed.");
    assertThat(cast.mesh()).isEqualTo(RING);
  }

  @Test
  void flatTrianglesAreDividedAmongNeighboursWithoutAGap() {
    // A vertex in the middle of a box's straight edge, joined to one side only by a flat triangle.
    TriangleMesh box = Bodies.box(new Vec3(0, 0, 0), new Vec3(60, 50, 20), 100);
    double[] xyz = Arrays.copyOf(box.copyOfCoordinates(), 3 * box.vertexCount() + 3);
    int[] corners = box.copyOfCorners();
    int a = corners[0];
    int b = corners[1];
    int c = corners[2];
    int m = box.vertexCount();
    Vec3 middle = box.vertex(a).plus(box.vertex(b)).times(0.5);
    xyz[3 * m] = middle.x();
    xyz[3 * m + 1] = middle.y();
    xyz[3 * m + 2] = middle.z();
    corners[1] = m; // a, m, c
    corners = plus(corners, m, b, c, a, b, m); // the last has no area
    Cast cast = Intake.of(raw(xyz, corners), USUAL, Watch.NONE);
    assertThat(lines(cast))
        .containsExactly(
            "Triangles without area, their corners in one line: 1; divided among their neighbours,"
                + " or removed at a border.");
    MeshCheck.closedAndOriented(cast.mesh());
    assertThat(MeshCheck.volume(cast.mesh())).isCloseTo(60000, within(1e-6));
    assertThat(cast.mesh().triangleCount()).isEqualTo(14);
  }

  @Test
  void turnedTrianglesAreTurnedBack() {
    Random random = new Random(3);
    boolean[] flip = new boolean[RING.triangleCount()];
    int flipped = 0;
    for (int t = 0; t < flip.length; t++) {
      flip[t] = random.nextInt(5) == 0;
      flipped += flip[t] ? 1 : 0;
    }
    Cast cast = take(Reshape.flipped(RING, t -> flip[t]));
    assertThat(lines(cast))
        .containsExactly(
            "Triangles turned against their neighbours: " + grouped(flipped) + "; turned round.");
    MeshCheck.closedAndOriented(cast.mesh());
    assertThat(MeshCheck.volume(cast.mesh())).isPositive();
    assertThat(cast.files().isIdentity()).isTrue();
  }

  @Test
  void insideOutBodiesAreTurned() {
    Cast cast = take(Reshape.flipped(RING, t -> true));
    assertThat(cast.mesh().triangleCount()).isEqualTo(RING.triangleCount());
    assertThat(MeshCheck.volume(cast.mesh())).isPositive();
    assertThat(lines(cast))
        .containsExactly(
            "Pieces of the surface that were inside out: 1, with "
                + grouped(RING.triangleCount())
                + " triangles; turned round.",
            "The whole surface was inside out, as it is after a mirroring: compare right and left"
                + " with the patient or the plaster.");
  }

  @Test
  void insideOutShellsAreTurned() {
    TriangleMesh half = Reshape.above(RING, 0.5);
    Cast cast = take(Reshape.flipped(half, t -> true));
    Vec3 sum = Vec3.ZERO;
    for (int t = 0; t < cast.mesh().triangleCount(); t++) {
      sum = sum.plus(cast.mesh().doubleAreaNormal(t));
    }
    assertThat(sum.z()).isPositive();
    assertThat(take(half).report().remarks()).noneMatch(r -> r.code().equals("inside-out"));
  }

  @Test
  void aCavityStaysACavity() {
    TriangleMesh block = Bodies.box(new Vec3(-30, -25, 0), new Vec3(30, 25, 20), 5);
    TriangleMesh hollow =
        Bodies.join(
            block,
            Reshape.flipped(Bodies.box(new Vec3(-20, -15, 5), new Vec3(20, 15, 15), 5), t -> true));
    Cast cast = take(hollow);
    assertThat(cast.report().surface().volumeMm3()).isCloseTo(60000 - 12000, within(1e-6));
    assertThat(lines(cast)).containsExactly("The surface is in separate pieces: 2; all are kept.");
  }

  @Test
  void islandsAreRemoved() {
    TriangleMesh dust = Bodies.moved(Bodies.sphere(0.5, 0.5), new Vec3(400, 0, 0));
    Cast cast = take(Bodies.join(dust, RING));
    assertThat(lines(cast))
        .containsExactly(
            "Loose pieces below 1.00 % of the whole area each: 1, with "
                + dust.triangleCount()
                + " triangles and 0.037 % of it together; removed.");
    assertThat(cast.mesh()).isEqualTo(RING);
    assertThat(cast.files().fileTriangle(0)).isEqualTo(dust.triangleCount());
    Cast all =
        Intake.of(
            raw(Bodies.join(RING, Bodies.moved(dust, new Vec3(-400, 0, 0)))),
            new IntakeOptions(Optional.empty(), 0, 4),
            Watch.NONE);
    assertThat(all.report().surface().pieces()).isEqualTo(2);
  }

  @Test
  void aTornSurfaceIsKeptWithAWarning() {
    Random random = new Random(4);
    double[] xyz = new double[9 * RING.triangleCount()];
    int[] corners = new int[3 * RING.triangleCount()];
    for (int i = 0; i < corners.length; i++) {
      corners[i] = i;
      Vec3 p = RING.vertex(RING.corner(i / 3, i % 3));
      xyz[3 * i] = p.x() + 1e-6 * random.nextDouble();
      xyz[3 * i + 1] = p.y();
      xyz[3 * i + 2] = p.z();
    }
    Cast cast = Intake.of(raw(xyz, corners), USUAL, Watch.NONE);
    assertThat(cast.mesh().triangleCount()).isEqualTo(RING.triangleCount());
    assertThat(cast.report().warnings()).extracting(Remark::code).contains("shattered");
  }

  @Test
  void pinholesAreFilledAndHolesKept() {
    List<Integer> gone = new ArrayList<>(List.of(0, 1, 400));
    // all triangles about one vertex make a hole of six edges
    for (int t = 0; t < RING.triangleCount(); t++) {
      if (RING.corner(t, 0) == 1500 || RING.corner(t, 1) == 1500 || RING.corner(t, 2) == 1500) {
        gone.add(t);
      }
    }
    TriangleMesh holed = Reshape.only(RING, t -> !gone.contains(t));
    Cast cast = take(holed);
    assertThat(lines(cast))
        .contains("Pinholes of at most 4 edges: 2; filled with 3 triangles.")
        .anyMatch(
            l ->
                l.startsWith("Holes in the surface: 1, the longest ")
                    && l.endsWith("; kept, and depths measured through one are marked unsure."));
    MeshCheck.oriented(cast.mesh());
    assertThat(cast.files().fileTriangle(cast.mesh().triangleCount() - 1)).isEqualTo(-1);
    assertThat(cast.files().fileVertex(3)).isEqualTo(3);
    Cast unfilled = Intake.of(raw(holed), new IntakeOptions(Optional.empty(), 0.01, 0), Watch.NONE);
    assertThat(unfilled.report().loops()).hasSize(3);
  }

  @Test
  void crowdedEdgesAreToldAndKept() {
    int n = RING.vertexCount();
    double[] xyz = Arrays.copyOf(RING.copyOfCoordinates(), 3 * n + 3);
    xyz[3 * n + 2] = 40;
    int[] corners = plus(RING.copyOfCorners(), RING.corner(0, 0), RING.corner(0, 1), n);
    Cast cast = Intake.of(raw(xyz, corners), USUAL, Watch.NONE);
    assertThat(lines(cast)).contains("Edges with more than two triangles: 1; kept as they are.");
    assertThat(cast.files().isIdentity()).isTrue();
  }

  @Test
  void aOneSidedBandIsToldAndKept() {
    int steps = 60;
    double[] xyz = new double[6 * steps];
    int[] corners = new int[6 * steps];
    for (int i = 0; i < steps; i++) {
      double angle = 2 * Math.PI * i / steps;
      for (int side = 0; side < 2; side++) {
        double w = side == 0 ? -5 : 5;
        double r = 30 + w * Math.cos(angle / 2);
        xyz[6 * i + 3 * side] = r * Math.cos(angle);
        xyz[6 * i + 3 * side + 1] = r * Math.sin(angle);
        xyz[6 * i + 3 * side + 2] = w * Math.sin(angle / 2);
      }
      int a = 2 * i;
      int b = 2 * i + 1;
      // after one round the band has changed its sides
      int c = i + 1 < steps ? 2 * i + 2 : 1;
      int d = i + 1 < steps ? 2 * i + 3 : 0;
      System.arraycopy(new int[] {a, c, b, b, c, d}, 0, corners, 6 * i, 6);
    }
    Cast cast = Intake.of(raw(xyz, corners), USUAL, Watch.NONE);
    assertThat(lines(cast))
        .contains(
            "Edges at which the two sides of the surface change places: 1; kept, for no turning"
                + " mends them.");
  }

  @Test
  void unitsAreFoundFromTheSpan() {
    for (LengthUnit unit :
        new LengthUnit[] {LengthUnit.CENTIMETRE, LengthUnit.INCH, LengthUnit.METRE}) {
      TriangleMesh small = Reshape.each(RING, p -> p.times(1 / unit.millimetres()));
      Cast cast = take(small);
      assertThat(cast.report().unit().unit()).isEqualTo(unit);
      assertThat(cast.report().spanMm()).isCloseTo(66, within(1e-9));
      assertThat(lines(cast))
          .containsExactly(
              "Lengths were in "
                  + unit.label()
                  + ": multiplied by "
                  + Phrase.number(unit.millimetres())
                  + " to mm.");
      assertThat(cast.files().isIdentity()).isTrue();
    }
  }

  @Test
  void theUserOverrulesTheUnit() {
    Cast cast = Intake.of(raw(RING), USUAL.withUnit(LengthUnit.CENTIMETRE), Watch.NONE);
    assertThat(cast.report().spanMm()).isCloseTo(660, within(1e-9));
    assertThat(lines(cast))
        .contains(
            "It spans 660.0 mm; a whole arch spans 40.0 to 90.0 mm. Give the unit if cm is wrong.");
  }

  @Test
  void aDeclaredUnitIsBelievedWhenItFits() {
    TriangleMesh metres = Reshape.each(RING, p -> p.times(0.001));
    assertThat(declared(metres, LengthUnit.METRE).report().unit().evidence())
        .isEqualTo(UnitFinding.Evidence.DECLARED);
    Cast wrong = declared(RING, LengthUnit.METRE);
    assertThat(wrong.report().unit().unit()).isEqualTo(LengthUnit.MILLIMETRE);
    assertThat(lines(wrong))
        .containsExactly(
            "The file says its unit is m, with which it would span 66,000 mm; taken as mm, with"
                + " which it spans 66.0 mm. Give the unit if that is wrong.");
  }

  private static Cast declared(TriangleMesh mesh, LengthUnit unit) {
    FileFacts plain = facts(mesh.triangleCount());
    FileFacts said =
        new FileFacts(
            plain.name(),
            plain.format(),
            true,
            Optional.of(unit),
            plain.announcedFaces(),
            plain.faces(),
            0,
            0,
            1,
            List.of());
    return Intake.of(
        RawMesh.of(mesh.copyOfCoordinates(), mesh.copyOfCorners(), said), USUAL, Watch.NONE);
  }

  @Test
  void partOfAnArchIsTakenWithAWarning() {
    Cast cast = take(Reshape.each(RING, p -> p.times(0.4)));
    assertThat(cast.report().unit().evidence()).isEqualTo(UnitFinding.Evidence.ASSUMED);
    assertThat(cast.report().warnings()).extracting(Remark::code).contains("span-unusual");
  }

  @Test
  void farFromTheOriginRoundingIsTold() {
    TriangleMesh far =
        Reshape.each(RING, p -> new Vec3((float) (p.x() + 200_000), (float) p.y(), (float) p.z()));
    assertThat(lines(take(far)))
        .anyMatch(l -> l.contains("200,033 mm from the origin") && l.contains("rounded to 0.016"));
  }

  @Test
  void coarseEdgesAreTold() {
    assertThat(take(RING).report().warnings())
        .extracting(Remark::code)
        .containsExactly("too-coarse");
    assertThat(take(RING).report().lines())
        .anyMatch(
            l ->
                l.endsWith(
                    "over the limit of 0.30 mm: too coarse to place a 0.25 mm" + " terminal."));
  }

  @Test
  void nothingFiniteIsRefused() {
    double[] xyz = RING.copyOfCoordinates();
    Arrays.fill(xyz, Double.NaN);
    Refusal refusal = refusal(raw(xyz, RING.copyOfCorners()), USUAL);
    assertThat(refusal.code()).isEqualTo("coordinates-not-finite");
    assertThat(refusal).hasMessageContaining("ring.ply: none of its");
  }

  @Test
  void nothingWithAreaIsRefused() {
    double[] xyz = {0, 0, 0, 30, 0, 0, 60, 0, 0, Double.NaN, 0, 0};
    Refusal refusal = refusal(raw(xyz, new int[] {0, 1, 2, 0, 0, 1, 1, 2, 3}), USUAL);
    assertThat(refusal.code()).isEqualTo("no-triangles-left");
    assertThat(refusal)
        .hasMessage(
            "ring.ply: of its 3 triangles none has an area (1 have corners that are no finite"
                + " numbers, 2 are lines or points).");
  }

  @Test
  void spansThatFitNoUnitAreRefused() {
    Refusal refusal = refusal(raw(Reshape.each(RING, p -> p.times(0.2))), USUAL);
    assertThat(refusal.code()).isEqualTo("unit-unknown");
    assertThat(refusal)
        .hasMessage(
            "ring.ply: it spans 13.2 in its own unit, which is 13.2 as mm, 132.0 as cm, 335.3 as"
                + " inches, 13,200 as metres; an arch spans 40.0 to 90.0 mm.");
    RawMesh huge = raw(Reshape.each(RING, p -> p.times(1000)));
    assertThat(refusal(huge, USUAL).code()).isEqualTo("unit-unknown");
    assertThat(refusal(huge, USUAL.withUnit(LengthUnit.INCH)).code()).isEqualTo("cast-too-large");
    RawMesh tiny = raw(Reshape.each(RING, p -> p.times(1e-6)));
    assertThat(refusal(tiny, USUAL.withUnit(LengthUnit.INCH)).code()).isEqualTo("cast-too-small");
  }

  @Test
  void stopsOnRequest() {
    Watch stop =
        new Watch() {
          @Override
          public void progress(String what, double share) {}

          @Override
          public boolean cancelled() {
            return true;
          }
        };
    assertThatThrownBy(() -> Intake.of(raw(RING), USUAL, stop))
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void anyTangleIsTakenOrRefused() {
    int taken = 0;
    for (long seed = 1; seed <= 500; seed++) {
      Random random = new Random(seed);
      int vertices = 3 + random.nextInt(12);
      double[] xyz = new double[3 * vertices];
      for (int i = 0; i < xyz.length; i++) {
        // few places, so that much coincides and lines up
        xyz[i] = 20 * random.nextInt(4) + (random.nextInt(60) == 0 ? Double.NaN : 0);
      }
      int[] corners = random.ints(3L * (1 + random.nextInt(40)), 0, vertices).toArray();
      try {
        Cast cast = Intake.of(raw(xyz, corners), USUAL, Watch.NONE);
        MeshCheck.noDegenerateTriangles(cast.mesh());
        for (int t = 0; t < cast.mesh().triangleCount(); t++) {
          int file = cast.files().fileTriangle(t);
          assertThat(file < 0 || cast.files().meshTriangle(file) == t).isTrue();
        }
        taken++;
      } catch (Refusal e) {
        assertThat(e.code()).isNotBlank();
      } catch (RuntimeException | AssertionError e) {
        throw new AssertionError("seed " + seed, e);
      }
    }
    assertThat(taken).isGreaterThan(300);
  }

  @Test
  void aRealScanNeedsNoMending() {
    Cast cast =
        Intake.of(
            MeshFiles.read(Shared.file("arches/lower-dense.stl"), Watch.NONE), USUAL, Watch.NONE);
    assertThat(cast.files().isIdentity()).isTrue();
    assertThat(cast.mesh().triangleCount()).isEqualTo(271_567);
    assertThat(cast.loops().rims()).hasSize(1);
    assertThat(cast.loops().holes()).hasSize(3);
    assertThat(cast.report().edges().nearTeeth()).isTrue();
    assertThat(cast.report().edges().medianMm()).isCloseTo(0.18, within(0.01));
    assertThat(cast.report().warnings()).isEmpty();
  }
}
