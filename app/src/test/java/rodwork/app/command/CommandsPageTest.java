package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The generated page is the one in the repository; {@code -Drodwork.write=true} writes it anew. */
class CommandsPageTest {
  @Test
  void thePageIsNotStale() throws IOException {
    Path page = Path.of(System.getProperty("rodwork.root", ".."), "docs", "commands.md");
    if (Boolean.getBoolean("rodwork.write")) {
      Files.writeString(page, CommandsPage.text());
    }
    assertThat(Files.readString(page))
        .as("docs/commands.md; mvn test -pl app -am -Drodwork.write=true writes it anew")
        .isEqualTo(CommandsPage.text());
  }
}
