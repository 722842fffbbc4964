package rodwork.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rodwork.geometry.Vec3;

/**
 * The teeth against the tables of tooth anatomy, measured on the triangles.
 *
 * <p>Sizes: Ash and Nelson, Wheeler's Dental Anatomy, table 1-1 (lower teeth and upper canine and
 * second molar from memory). Tolerances: 0.35 mm, a fifth to a half of the spread between people
 * (Munhoz 2012: SD of the width of upper first premolars 0.45 mm).
 */
class CrownFormTest {
  private static final double TOLERANCE_MM = 0.35;

  /** Crown length, mesiodistal width, faciolingual width by jaw and place from the midline. */
  private static final Map<Integer, double[]> TABLE =
      Map.ofEntries(
          Map.entry(11, new double[] {10.5, 8.5, 7.0}),
          Map.entry(12, new double[] {9.0, 6.5, 6.0}),
          Map.entry(13, new double[] {10.0, 7.5, 8.0}),
          Map.entry(14, new double[] {8.5, 7.0, 9.0}),
          Map.entry(16, new double[] {7.5, 10.0, 11.0}),
          Map.entry(17, new double[] {7.0, 9.0, 11.0}),
          Map.entry(31, new double[] {9.0, 5.0, 6.0}),
          Map.entry(32, new double[] {9.5, 5.5, 6.5}),
          Map.entry(33, new double[] {11.0, 7.0, 7.5}),
          Map.entry(34, new double[] {8.5, 7.0, 7.5}),
          Map.entry(37, new double[] {7.0, 10.5, 10.0}));

  private static double[] table(int fdi) {
    int place = fdi % 10;
    double[] row = TABLE.getOrDefault(fdi < 30 ? 10 + place : 30 + place, new double[0]);
    assertThat(row).as("table row of %d", fdi).hasSize(3);
    return row;
  }

  @ParameterizedTest
  @ValueSource(ints = {17, 16, 13, 12, 11, 21, 22, 23, 24, 27, 34, 33, 32, 31, 41, 42, 43, 44, 47})
  void hasTheSizesOfTheTable(int fdi) {
    Measured measured = Casts.with(fdi);
    DemoTooth tooth = measured.cast.tooth(fdi);
    double[] size = table(fdi);
    double[] md = measured.extent(fdi, tooth.mesial());
    double[] bl = measured.extent(fdi, tooth.facial());
    assertThat(measured.crownLength(fdi))
        .as("crown length of %d", fdi)
        .isCloseTo(size[0], within(TOLERANCE_MM));
    assertThat(md[1] - md[0]).as("width of %d", fdi).isCloseTo(size[1], within(TOLERANCE_MM));
    assertThat(bl[1] - bl[0]).as("depth of %d", fdi).isCloseTo(size[2], within(TOLERANCE_MM));
  }

  @ParameterizedTest
  @ValueSource(ints = {17, 16, 13, 12, 11, 21, 22, 23, 24, 27, 34, 33, 32, 31, 41, 42, 43, 44, 47})
  void hasTheRightNumberOfCusps(int fdi) {
    int expected =
        switch (fdi % 10) {
          case 1, 2, 3 -> 1;
          case 4, 5 -> 2;
          default -> 4;
        };
    // A top counts when one must go down 0.3 mm from it to reach a higher one.
    long tops = Casts.with(fdi).tops(fdi).stream().filter(t -> t[1] > 0.3).count();
    assertThat(tops).as("cusps of %d", fdi).isEqualTo(expected);
  }

  @ParameterizedTest
  @ValueSource(ints = {12, 11, 21, 22, 32, 31, 41, 42})
  void incisorsHaveAnEdge(int fdi) {
    Measured measured = Casts.with(fdi);
    List<Vec3> points = measured.points(fdi);
    double top = points.stream().mapToDouble(Vec3::z).max().orElseThrow();
    List<Vec3> edge = points.stream().filter(p -> p.z() > top - 0.5).toList();
    double wide =
        edge.stream().mapToDouble(Vec3::x).summaryStatistics().getMax()
            - edge.stream().mapToDouble(Vec3::x).summaryStatistics().getMin();
    double deep =
        edge.stream().mapToDouble(Vec3::y).summaryStatistics().getMax()
            - edge.stream().mapToDouble(Vec3::y).summaryStatistics().getMin();
    assertThat(wide).as("length of the edge").isGreaterThan(0.65 * table(fdi)[1]);
    assertThat(deep).as("thickness of the edge").isLessThan(2.0);
  }

  @ParameterizedTest
  @ValueSource(ints = {13, 12, 11, 21, 22, 23, 33, 32, 31, 41, 42, 43})
  void frontTeethHaveACingulum(int fdi) {
    List<Vec3> middle =
        Casts.with(fdi).points(fdi).stream()
            .filter(p -> Math.abs(p.x()) < 0.3 && p.y() < 0)
            .toList();
    double length = table(fdi)[0];
    double cingulum = lingualAt(middle, 0.18 * length);
    double fossa = lingualAt(middle, 0.6 * length);
    double edge = lingualAt(middle, 0.93 * length);
    assertThat(cingulum - fossa).as("cingulum of %d", fdi).isGreaterThan(1.0);
    double straight = cingulum + (edge - cingulum) * (0.6 - 0.18) / (0.93 - 0.18);
    assertThat(straight - fossa).as("hollow between cingulum and edge of %d", fdi).isPositive();
  }

  /** How far to lingual the middle line of a crown stands at a height [mm]. */
  private static double lingualAt(List<Vec3> middle, double z) {
    return middle.stream()
        .filter(p -> Math.abs(p.z() - z) < 0.25)
        .mapToDouble(p -> -p.y())
        .average()
        .orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(ints = {17, 16, 24, 27, 34, 44, 47})
  void backTeethHaveMarginalRidges(int fdi) {
    Measured measured = Casts.with(fdi);
    double half = table(fdi)[1] / 2;
    double f = fdi == 34 || fdi == 44 ? -0.6 : 0.1;
    for (int side = -1; side <= 1; side += 2) {
      double ridge = -1e9;
      for (double m = half - 1.8; m <= half - 0.4; m += 0.2) {
        ridge = Math.max(ridge, measured.top(fdi, side * m, f));
      }
      double fossa = 1e9;
      for (double m = 0.8; m <= half - 1.3; m += 0.2) {
        fossa = Math.min(fossa, measured.top(fdi, side * m, f));
      }
      assertThat(ridge - fossa)
          .as("%s marginal ridge of %d over its fossa", side < 0 ? "distal" : "mesial", fdi)
          .isGreaterThan(0.2);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {17, 16, 27, 47})
  void molarsHaveAFacialGroove(int fdi) {
    List<Vec3> points = Casts.with(fdi).points(fdi);
    double length = table(fdi)[0];
    double mesial = facialAt(points, 0.22 * table(fdi)[1], 0.8 * length);
    double groove = facialAt(points, 0.01 * table(fdi)[1], 0.8 * length);
    double distal = facialAt(points, -0.22 * table(fdi)[1], 0.8 * length);
    assertThat(Math.min(mesial, distal) - groove).as("facial groove of %d", fdi).isGreaterThan(0.2);
  }

  private static double facialAt(List<Vec3> points, double m, double z) {
    return points.stream()
        .filter(p -> Math.hypot(p.x() - m, p.z() - z) < 0.35)
        .mapToDouble(Vec3::y)
        .max()
        .orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(ints = {17, 16, 24, 27, 34, 44, 47})
  void backTeethHaveACentralGroove(int fdi) {
    Measured measured = Casts.with(fdi);
    double bl = table(fdi)[2];
    double m = fdi % 10 == 4 ? 0 : 0.22 * table(fdi)[1];
    double facial = -1e9;
    double lingual = -1e9;
    double groove = 1e9;
    for (double f = -0.33 * bl; f <= 0.33 * bl; f += 0.2) {
      double z = measured.top(fdi, m, f);
      if (f > 0.1 * bl) {
        facial = Math.max(facial, z);
      } else if (f < -0.2 * bl) {
        lingual = Math.max(lingual, z);
      }
      groove = Math.min(groove, z);
    }
    assertThat(Math.min(facial, lingual) - groove)
        .as("depth of the central groove of %d", fdi)
        .isGreaterThan(0.3);
  }
}
