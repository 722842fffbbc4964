package rodwork.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Vec3;

/** How the teeth stand together and what lies round them, measured on the triangles. */
class NeighboursAndGumTest {
  @ParameterizedTest
  @CsvSource({
    "17,16", "13,12", "12,11", "11,21", "21,22", "22,23", "23,24", "34,33", "33,32", "32,31",
    "31,41", "41,42", "42,43", "43,44"
  })
  void neighboursTouch(int a, int b) {
    Measured measured = Casts.with(a);
    List<Vec3> contact = measured.contact(a, b);
    assertThat(contact.size()).as("vertices shared by %d and %d", a, b).isGreaterThan(3);
    // High on the crown: the contact areas lie in the occlusal half.
    for (int fdi : new int[] {a, b}) {
      DemoTooth tooth = measured.cast.tooth(fdi);
      double highest = contact.stream().mapToDouble(p -> tooth.toTooth(p).z()).max().orElseThrow();
      assertThat(highest / tooth.lengthMm())
          .as("height of the contact of %d", fdi)
          .isGreaterThan(0.55);
    }
  }

  @ParameterizedTest
  @CsvSource({"17,16", "12,11", "11,21", "21,22", "23,24", "32,31", "31,41", "43,44"})
  void embrasuresOpenFromTheContact(int a, int b) {
    Measured measured = Casts.with(a);
    DemoTooth first = measured.cast.tooth(a);
    List<Vec3> contact = measured.contact(a, b);
    double low = contact.stream().mapToDouble(p -> first.toTooth(p).y()).min().orElseThrow();
    double high = contact.stream().mapToDouble(p -> first.toTooth(p).y()).max().orElseThrow();
    assertThat(high - low)
        .as("the contact of %d and %d is narrower than the teeth", a, b)
        .isLessThan(0.65 * first.faciolingualMm());
  }

  @ParameterizedTest
  @CsvSource({
    "17,16,1.2",
    "12,11,2",
    "11,21,2",
    "21,22,2",
    "22,23,2",
    "23,24,1.5",
    "33,32,2",
    "32,31,2",
    "31,41,2",
    "41,42,2",
    "42,43,2",
    "43,44,1.5"
  })
  void gumIsScallopedWithPapillae(int a, int b, double rise) {
    Measured measured = Casts.with(a);
    for (int fdi : new int[] {a, b}) {
      DemoTooth tooth = measured.cast.tooth(fdi);
      Vec3 towards =
          measured
              .cast
              .tooth(fdi == a ? b : a)
              .origin()
              .minus(tooth.origin())
              .across(Vec3.Z)
              .unit();
      double middle = measured.down(fdi, 0, true).margin().point().z();
      double papilla =
          tooth.margin().stream()
              .filter(p -> p.minus(tooth.origin()).dot(towards) > 0.3 * tooth.mesiodistalMm())
              .mapToDouble(Vec3::z)
              .max()
              .orElseThrow();
      assertThat(papilla - middle).as("papilla between %d and %d", a, b).isGreaterThan(rise);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {17, 16, 13, 12, 11, 21, 22, 23, 24, 27, 34, 33, 32, 31, 41, 42, 43, 44, 47})
  void theKnownMarginLiesOnTheCastWhereTheLabelsChange(int fdi) {
    Measured measured = Casts.with(fdi);
    DemoTooth tooth = measured.cast.tooth(fdi);
    Vec3 known = tooth.margin().getFirst();
    for (boolean facial : new boolean[] {true, false}) {
      Vec3 seen = measured.down(fdi, 0, facial).margin().point();
      double nearest =
          tooth.margin().stream().mapToDouble(p -> p.distance(seen)).min().orElseThrow();
      assertThat(nearest).as("margin of %d", fdi).isLessThan(0.35);
    }
    assertThat(tooth.margin().getLast().distance(known)).as("margin is closed").isLessThan(0.4);
  }

  @ParameterizedTest
  @ValueSource(ints = {17, 16, 13, 12, 11, 21, 22, 23, 24, 27, 34, 33, 32, 31, 41, 42, 43, 44, 47})
  void tissueReachesEightMillimetresBelowTheMargins(int fdi) {
    Measured measured = Casts.with(fdi);
    assertThat(measured.down(fdi, 0, true).reach()).as("facial of %d", fdi).isGreaterThan(8);
    assertThat(measured.down(fdi, 0, false).reach()).as("lingual of %d", fdi).isGreaterThan(8);
  }

  @ParameterizedTest
  @CsvSource({"44,47", "13,16", "24,27"})
  void aRidgeRunsThroughEachSpace(int before, int after) {
    Measured measured = Casts.with(before);
    Vec3 a = measured.cast.tooth(before).origin();
    Vec3 b = measured.cast.tooth(after).origin();
    for (double share = 0.35; share <= 0.66; share += 0.1) {
      Vec3 p = a.plus(b.minus(a).times(share));
      double crest = measured.gumTop(p.x(), p.y(), 3);
      assertThat(p.z() - crest).as("crest below the margins").isBetween(0.3, 4.0);
    }
  }

  @Test
  void aRidgeRunsOnBehindTheLastToothOfTheFreeEnd() {
    Measured measured = Casts.measured(Jaw.LOWER);
    double margin = measured.cast.tooth(34).origin().z();
    for (double[] p : new double[][] {{-18, -18}, {-22, -26}, {-25, -34}}) {
      assertThat(margin - measured.gumTop(p[0], p[1], 3))
          .as("crest at %s", p[1])
          .isBetween(0.0, 4.5);
    }
    // The retromolar pad rises at the back.
    assertThat(measured.gumTop(-27.5, -48, 3)).isGreaterThan(measured.gumTop(-25, -36, 3) + 2);
  }

  /**
   * Handbook of arch sizes (Moyers' atlas, from memory): molar 46–54 and 41–47, canine 33–35 and
   * 25–27.
   */
  @Test
  void archesHaveUsualWidths() {
    assertThat(width(Jaw.UPPER, 13, 23)).isBetween(32.5, 35.5);
    assertThat(width(Jaw.LOWER, 33, 43)).isBetween(24.5, 27.5);
    Vec3 first = Casts.measured(Jaw.UPPER).middle(16);
    assertThat(2 * Math.abs(first.x())).isBetween(46.0, 54.0);
  }

  /** Distance between the middles of two crowns, seen from above [mm]. */
  private static double width(Jaw jaw, int a, int b) {
    Measured measured = Casts.measured(jaw);
    return measured.middle(a).minus(measured.middle(b)).across(Vec3.Z).length();
  }

  /** The curve of Spee: cusps of the lower premolars lie below the line from incisor to molar. */
  @Test
  void theLowerArchDipsInTheMiddle() {
    Measured measured = Casts.measured(Jaw.LOWER);
    double front = measured.extent(41, Vec3.Z)[1];
    double back = measured.extent(47, Vec3.Z)[1];
    for (int fdi : new int[] {34, 44}) {
      double dip = (front + back) / 2 - measured.extent(fdi, Vec3.Z)[1];
      assertThat(dip).as("dip at %d", fdi).isBetween(0.3, 2.5);
    }
  }

  @Test
  void thePalateHasAVaultRugaeAndTuberosities() {
    Measured measured = Casts.measured(Jaw.UPPER);
    double y = measured.cast.tooth(16).origin().y();
    double vault = measured.gumTop(3, y, 1);
    // Depth from the occlusal plane, which is z = 0 (Korkhaus, from memory: 18–22 at the molars).
    assertThat(-vault).isBetween(16.0, 23.0);
    assertThat(measured.gumTop(3, y + 14, 1))
        .as("the vault rises to the front")
        .isGreaterThan(vault + 1);
    assertThat(rugae(measured)).as("rugae crossed beside the midline").isBetween(3, 6);
    for (int side = -1; side <= 1; side += 2) {
      double tuberosity = measured.gumTop(side * 27, -46, 3);
      assertThat(tuberosity).as("tuberosity").isGreaterThan(-10);
    }
  }

  /** Counts the waves of the palate along a line 4 mm beside the midline. */
  private static int rugae(Measured measured) {
    int count = 0;
    double last = 0;
    boolean up = false;
    double turned = measured.gumTop(4, -4, 0.3);
    for (double y = -4; y > -20; y -= 0.25) {
      // The vault falls about evenly; against that fall a ruga is a bump.
      double z = measured.gumTop(4, y, 0.3) + 0.45 * (-4 - y);
      if (up && z < turned - 0.25) {
        count++;
        up = false;
        turned = z;
      } else if (!up && z > turned + 0.25) {
        up = true;
        turned = z;
      }
      turned = up ? Math.max(turned, z) : Math.min(turned, z);
      last = z;
    }
    assertThat(Double.isFinite(last)).isTrue();
    return count;
  }

  @Test
  void theFloorOfTheMouthLiesDeepWithASulcusAlongTheRidge() {
    Measured measured = Casts.measured(Jaw.LOWER);
    double y = measured.cast.tooth(47).origin().y();
    double middle = measured.gumTop(0, y, 1);
    double sulcus = measured.gumTop(-17.5, y, 1);
    assertThat(measured.cast.tooth(47).origin().z() - middle).isGreaterThan(8);
    assertThat(middle - sulcus).as("the sulcus is deeper than the middle").isGreaterThan(1);
  }
}
