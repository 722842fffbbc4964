package rodwork.app;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/** Where a user's own data lie, by the custom of the system. */
public final class DataFolder {
  private DataFolder() {}

  /** The folder of the case store where none is named. */
  public static Path cases() {
    return cases(
        System.getenv(), System.getProperty("os.name"), Path.of(System.getProperty("user.home")));
  }

  /**
   * Linux: {@code $XDG_DATA_HOME} or {@code ~/.local/share} (XDG Base Directory Specification);
   * macOS: {@code ~/Library/Application Support}; Windows: {@code %LOCALAPPDATA%}.
   */
  static Path cases(Map<String, String> environment, String system, Path home) {
    String named = environment.getOrDefault("RODWORK_STORE", "");
    if (!named.isBlank()) {
      return Path.of(named);
    }
    String os = system.toLowerCase(Locale.ROOT);
    Path data;
    if (os.startsWith("windows")) {
      String local = environment.getOrDefault("LOCALAPPDATA", "");
      data = local.isBlank() ? home.resolve("AppData").resolve("Local") : Path.of(local);
    } else if (os.startsWith("mac")) {
      data = home.resolve("Library").resolve("Application Support");
    } else {
      // The specification has a relative path ignored.
      Path xdg = Path.of(environment.getOrDefault("XDG_DATA_HOME", ""));
      data = xdg.isAbsolute() ? xdg : home.resolve(".local").resolve("share");
    }
    return data.resolve("rodwork").resolve("cases");
  }
}
