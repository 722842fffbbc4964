package rodwork.app.operation;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.demo.DemoCast;
import rodwork.geometry.Refusal;
import rodwork.geometry.Watch;
import rodwork.geometry.io.FileFacts;
import rodwork.geometry.io.Format;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.io.RawMesh;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Opens a demo cast: the same way as any scan, for it shall show what a scan would.
 *
 * <p>The program makes it itself, which takes a few seconds. Where the launcher names a folder for
 * it ({@code -Drodwork.kept}), it is made once and then read.
 */
public final class OpenDemo {
  private OpenDemo() {}

  /** Opens the demo cast of a jaw. */
  public static OpenedCast of(Jaw jaw, Watch watch) {
    CastOptions options = new CastOptions(jaw, FrameHints.NONE, Optional.empty());
    String name = name(jaw);
    Path kept = kept(name);
    if (kept == null) {
      return OpenCast.of(raw(name, make(jaw)), options, watch);
    }
    if (!Files.isRegularFile(kept)) {
      TriangleMesh mesh = make(jaw);
      try {
        MeshFiles.write(kept, mesh, watch);
      } catch (Refusal _) {
        return OpenCast.of(raw(name, mesh), options, watch); // No room to keep it: made each time.
      }
    }
    return OpenCast.of(kept, options, watch);
  }

  /** The file of a demo cast, as PLY. */
  public static byte[] file(Jaw jaw, Watch watch) {
    Path kept = kept(name(jaw));
    try {
      if (kept != null) {
        if (!Files.isRegularFile(kept)) {
          MeshFiles.write(kept, make(jaw), watch);
        }
        return Files.readAllBytes(kept);
      }
      ByteArrayOutputStream file = new ByteArrayOutputStream();
      MeshFiles.write(file, Format.PLY, make(jaw), watch);
      return file.toByteArray();
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  private static String name(Jaw jaw) {
    return jaw == Jaw.UPPER ? "demo-upper" : "demo-lower";
  }

  private static @Nullable Path kept(String name) {
    String folder = System.getProperty("rodwork.kept");
    return folder == null ? null : Path.of(folder, name + ".ply");
  }

  private static TriangleMesh make(Jaw jaw) {
    return jaw == Jaw.UPPER ? DemoCast.upper().mesh() : DemoCast.lower().mesh();
  }

  private static RawMesh raw(String name, TriangleMesh mesh) {
    return RawMesh.of(
        mesh.copyOfCoordinates(),
        mesh.copyOfCorners(),
        FileFacts.plain(name, Format.PLY, true, mesh.triangleCount()));
  }
}
