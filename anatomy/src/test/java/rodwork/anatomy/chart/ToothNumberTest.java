package rodwork.anatomy.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rodwork.anatomy.Jaw;

/**
 * Numbers against the published tables: FDI two-digit (ISO 3950), the American Dental Association's
 * universal system, Palmer's cross. The tables are written out here as they are printed, upper row
 * over lower row, the patient's right on the left.
 */
class ToothNumberTest {
  private static final int[] FDI_UPPER = {
    18, 17, 16, 15, 14, 13, 12, 11, 21, 22, 23, 24, 25, 26, 27, 28
  };
  private static final int[] FDI_LOWER = {
    48, 47, 46, 45, 44, 43, 42, 41, 31, 32, 33, 34, 35, 36, 37, 38
  };
  private static final int[] UNIVERSAL_UPPER = {
    1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16
  };
  private static final int[] UNIVERSAL_LOWER = {
    32, 31, 30, 29, 28, 27, 26, 25, 24, 23, 22, 21, 20, 19, 18, 17
  };
  private static final String[] PALMER_UPPER = {
    "8┘", "7┘", "6┘", "5┘", "4┘", "3┘", "2┘", "1┘", "└1", "└2", "└3", "└4", "└5", "└6", "└7", "└8"
  };
  private static final String[] PALMER_LOWER = {
    "8┐", "7┐", "6┐", "5┐", "4┐", "3┐", "2┐", "1┐", "┌1", "┌2", "┌3", "┌4", "┌5", "┌6", "┌7", "┌8"
  };

  @Test
  void theTablesAgree() {
    check(FDI_UPPER, UNIVERSAL_UPPER, PALMER_UPPER, Jaw.UPPER);
    check(FDI_LOWER, UNIVERSAL_LOWER, PALMER_LOWER, Jaw.LOWER);
  }

  private static void check(int[] fdi, int[] universal, String[] palmer, Jaw jaw) {
    for (int i = 0; i < 16; i++) {
      ToothNumber tooth = ToothNumber.of(fdi[i]);
      assertThat(tooth.in(Notation.FDI)).isEqualTo(Integer.toString(fdi[i]));
      assertThat(tooth.universal()).as("universal of %d", fdi[i]).isEqualTo(universal[i]);
      assertThat(tooth.in(Notation.UNIVERSAL)).isEqualTo(Integer.toString(universal[i]));
      assertThat(ToothNumber.ofUniversal(universal[i])).isEqualTo(tooth);
      assertThat(tooth.in(Notation.PALMER)).isEqualTo(palmer[i]);
      assertThat(tooth.jaw()).isEqualTo(jaw);
      assertThat(tooth.order()).isEqualTo(i);
      assertThat(ToothNumber.inOrder(jaw, i)).isEqualTo(tooth);
      assertThat(tooth.side()).isEqualTo(i < 8 ? Side.RIGHT : Side.LEFT);
      assertThat(tooth.mirrored().fdi()).isEqualTo(fdi[15 - i]);
    }
  }

  @Test
  void exactlyThirtyTwoNumbersExist() {
    List<Integer> existing =
        IntStream.rangeClosed(-20, 200).filter(ToothNumber::exists).boxed().toList();
    assertThat(existing)
        .containsExactlyInAnyOrderElementsOf(
            IntStream.concat(Arrays.stream(FDI_UPPER), Arrays.stream(FDI_LOWER)).boxed().toList());
    assertThatThrownBy(() -> ToothNumber.of(19))
        .hasMessageContaining("no permanent tooth has the FDI number 19");
    assertThatThrownBy(() -> ToothNumber.ofUniversal(33)).hasMessageContaining("1 to 32, not 33");
  }

  @ParameterizedTest
  @EnumSource(names = "UNKNOWN", mode = EnumSource.Mode.EXCLUDE)
  void theOrderOfAJawRunsFromRightToLeft(Jaw jaw) {
    assertThat(ToothNumber.allOf(jaw).sorted())
        .containsExactlyElementsOf(ToothNumber.allOf(jaw).toList());
    assertThat(ToothNumber.allOf(jaw).filter(ToothNumber::isThirdMolar)).hasSize(2);
  }
}
