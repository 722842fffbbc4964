package rodwork.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Words with teeth among them. */
class WordingTest {
  private record Tooth(int fdi) implements Wording.Numbered {}

  @Test
  void teethStayApartFromWordsAndNumbers() {
    Wording wording =
        Wording.of("At ", new Tooth(14), " 14 mm from ", List.of(new Tooth(24), new Tooth(25)));
    assertThat(wording.pieces())
        .containsExactly(
            new Wording.Piece.Plain("At "),
            new Wording.Piece.Tooth(14),
            new Wording.Piece.Plain(" 14 mm from "),
            new Wording.Piece.Tooth(24),
            new Wording.Piece.Plain(", "),
            new Wording.Piece.Tooth(25));
    assertThat(wording.fdi()).isEqualTo("At 14 14 mm from 24, 25");
    assertThat(wording.in(fdi -> "#" + fdi)).isEqualTo("At #14 14 mm from #24, #25");
    assertThat(Wording.of("Asked: ", wording, ".").in(fdi -> "x"))
        .isEqualTo("Asked: At x 14 mm from x, x.");
  }

  @Test
  void aTemplateKeepsItsTeethApart() {
    Wording wording =
        Wording.format(
            "%s and %s: %.1f mm of %s, %d",
            new Tooth(14),
            List.of(new Tooth(24), new Tooth(25)),
            14.04,
            new Wording.Piece.Tooth(36),
            36);
    assertThat(wording.fdi()).isEqualTo("14 and 24, 25: 14.0 mm of 36, 36");
    assertThat(wording.in(fdi -> "#" + fdi)).isEqualTo("#14 and #24, #25: 14.0 mm of #36, 36");
    assertThat(Wording.format("none at all").pieces())
        .containsExactly(new Wording.Piece.Plain("none at all"));
    assertThat(Wording.format("%s", new Tooth(11)).pieces())
        .containsExactly(new Wording.Piece.Tooth(11));
  }

  @Test
  void aTextThatMayHoldFdiNumbersIsReadInFdiAlone() {
    Wording wording = Wording.of("because: ", new Wording.Piece.Fdi("beside 14"));
    assertThat(wording.fdi()).isEqualTo("because: beside 14");
    assertThat(wording.in(fdi -> "#" + fdi)).isEqualTo("because: as on the page");
  }

  @Test
  void namesFromOutsideMayHoldAnything() {
    assertThat(Wording.format("%s of %s", "a\uE0000\uE000b", new Tooth(14)).pieces())
        .containsExactly(
            new Wording.Piece.Plain("a\uFFFD0\uFFFDb of "), new Wording.Piece.Tooth(14));
  }

  @Test
  void aPlaceNamesItsTooth() {
    assertThat(Place.of(new Tooth(36), "mid-facial").in(fdi -> "19"))
        .isEqualTo("tooth 19, mid-facial");
    assertThat(Place.of(new Tooth(36), "").words()).isEqualTo("tooth 36");
  }
}
