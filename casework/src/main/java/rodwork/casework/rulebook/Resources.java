package rodwork.casework.rulebook;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** Files that ship inside the program. */
final class Resources {
  private Resources() {}

  static String text(String name) {
    try (InputStream in = Objects.requireNonNull(Resources.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }
}
