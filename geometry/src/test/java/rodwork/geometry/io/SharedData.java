package rodwork.geometry.io;

import java.nio.file.Path;

/** Where the real scans for tests are, which are not part of the project. */
final class SharedData {
  private SharedData() {}

  /** The folder of real arches: beside the project, or where RODWORK_SHARED says. */
  static Path arches() {
    String elsewhere = System.getenv("RODWORK_SHARED");
    Path shared =
        elsewhere == null
            ? Path.of(System.getProperty("rodwork.root", "..")).resolve("../shared")
            : Path.of(elsewhere);
    return shared.resolve("arches");
  }
}
