package rodwork.casework.store;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.LocalDateTime;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * Writes a zip file whole or not at all: beside its place, forced to the disk, then moved. Entries
 * carry one fixed time, so the same content gives the same file.
 */
final class ZipOut implements AutoCloseable {
  private static final LocalDateTime TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

  private final ZipOutputStream zip;

  private ZipOut(OutputStream out) {
    this.zip = new ZipOutputStream(out);
  }

  /** What goes into the file. */
  interface Content {
    void into(ZipOut zip) throws IOException;
  }

  static void write(Path file, Content content) {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    try {
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(part), 1 << 16);
          ZipOut zip = new ZipOut(out)) {
        content.into(zip);
      }
      try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException failure) {
      throw StoreProblem.FILE_UNWRITABLE.with(file, Failures.reason(failure));
    } finally {
      try {
        Files.deleteIfExists(part);
      } catch (IOException _) {
        // What made the writing fail was already told; a part that stays does no harm.
      }
    }
  }

  void put(String name, byte[] bytes) throws IOException {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(TIME);
    zip.putNextEntry(entry);
    zip.write(bytes);
    zip.closeEntry();
  }

  @Override
  public void close() throws IOException {
    zip.close();
  }
}
