package rodwork.geometry.io;

import java.io.BufferedOutputStream;
import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.ZipException;
import org.jspecify.annotations.Nullable;
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
    if (!Files.exists(file)) {
      throw IoProblem.NO_SUCH_FILE.refusal(file);
    }
    if (!Files.isRegularFile(file)) {
      throw IoProblem.UNREADABLE.refusal(file, "it is no regular file");
    }
    try (InputStream in = Files.newInputStream(file)) {
      String name = String.valueOf(file.getFileName());
      return read(in, name, Files.size(file), Optional.of(file), watch);
    } catch (IOException e) {
      throw IoProblem.UNREADABLE.refusal(file, reason(e));
    }
  }

  /** Reads a file that is in memory; {@code name} is what messages call it. */
  public static RawMesh read(byte[] content, String name, Watch watch) {
    InputStream in = new ByteArrayInputStream(content);
    return read(in, name, content.length, Optional.empty(), watch);
  }

  /** Reads a stream to its end; {@code name} is what messages call it. */
  public static RawMesh read(InputStream content, String name, Watch watch) {
    return read(content, name, -1, Optional.empty(), watch);
  }

  private static RawMesh read(
      InputStream content, String name, long length, Optional<Path> file, Watch watch) {
    try (Input in = new Input(name, content, length, watch)) {
      return new Packing(watch).read(in, file, 0);
    } catch (UncheckedIOException e) {
      throw problem(name, e.getCause());
    } catch (IOException e) {
      throw problem(name, e);
    } catch (OutOfMemoryError e) {
      throw IoProblem.TOO_LARGE.refusal(name, Budget.heapLimitBytes() >> 20);
    }
  }

  private static Refusal problem(String name, @Nullable Throwable e) {
    boolean packed = e instanceof ZipException || e instanceof EOFException;
    return (packed ? IoProblem.PACKED_DAMAGED : IoProblem.UNREADABLE).refusal(name, reason(e));
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
    writeBeside(file, out -> write(out, format, mesh, watch));
  }

  /** Writes a mesh to a stream, which stays open. */
  public static void write(OutputStream out, Format format, TriangleMesh mesh, Watch watch)
      throws IOException {
    switch (format) {
      case STL_BINARY -> StlWriter.writeBinary(out, mesh, watch);
      case STL_ASCII -> StlWriter.writeText(out, mesh, watch);
      case PLY -> PlyWriter.write(out, mesh, List.of(), watch);
      case OBJ -> ObjWriter.write(out, mesh, watch);
      case THREE_MF -> ThreeMfWriter.write(out, mesh, watch);
      case GLB, GLTF, OFF ->
          throw IoProblem.ENDING_UNKNOWN.refusal(format.label(), format.ending());
    }
  }

  /**
   * Writes a binary little-endian PLY with further values at the vertices; vertices and faces in
   * the mesh's order, nothing rounded.
   *
   * @param properties each with one value a vertex, under different names
   */
  public static void writePly(
      Path file, TriangleMesh mesh, List<VertexProperty> properties, Watch watch) {
    writeBeside(file, out -> PlyWriter.write(out, mesh, properties, watch));
  }

  private interface Writing {
    void to(OutputStream out) throws IOException;
  }

  private static void writeBeside(Path file, Writing writing) {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    try {
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(part), 1 << 16)) {
        writing.to(out);
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

  /** What a failure of the file system says, in words. */
  static String reason(@Nullable Throwable failure) {
    if (failure == null) {
      return "unknown reason";
    }
    if (failure instanceof NoSuchFileException) {
      return "there is no such file or folder";
    }
    String message = failure.getMessage();
    return message == null ? failure.getClass().getSimpleName() : message;
  }
}
