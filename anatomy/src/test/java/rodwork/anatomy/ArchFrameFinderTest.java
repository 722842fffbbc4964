package rodwork.anatomy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Truth: the labels of real arches, made by the data's authors ({@link TrueFrame}); for the two
 * arches without labels, directions read off pictures of them by eye; made-up casts by
 * construction.
 */
class ArchFrameFinderTest {

  static Stream<String> labelled() {
    return Arrays.stream(SharedArch.LABELLED);
  }

  private static FrameFinding find(TriangleMesh mesh, FrameHints hints) {
    MeshTopology topology = MeshTopology.of(mesh);
    return ArchFrameFinder.find(topology, AnatomicSurface.of(topology), Jaw.UPPER, hints);
  }

  private static Refusal refusal(TriangleMesh mesh, FrameHints hints) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> find(mesh, hints));
    assertThat(refusal).as("refused").isNotNull();
    return refusal;
  }

  private static double frontOff(ArchFrame frame, Vec3 front) {
    return frame.y().angleDegTo(front.across(frame.z()));
  }

  @ParameterizedTest
  @MethodSource("labelled")
  void agreesWithTheLabels(String name) {
    SharedArch arch = SharedArch.load(name);
    TrueFrame truth = TrueFrame.of(arch);
    ArchFrame frame = find(arch.mesh(), FrameHints.NONE).frame();
    double up = frame.z().angleDegTo(truth.up());
    double front = frontOff(frame, truth.front());
    System.out.printf(
        "%s: up off %.1f° (± %.1f°), front off %.1f° (± %.1f°)%n",
        name, up, frame.upUncertaintyDeg(), front, frame.frontUncertaintyDeg());
    assertThat(up).isLessThan(Math.min(5, frame.upUncertaintyDeg()));
    assertThat(front).isLessThan(Math.min(8, frame.frontUncertaintyDeg()));
    assertThat(frame.origin().minus(truth.middle()).dot(truth.up()))
        .as("height of the origin; the teeth themselves lie off the true plane by that much")
        .isCloseTo(0, within(Math.max(1, truth.residualMm())));
    assertThat(frame.origin().distance(truth.middle())).isLessThan(10);
  }

  @ParameterizedTest
  @MethodSource("labelled")
  void turnsWithTheCast(String name) {
    SharedArch arch = SharedArch.load(name);
    ArchFrame frame = find(arch.mesh(), FrameHints.NONE).frame();
    for (long seed = 1; seed <= 3; seed++) {
      Posed pose = Posed.random(seed);
      ArchFrame turned = find(pose.of(arch.mesh()), FrameHints.NONE).frame();
      assertFollows(turned, frame, pose, name + ", seed " + seed);
    }
    ArchFrame mirrored = find(Posed.mirror().of(arch.mesh()), FrameHints.NONE).frame();
    assertFollows(mirrored, frame, Posed.mirror(), name + ", mirrored");
  }

  private static void assertFollows(ArchFrame moved, ArchFrame still, Posed pose, String which) {
    assertThat(moved.z().angleDegTo(pose.turn(still.z()))).as("up of " + which).isLessThan(0.1);
    assertThat(moved.y().angleDegTo(pose.turn(still.y()))).as("front of " + which).isLessThan(0.1);
    assertThat(moved.origin().distance(pose.move(still.origin())))
        .as("origin of " + which)
        .isLessThan(0.2);
    assertThat(moved.upUncertaintyDeg()).isCloseTo(still.upUncertaintyDeg(), within(0.1));
  }

  /**
   * Read off pictures along and across: on both the plane of the cusps lies level in its scan frame
   * to about 3° and the incisors point along +Y to about 5°; on the dense one the occlusal plane
   * rises to the back by some 5°.
   */
  @ParameterizedTest
  @ValueSource(strings = {"upper-free-end", "lower-dense"})
  void agreesWithTheEyeWhereThereAreNoLabels(String name) {
    SharedArch arch = SharedArch.load(name);
    Vec3 up = name.startsWith("upper") ? new Vec3(0, 0.02, 1) : new Vec3(0.06, -0.10, 1);
    ArchFrame frame = find(arch.mesh(), FrameHints.NONE).frame();
    assertThat(frame.z().angleDegTo(up.unit())).isLessThan(4);
    assertThat(frontOff(frame, Vec3.Y)).isLessThan(8);
    Posed pose = Posed.random(11);
    assertFollows(find(pose.of(arch.mesh()), FrameHints.NONE).frame(), frame, pose, name);
  }

  static Stream<ModelCast.Form> closedCasts() {
    List<Integer> all = List.of(1, 2, 3, 4, 5, 6, 7);
    return Stream.of(
        new ModelCast.Form(true, 0, 0, 0.008, all, true),
        new ModelCast.Form(true, 8, 4, 0.008, all, true),
        new ModelCast.Form(false, 0, 0, 0.005, all, false),
        new ModelCast.Form(false, 5, 10, 0.01, List.of(1, 2, 3, 4), true),
        new ModelCast.Form(true, 5, 10, 0.01, List.of(1, 2, 3, 7), false));
  }

  @ParameterizedTest
  @MethodSource("closedCasts")
  void setsClosedCastsUpright(ModelCast.Form form) {
    Posed pose = Posed.random(7);
    ArchFrame frame = find(pose.of(ModelCast.of(form, 5).mesh()), FrameHints.NONE).frame();
    assertThat(frame.z().angleDegTo(pose.turn(Vec3.Z)))
        .isLessThan(Math.min(5, frame.upUncertaintyDeg()));
    assertThat(frontOff(frame, pose.turn(Vec3.Y)))
        .isLessThan(Math.min(8, frame.frontUncertaintyDeg()));
  }

  @Test
  void refusesWhatIsNoArch() {
    assertThat(refusal(Bodies.cap(30, 60), FrameHints.NONE).code()).isEqualTo("no-arch");
    assertThat(refusal(Bodies.cap(5, 80), FrameHints.NONE).code()).isEqualTo("no-arch");
    assertThat(refusal(Bodies.cap(30, 180), FrameHints.NONE).code())
        .isEqualTo("occlusal-direction-uncertain");
    assertThat(refusal(Bodies.field(60, 0, 1), FrameHints.NONE).code()).isEqualTo("no-arch");
    for (long seed = 1; seed <= 5; seed++) {
      assertThat(refusal(Bodies.field(60, 0.5, seed), FrameHints.NONE).code())
          .as("noise, seed " + seed)
          .isEqualTo("no-arch");
      assertThat(refusal(Bodies.field(60, 4, seed), FrameHints.NONE).code())
          .as("rough noise, seed " + seed)
          .isIn("no-arch", "occlusal-direction-uncertain");
    }
    TriangleMesh nothing = TriangleMesh.of(new double[0], new int[0]);
    assertThat(refusal(nothing, FrameHints.NONE).advice()).contains("--up").contains("--front");
  }

  @Test
  void refusesASingleRealTooth() {
    SharedArch arch = SharedArch.load("upper-full");
    for (int fdi : new int[] {11, 16, 24}) {
      List<Integer> corners = new ArrayList<>();
      for (int t = 0; t < arch.mesh().triangleCount(); t++) {
        for (int k = 0; k < 3 && arch.labels()[t] == fdi; k++) {
          corners.add(arch.mesh().corner(t, k));
        }
      }
      TriangleMesh tooth =
          TriangleMesh.of(
              arch.mesh().copyOfCoordinates(), corners.stream().mapToInt(c -> c).toArray());
      assertThat(refusal(tooth, FrameHints.NONE).code()).as("tooth " + fdi).isEqualTo("no-arch");
    }
  }

  @Test
  void takesTheDirectionsThatAreGiven() {
    TriangleMesh cast = ModelCast.of(closedCasts().findFirst().orElseThrow(), 5).mesh();
    Vec3 up = new Vec3(0.05, -0.1, 1);
    ArchFrame byUp = find(cast, new FrameHints(up, null)).frame();
    assertThat(byUp.z().angleDegTo(up)).isLessThan(1e-9);
    assertThat(byUp.upUncertaintyDeg()).isZero();
    assertThat(frontOff(byUp, Vec3.Y)).isLessThan(5);
    Vec3 front = new Vec3(0.3, 1, 0.2);
    ArchFrame byFront = find(cast, new FrameHints(null, front)).frame();
    assertThat(frontOff(byFront, front)).isLessThan(1e-9);
    assertThat(byFront.frontUncertaintyDeg()).isZero();
    assertThat(byFront.upUncertaintyDeg()).isPositive();
    // With both there is always a frame, even of a sphere.
    ArchFrame both = find(Bodies.cap(30, 180), new FrameHints(up, front)).frame();
    assertThat(both.z().angleDegTo(up)).isLessThan(1e-9);
    assertThat(frontOff(both, front)).isLessThan(1e-9);
    assertThat(refusal(cast, new FrameHints(up, up)).code()).isEqualTo("front-along-up");
  }

  @Test
  void sameCastSameFrame() {
    TriangleMesh cast = ModelCast.of(closedCasts().findFirst().orElseThrow(), 5).mesh();
    assertThat(find(cast, FrameHints.NONE)).isEqualTo(find(cast, FrameHints.NONE));
  }

  /** Shapes that are no arch. */
  private static final class Bodies {
    /** The part of a sphere within an angle of its pole; 180° is all of it, closed. */
    static TriangleMesh cap(double radius, double toDeg) {
      int rings = 80;
      int round = 160;
      double[] xyz = new double[3 * (rings + 1) * round];
      for (int r = 0; r <= rings; r++) {
        double polar = Math.toRadians(toDeg) * r / rings;
        for (int k = 0; k < round; k++) {
          double a = 2 * Math.PI * k / round;
          int v = 3 * (r * round + k);
          xyz[v] = radius * Math.sin(polar) * Math.cos(a);
          xyz[v + 1] = radius * Math.sin(polar) * Math.sin(a);
          xyz[v + 2] = radius * Math.cos(polar);
        }
      }
      int[] corners = new int[6 * rings * round];
      int at = 0;
      for (int r = 0; r < rings; r++) {
        for (int k = 0; k < round; k++) {
          int a = r * round + k;
          int b = r * round + (k + 1) % round;
          for (int corner : new int[] {a, a + round, b + round, a, b + round, b}) {
            boolean south = toDeg == 180 && corner >= rings * round;
            corners[at++] = corner < round ? 0 : south ? rings * round : corner;
          }
        }
      }
      return TriangleMesh.of(xyz, corners);
    }

    /** A square field with noise upwards. */
    static TriangleMesh field(double side, double noise, long seed) {
      Random random = new Random(seed);
      int n = 121;
      double[] xyz = new double[3 * n * n];
      for (int v = 0; v < n * n; v++) {
        xyz[3 * v] = side * (v % n) / (n - 1.0);
        xyz[3 * v + 1] = side * (v / n) / (n - 1.0);
        xyz[3 * v + 2] = noise * random.nextGaussian();
      }
      int[] corners = new int[6 * (n - 1) * (n - 1)];
      int at = 0;
      for (int j = 0; j + 1 < n; j++) {
        for (int i = 0; i + 1 < n; i++) {
          int a = j * n + i;
          for (int corner : new int[] {a, a + 1, a + n + 1, a, a + n + 1, a + n}) {
            corners[at++] = corner;
          }
        }
      }
      return TriangleMesh.of(xyz, corners);
    }
  }
}
