package rodwork.app;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import org.jspecify.annotations.Nullable;

/** Where Rodwork's own files lie. */
public final class Home {
  private Home() {}

  /** The folder that holds the program: as the launcher says, else the one around its jar. */
  private static @Nullable Path folder() {
    String said = System.getProperty("rodwork.home");
    if (said != null) {
      return Path.of(said);
    }
    CodeSource source = Home.class.getProtectionDomain().getCodeSource();
    try {
      Path at = source == null ? null : Path.of(source.getLocation().toURI());
      while (at != null && !Files.exists(at.resolve("web"))) {
        at = at.getParent();
      }
      return at;
    } catch (URISyntaxException _) {
      return null;
    }
  }

  /**
   * The built bench, ready to be served.
   *
   * @throws rodwork.geometry.Refusal {@code bench-not-built}
   */
  public static Path bench() {
    Path folder = folder();
    Path bench = folder == null ? null : folder.resolve("web").resolve("dist");
    if (bench == null || !Files.isRegularFile(bench.resolve("index.html"))) {
      throw AppRefusal.BENCH_NOT_BUILT.with();
    }
    return bench;
  }
}
