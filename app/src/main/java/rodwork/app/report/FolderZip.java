package rodwork.app.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** A folder as one file. */
public final class FolderZip {
  private FolderZip() {}

  /** Every file of a folder, by its way from there, in the order of their names. */
  public static byte[] of(Path folder) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    write(folder, bytes);
    return bytes.toByteArray();
  }

  private static void write(Path folder, OutputStream out) throws IOException {
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Path file : all(folder).filter(Files::isRegularFile).toList()) {
        zip.putNextEntry(new ZipEntry(folder.relativize(file).toString().replace('\\', '/')));
        Files.copy(file, zip);
        zip.closeEntry();
      }
    }
  }

  /** Deletes a folder with all that is in it. */
  public static void delete(Path folder) throws IOException {
    for (Path path : all(folder).sorted(Comparator.reverseOrder()).toList()) {
      Files.deleteIfExists(path);
    }
  }

  private static Stream<Path> all(Path folder) throws IOException {
    try (Stream<Path> found = Files.walk(folder)) {
      List<Path> sorted = found.sorted().toList();
      return sorted.stream();
    }
  }
}
