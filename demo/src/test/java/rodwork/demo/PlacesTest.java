package rodwork.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rodwork.demo.Measured.Side;
import rodwork.demo.Measured.Spot;
import rodwork.geometry.Vec3;

/**
 * What the demo casts promise to show at the reference orientation, measured with the undercut
 * field of the geometry module on the triangles. Depths are those of DESIGN: u, and u_d for
 * stand-off.
 */
class PlacesTest {
  @ParameterizedTest
  @ValueSource(ints = {17, 16, 12, 11, 21, 22, 23, 24, 34, 33, 32, 31, 41, 42, 43, 44, 47})
  void facialSurveyLinesLieInTheGingivalThird(int fdi) {
    Side side = Casts.with(fdi).down(fdi, 0, true);
    Spot line = side.surveyLine().orElseThrow();
    assertThat(side.share(line)).as("height of the line on %d", fdi).isBetween(0.08, 0.34);
  }

  @ParameterizedTest
  @ValueSource(ints = {34, 44, 47})
  void lingualSurveyLinesOfLowerBackTeethLieInTheMiddleThird(int fdi) {
    Side side = Casts.with(fdi).down(fdi, 0, false);
    Spot line = side.surveyLine().orElseThrow();
    assertThat(side.share(line)).as("height of the line on %d", fdi).isBetween(1 / 3.0, 2 / 3.0);
  }

  @Test
  void lower34HasAFiftyPlaceMesiofacially() {
    Measured measured = Casts.with(34);
    Side side = measured.down(34, 2.1, true);
    // The place lies clear of the margin: 1 mm and more (McCracken, from memory: 1 to 2 mm).
    double clear =
        side.onTooth().stream()
            .filter(s -> s.fromMargin() < -0.9)
            .mapToDouble(Spot::depth)
            .max()
            .orElseThrow();
    assertThat(clear).isGreaterThan(0.5);
    assertThat(measured.down(34, 0, true).deepest()).as("0.25 at the middle").isBetween(0.2, 0.45);
  }

  @ParameterizedTest
  @ValueSource(ints = {16, 24, 44})
  void otherAbutmentsHaveATwentyFivePlaceOnTheFacialSide(int fdi) {
    Measured measured = Casts.with(fdi);
    double deepest = 0;
    for (double m : new double[] {-0.3, -0.15, 0, 0.15, 0.3}) {
      double at = m * measured.cast.tooth(fdi).mesiodistalMm();
      deepest = Math.max(deepest, measured.down(fdi, at, true).deepest());
    }
    assertThat(deepest).as("facial undercut of %d", fdi).isGreaterThan(0.28);
  }

  @Test
  void lower47LeansToTheFrontAndToTheTongue() {
    Measured measured = Casts.with(47);
    assertThat(measured.downProximal(47, 0, true).deepest())
        .as("mesial undercut")
        .isGreaterThan(1.0);
    assertThat(measured.down(47, 2.5, false).deepest()).as("mesiolingual").isGreaterThan(0.7);
    assertThat(measured.down(47, 0, true).deepest()).as("facial").isLessThan(0.25);
  }

  @Test
  void upper13HasNoUndercutToUse() {
    Measured measured = Casts.with(13);
    for (double m = -2.4; m <= 2.4; m += 0.4) {
      assertThat(measured.down(13, m, true).deepest()).as("at %s mm", m).isLessThan(0.22);
    }
  }

  @Test
  void upper27HasAHighSurveyLineAndUpper16ALowOne() {
    Side high = Casts.with(27).down(27, 0, true);
    assertThat(high.share(high.surveyLine().orElseThrow())).isGreaterThan(2 / 3.0);
    Side low = Casts.with(16).down(16, 0, true);
    assertThat(low.share(low.surveyLine().orElseThrow())).isLessThan(1 / 3.0);
  }

  @Test
  void aBarWouldStandOutTooFarAtLower44AndNotAtUpper24() {
    assertThat(standOff(44, 6)).as("total stand-off of 44 at 6 mm").isGreaterThan(1.5);
    assertThat(standOff(24, 3)).as("total stand-off of 24 at 3 mm").isLessThan(1.0);
    assertThat(standOff(24, 6)).as("total stand-off of 24 at 6 mm").isLessThan(1.0);
  }

  /** u_d against all above, this many mm down the gum below the facial margin [mm]. */
  private static double standOff(int fdi, double mm) {
    Measured measured = Casts.with(fdi);
    Side side = measured.down(fdi, 0, true);
    return measured.all.depthAlong(side.below(mm).point(), side.out());
  }

  @Test
  void someProximalSurfacesNextToSpacesAreParallelWithinFiveDegrees() {
    for (int[][] surfaces :
        new int[][][] {{{34, 0}, {44, 0}, {47, 1}}, {{13, 0}, {16, 1}, {24, 0}, {27, 1}}}) {
      List<Vec3> chords = new ArrayList<>();
      for (int[] s : surfaces) {
        chords.add(chord(Casts.with(s[0]).downProximal(s[0], 0, s[1] == 1)));
      }
      double least = 180;
      for (int i = 0; i < chords.size(); i++) {
        for (int j = 0; j < i; j++) {
          least = Math.min(least, chords.get(i).angleDegTo(chords.get(j)));
        }
      }
      assertThat(least).as("least angle between proximal surfaces").isLessThan(5);
    }
  }

  /** Direction of a proximal surface from a quarter to seven tenths of its height. */
  private static Vec3 chord(Side side) {
    List<Spot> part =
        side.onTooth().stream().filter(s -> side.share(s) > 0.25 && side.share(s) < 0.7).toList();
    Vec3 high = part.getFirst().point();
    Vec3 low = part.getLast().point();
    return high.minus(low).unit();
  }
}
