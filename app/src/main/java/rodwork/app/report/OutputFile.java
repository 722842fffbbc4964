package rodwork.app.report;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import rodwork.app.AppRefusal;

/**
 * Writes a file so that nobody ever sees half of it: first beside its place, then into it. A
 * failure leaves an old file as it was.
 */
public final class OutputFile {
  private OutputFile() {}

  /** What fills a file. */
  public interface Content {
    /**
     * Writes everything.
     *
     * @throws IOException if that fails
     */
    void writeTo(OutputStream out) throws IOException;
  }

  /**
   * Writes a file.
   *
   * @throws rodwork.geometry.Refusal {@code file-unwritable}
   */
  public static void write(Path file, Content content) {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    try {
      try (OutputStream out = Files.newOutputStream(part)) {
        content.writeTo(out);
      }
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException failure) {
      throw AppRefusal.FILE_UNWRITABLE.with(file, reason(failure));
    } finally {
      try {
        Files.deleteIfExists(part);
      } catch (IOException _) {
        // What made the writing fail was already told; a part that stays does no harm.
      }
    }
  }

  private static String reason(IOException failure) {
    return switch (failure) {
      case NoSuchFileException _ -> "there is no such folder";
      case FileAlreadyExistsException _ -> "a folder has that name";
      default -> {
        String said = failure.getMessage();
        yield said == null ? failure.getClass().getSimpleName() : said;
      }
    };
  }
}
