package rodwork.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

class DataFolderTest {
  private static final Path HOME = Path.of("/home/user");

  @Test
  void itIsWhereTheSystemKeepsData() {
    assertThat(DataFolder.cases(Map.of(), "Linux", HOME))
        .isEqualTo(HOME.resolve(".local/share/rodwork/cases"));
    assertThat(DataFolder.cases(Map.of("XDG_DATA_HOME", "/data"), "Linux", HOME))
        .isEqualTo(Path.of("/data/rodwork/cases"));
    assertThat(DataFolder.cases(Map.of("XDG_DATA_HOME", "data"), "Linux", HOME))
        .isEqualTo(HOME.resolve(".local/share/rodwork/cases"));
    assertThat(DataFolder.cases(Map.of(), "Mac OS X", HOME))
        .isEqualTo(HOME.resolve("Library/Application Support/rodwork/cases"));
    assertThat(DataFolder.cases(Map.of(), "Windows 11", HOME))
        .isEqualTo(HOME.resolve("AppData/Local/rodwork/cases"));
    assertThat(DataFolder.cases(Map.of("RODWORK_STORE", "/s"), "Linux", HOME))
        .isEqualTo(Path.of("/s"));
  }
}
