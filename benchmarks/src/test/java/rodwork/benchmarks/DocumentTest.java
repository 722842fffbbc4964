package rodwork.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class DocumentTest {
  private static final String PAGE =
      """
      # Page
      <!-- t: begin -->

      | a | b | c |
      | --- | --- | --- |
      | 1 | x | old |

      <!-- t: end -->
      rest
      """;

  @Test
  void aRowTakesThePlaceOfItsLike() {
    String page = Document.upsertRow(PAGE, "t", "| 1 | x | new |");
    assertThat(page).contains("| 1 | x | new |").doesNotContain("old").endsWith("rest\n");
  }

  @Test
  void anotherRowGoesToTheEnd() {
    String page = Document.upsertRow(PAGE, "t", "| 2 | x | new |");
    assertThat(page).contains("| 1 | x | old |\n| 2 | x | new |\n\n<!-- t: end -->");
    assertThat(Document.upsertRow(page, "t", "| 2 | x | new |")).isEqualTo(page);
  }

  @Test
  void textOutsideTheMarkersStays() {
    assertThat(Document.replaceBlock(PAGE, "t", "figures"))
        .isEqualTo("# Page\n<!-- t: begin -->\n\nfigures\n\n<!-- t: end -->\nrest\n");
  }

  @Test
  void aPageWithoutMarkersIsRefused() {
    assertThatThrownBy(() -> Document.replaceBlock("text", "t", "figures"))
        .hasMessageContaining("<!-- t: begin -->");
  }
}
