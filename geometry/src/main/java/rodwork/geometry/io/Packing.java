package rodwork.geometry.io;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import rodwork.geometry.Watch;

/** Takes a mesh out of its gzip or zip, if it is in one, and hands it to the format's reader. */
final class Packing {
  /** How deep a packed file may be packed again. */
  private static final int MAX_LAYERS = 3;

  private static final int MAX_ENTRIES = 1000;

  private final Watch watch;

  Packing(Watch watch) {
    this.watch = watch;
  }

  /**
   * Reads what is to come.
   *
   * @param file the file with exactly this content, if there is one
   * @param layers in how many packings the content was found
   */
  RawMesh read(Input in, Optional<Path> file, int layers) throws IOException {
    if (!in.has(1)) {
      throw IoProblem.EMPTY.refusal(in.name());
    }
    boolean gzip = FormatSniffer.isGzip(in);
    if ((gzip || FormatSniffer.isZip(in)) && layers == MAX_LAYERS) {
      throw IoProblem.PACKED_TOO_DEEP.refusal(in.name(), MAX_LAYERS);
    }
    if (gzip) {
      InputStream unzipped = new GZIPInputStream(in.asStream(), 1 << 16);
      try (Input inner =
          new Input(in.name(), new Unpacked(in.name(), unzipped, in::offset), -1, watch)) {
        return read(inner, Optional.empty(), layers + 1);
      }
    }
    if (FormatSniffer.isZip(in)) {
      return file.isPresent() ? readZip(file.get(), in.name(), layers) : readZip(in, layers);
    }
    return readMesh(in);
  }

  private static RawMesh readMesh(Input in) {
    Budget budget = Budget.ofHeap(in.name());
    Optional<Format> format = FormatSniffer.sniff(in);
    FormatSniffer.skipMark(in);
    return switch (format.orElseThrow(
        () -> IoProblem.UNKNOWN.refusal(in.name(), FormatSniffer.start(in)))) {
      case STL_BINARY -> StlBinaryReader.read(in, budget);
      case STL_ASCII -> StlAsciiReader.read(in, budget);
      case PLY -> PlyReader.read(in, budget);
      case OBJ -> ObjReader.read(in, budget);
      case OFF -> OffReader.read(in, budget);
      case GLB -> GltfReader.readBinary(in, budget);
      case GLTF -> GltfReader.readText(in, budget);
      case THREE_MF -> throw new AssertionError("a 3MF is told by its zip");
    };
  }

  /** A zip that is in no file of its own: its table stands at its end, so it goes to one first. */
  private RawMesh readZip(Input in, int layers) throws IOException {
    Path spooled = Files.createTempFile("rodwork", ".zip");
    try {
      try (OutputStream out = Files.newOutputStream(spooled)) {
        in.asStream().transferTo(out);
      }
      return readZip(spooled, in.name(), layers);
    } finally {
      Files.deleteIfExists(spooled);
    }
  }

  private RawMesh readZip(Path file, String name, int layers) throws IOException {
    long packedBytes = Files.size(file);
    try (ZipFile zip = open(file)) {
      if (ThreeMfReader.is3mf(zip)) {
        return ThreeMfReader.read(zip, packedBytes, name, Budget.ofHeap(name), watch);
      }
      List<ZipEntry> meshes = new ArrayList<>();
      List<? extends ZipEntry> entries =
          zip.stream().filter(Packing::isUserFile).limit(MAX_ENTRIES).toList();
      for (ZipEntry entry : entries) {
        try (Input in = input(zip, entry, packedBytes, name)) {
          if (in.has(1)
              && (FormatSniffer.isGzip(in)
                  || FormatSniffer.isZip(in)
                  || FormatSniffer.sniff(in).isPresent())) {
            meshes.add(entry);
          }
        }
      }
      if (meshes.isEmpty()) {
        throw IoProblem.ZIP_WITHOUT_MESH.refusal(name, entries.size());
      }
      if (meshes.size() > 1) {
        throw IoProblem.ZIP_SEVERAL_MESHES.refusal(
            name, meshes.size(), meshes.get(0).getName(), meshes.get(1).getName());
      }
      try (Input in = input(zip, meshes.getFirst(), packedBytes, name)) {
        return read(in, Optional.empty(), layers + 1);
      }
    }
  }

  private static ZipFile open(Path file) throws IOException {
    try {
      return new ZipFile(file.toFile());
    } catch (IllegalArgumentException e) {
      throw (ZipException) new ZipException(e.getMessage()).initCause(e); // names that are no text
    }
  }

  private Input input(ZipFile zip, ZipEntry entry, long packedBytes, String name)
      throws IOException {
    String inside = name + "!" + entry.getName();
    InputStream in = new Unpacked(inside, zip.getInputStream(entry), () -> packedBytes);
    return new Input(inside, in, -1, watch);
  }

  /** No folder, and none of the hidden files that some systems pack along. */
  private static boolean isUserFile(ZipEntry entry) {
    String path = entry.getName();
    return !entry.isDirectory()
        && !path.startsWith("__MACOSX/")
        && !path.substring(path.lastIndexOf('/') + 1).startsWith(".");
  }
}
