package rodwork.geometry.testing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Assumptions;

/**
 * Finds the shared folder of real scans and reference figures, which is no part of the project: in
 * {@code ../shared} beside the repository's root, else where the environment variable {@code
 * RODWORK_SHARED} says.
 */
public final class Shared {
  private Shared() {}

  /**
   * A file of the shared folder. Where it is absent the calling test is skipped, and the reason
   * printed.
   *
   * @param relative path inside the folder, such as {@code arches/lower-dense.stl}
   */
  public static Path file(String relative) {
    List<Path> tried = new ArrayList<>();
    for (Path folder : folders()) {
      Path file = folder.resolve(relative);
      if (Files.exists(file)) {
        return file;
      }
      tried.add(file);
    }
    String reason =
        "SKIPPED: no shared/" + relative + " (looked for " + tried + "; set RODWORK_SHARED)";
    System.out.println(reason);
    Assumptions.abort(reason);
    throw new AssertionError("abort() always throws");
  }

  /** The labels of an arch, one a triangle in the file's order: FDI, or 0 for gum. */
  public static int[] labels(String arch) throws IOException {
    String text = Files.readString(file("arches/" + arch + ".labels.json")).strip();
    return Arrays.stream(text.substring(1, text.length() - 1).split(",", -1))
        .mapToInt(label -> Integer.parseInt(label.strip()))
        .toArray();
  }

  private static List<Path> folders() {
    List<Path> folders = new ArrayList<>();
    String root = System.getProperty("rodwork.root");
    if (root != null) {
      folders.add(Path.of(root).resolveSibling("shared"));
    }
    String variable = System.getenv("RODWORK_SHARED");
    if (variable != null) {
      folders.add(Path.of(variable));
    }
    return folders;
  }
}
