package rodwork.anatomy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The real arches beside the project, for tests alone: binary PLY of three floats and one list,
 * binary STL, and labels. Read here by a few lines of its own, so that these tests do not depend on
 * the readers under test elsewhere.
 *
 * @param labels FDI number of each triangle, 0 for gum; empty where there are none
 */
public record SharedArch(String name, TriangleMesh mesh, int[] labels) {
  static final String[] LABELLED = {
    "upper-full",
    "upper-15-24",
    "upper-16-23",
    "upper-17-27",
    "upper-14",
    "upper-11",
    "lower-35",
    "lower-35-37-47"
  };

  public static SharedArch load(String name) {
    Path folder = folder();
    assumeTrue(
        Files.isDirectory(folder),
        "skipped: no shared arches at " + folder + "; set RODWORK_SHARED to their folder");
    try {
      Path ply = folder.resolve(name + ".ply");
      TriangleMesh mesh = Files.exists(ply) ? ply(ply) : stl(folder.resolve(name + ".stl"));
      Path labels = folder.resolve(name + ".labels.json");
      int[] fdi = Files.exists(labels) ? labels(labels) : new int[0];
      if (fdi.length > 0) {
        assertThat(fdi).hasSize(mesh.triangleCount());
      }
      return new SharedArch(name, mesh, fdi);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Path folder() {
    String given = System.getenv("RODWORK_SHARED");
    Path shared =
        given != null
            ? Path.of(given)
            : Path.of(System.getProperty("rodwork.root", ".."), "..", "shared");
    return shared.resolve("arches");
  }

  private static int[] labels(Path file) throws IOException {
    String text = Files.readString(file).strip();
    return Arrays.stream(text.substring(1, text.length() - 1).split(",", -1))
        .mapToInt(s -> Integer.parseInt(s.strip()))
        .toArray();
  }

  private static TriangleMesh ply(Path file) throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    String head = new String(bytes, 0, Math.min(bytes.length, 1000), StandardCharsets.ISO_8859_1);
    int body = head.indexOf("end_header\n") + 11;
    int vertices = count(head, "element vertex ");
    int faces = count(head, "element face ");
    ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).position(body);
    double[] xyz = new double[3 * vertices];
    for (int i = 0; i < xyz.length; i++) {
      xyz[i] = in.getFloat();
    }
    int[] corners = new int[3 * faces];
    for (int t = 0; t < faces; t++) {
      assertThat(in.get()).isEqualTo((byte) 3);
      for (int k = 0; k < 3; k++) {
        corners[3 * t + k] = in.getInt();
      }
    }
    return TriangleMesh.of(xyz, corners);
  }

  private static int count(String head, String key) {
    int at = head.indexOf(key) + key.length();
    return Integer.parseInt(head.substring(at, head.indexOf('\n', at)));
  }

  private static TriangleMesh stl(Path file) throws IOException {
    ByteBuffer in =
        ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN).position(80);
    int triangles = in.getInt();
    record Key(float x, float y, float z) {}
    Map<Key, Integer> known = new HashMap<>();
    double[] xyz = new double[9 * triangles];
    int[] corners = new int[3 * triangles];
    for (int t = 0; t < triangles; t++) {
      in.position(84 + 50 * t + 12);
      for (int k = 0; k < 3; k++) {
        Key key = new Key(in.getFloat(), in.getFloat(), in.getFloat());
        int next = known.size();
        Integer v = known.putIfAbsent(key, next);
        if (v == null) {
          xyz[3 * next] = key.x;
          xyz[3 * next + 1] = key.y;
          xyz[3 * next + 2] = key.z;
        }
        corners[3 * t + k] = v == null ? next : v;
      }
    }
    return TriangleMesh.of(Arrays.copyOf(xyz, 3 * known.size()), corners);
  }
}
