package rodwork.benchmarks;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rodwork.geometry.Watch;
import rodwork.geometry.io.Format;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.io.RawMesh;

/**
 * The casts that are measured, by name: {@link #REAL}, or a size such as {@code 10k} or {@code 1M}
 * for a {@link MadeCast}.
 */
final class Casts {
  /** A real scan of 271,567 triangles from the shared folder. */
  static final String REAL = "lower-dense";

  private static final String SHARED = "RODWORK_SHARED";

  private static final Pattern SIZE = Pattern.compile("(\\d+)([kM])");

  private Casts() {}

  /** A cast as its file holds it; made casts come by way of a binary STL too. */
  static RawMesh raw(String name) {
    if (name.equals(REAL)) {
      return MeshFiles.read(realFile(), Watch.NONE);
    }
    ByteArrayOutputStream stl = new ByteArrayOutputStream();
    try {
      MeshFiles.write(stl, Format.STL_BINARY, MadeCast.of(triangles(name)), Watch.NONE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return MeshFiles.read(stl.toByteArray(), name, Watch.NONE);
  }

  /** How many triangles a size stands for: 270,000 for {@code 270k}. */
  static int triangles(String size) {
    Matcher m = SIZE.matcher(size);
    if (!m.matches()) {
      throw new IllegalArgumentException(
          "no cast is called " + size + "; say " + REAL + " or a size such as 270k or 1M");
    }
    return Integer.parseInt(m.group(1)) * (m.group(2).equals("k") ? 1_000 : 1_000_000);
  }

  /** The file of {@link #REAL}, in the folder that the environment variable names. */
  static Path realFile() {
    String folder = System.getenv(SHARED);
    Path file = Path.of(folder == null ? "../shared" : folder).resolve("arches/lower-dense.stl");
    if (!Files.exists(file)) {
      throw new IllegalStateException(
          "no " + file.toAbsolutePath() + "; set " + SHARED + " to the folder that holds arches/");
    }
    return file;
  }
}
