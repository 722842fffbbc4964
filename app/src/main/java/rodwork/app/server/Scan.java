package rodwork.app.server;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;
import rodwork.app.operation.OpenedCast;
import rodwork.casework.store.Part;
import rodwork.geometry.Watch;
import rodwork.geometry.io.Format;
import rodwork.geometry.io.LengthUnit;
import rodwork.geometry.io.MeshFiles;

/**
 * The file that a cast came from. Immutable; the array must not be changed.
 *
 * @param name of the file
 * @param content byte for byte
 * @param part what identifies it
 * @param unit of length that a person told; empty: found from the file
 */
record Scan(String name, byte[] content, Part part, Optional<LengthUnit> unit) {
  static Scan of(String name, byte[] content, Optional<LengthUnit> unit) {
    return new Scan(name, content, Part.of(content), unit);
  }

  /** A cast that came from no file, as one. */
  static Scan made(OpenedCast cast) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      MeshFiles.write(out, Format.PLY, cast.mesh(), Watch.NONE);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return of(cast.name() + ".ply", out.toByteArray(), Optional.of(LengthUnit.MILLIMETRE));
  }
}
