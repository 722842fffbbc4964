package rodwork.geometry.io;

import java.io.BufferedOutputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import rodwork.geometry.Refusal;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Reads mesh files of any known format, and writes some.
 *
 * <p>Every failure is a {@link Refusal} from {@link IoProblem}; a stop through the watch is a
 * {@link java.util.concurrent.CancellationException}.
 */
public final class MeshFiles {
  private MeshFiles() {}

  /** Reads a file; the format is told by its content. */
  public static RawMesh read(Path file, Watch watch) {
    String name = String.valueOf(file.getFileName());
    if (!Files.exists(file)) {
      throw IoProblem.NO_SUCH_FILE.refusal(file);
    }
    try (InputStream in = Files.newInputStream(file)) {
      return read(in, name, Files.size(file), watch);
    } catch (IOException e) {
      throw IoProblem.UNREADABLE.refusal(file, reason(e));
    }
  }

  /** Reads a file that is in memory; {@code name} is what messages call it. */
  public static RawMesh read(byte[] content, String name, Watch watch) {
    return read(new ByteArrayInputStream(content), name, content.length, watch);
  }

  /** Reads a stream to its end; {@code name} is what messages call it. */
  public static RawMesh read(InputStream content, String name, Watch watch) {
    return read(content, name, -1, watch);
  }

  private static RawMesh read(InputStream content, String name, long length, Watch watch) {
    try (Input in = new Input(name, content, length, watch)) {
      return switch (FormatSniffer.sniff(in)) {
        case STL_BINARY -> StlBinaryReader.read(in, Budget.ofHeap(name));
        default -> throw new AssertionError("no reader");
      };
    } catch (UncheckedIOException e) {
      throw IoProblem.UNREADABLE.refusal(name, reason(e));
    } catch (OutOfMemoryError e) {
      throw IoProblem.TOO_LARGE.refusal(name, Runtime.getRuntime().maxMemory() >> 21);
    }
  }

  /**
   * Writes a mesh in the format that the file name's ending stands for (.stl gives binary STL),
   * first beside the file and then in its place, so that a failure leaves the old file as it was.
   */
  public static void write(Path file, TriangleMesh mesh, Watch watch) {
    write(file, formatOf(file), mesh, watch);
  }

  /** Writes a mesh in a given format, whatever the file is called. */
  public static void write(Path file, Format format, TriangleMesh mesh, Watch watch) {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    try {
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(part), 1 << 16)) {
        write(out, format, mesh, watch);
      }
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw IoProblem.UNWRITABLE.refusal(file, reason(e));
    } finally {
      try {
        Files.deleteIfExists(part);
      } catch (IOException e) {
        // What made the writing fail was already told; a part that stays does no harm.
      }
    }
  }

  /** Writes a mesh to a stream, which stays open. */
  public static void write(OutputStream out, Format format, TriangleMesh mesh, Watch watch)
      throws IOException {
    switch (format) {
      case STL_BINARY -> StlWriter.writeBinary(out, mesh, watch);
      default -> throw IoProblem.ENDING_UNKNOWN.refusal(format.label(), format.ending());
    }
  }

  /** The format that a file name's ending stands for when writing. */
  public static Format formatOf(Path file) {
    String name = String.valueOf(file.getFileName());
    for (Format format : Format.values()) {
      if (format.written() && name.toLowerCase(Locale.ROOT).endsWith(format.ending())) {
        return format;
      }
    }
    int dot = name.lastIndexOf('.');
    throw IoProblem.ENDING_UNKNOWN.refusal(name, dot < 0 ? "(none)" : name.substring(dot));
  }

  private static String reason(Exception failure) {
    Throwable cause = failure.getCause() == null ? failure : failure.getCause();
    if (cause instanceof NoSuchFileException) {
      return "there is no such file or folder";
    }
    String message = cause.getMessage();
    return message == null ? cause.getClass().getSimpleName() : message;
  }
}
