package rodwork.geometry.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.io.ByteArrayOutputStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.Timeout.ThreadMode;
import rodwork.geometry.Refusal;
import rodwork.geometry.Watch;

/**
 * Thousands of damaged files: each is read to a sound mesh or refused, within bounds of time and
 * memory. 5,000 files; with {@code -Drodwork.long=true} 100,000.
 */
class ReaderFuzzTest {
  private static final long SEED = 20_260_101;
  private static final long LIMIT_MS = 5_000;

  /** The samples have 300 to 2,000 bytes; windows and parsers cost some hundred kilobytes. */
  private static final long LIMIT_BYTES = 32L << 20;

  private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  @Test
  @Timeout(value = 20, unit = TimeUnit.MINUTES, threadMode = ThreadMode.SEPARATE_THREAD)
  void damagedFilesAreReadSoundlyOrRefused() throws Exception {
    int files = Boolean.getBoolean("rodwork.long") ? 100_000 : 5_000;
    Mutator mutator = new Mutator(SEED);
    Map<String, Integer> outcomes = new TreeMap<>();
    long slowestMs = 0;
    long largestBytes = 0;
    for (int i = 0; i < files; i++) {
      byte[] content = mutator.next();
      long bytesBefore = threads.getCurrentThreadAllocatedBytes();
      long start = System.nanoTime();
      String outcome = outcome(content, i);
      long ms = (System.nanoTime() - start) / 1_000_000;
      long bytes = threads.getCurrentThreadAllocatedBytes() - bytesBefore;
      outcomes.merge(outcome, 1, Integer::sum);
      slowestMs = Math.max(slowestMs, ms);
      largestBytes = Math.max(largestBytes, bytes);
      if (ms > LIMIT_MS || bytes > LIMIT_BYTES) {
        throw failure(content, i, ms + " ms, " + bytes + " bytes: " + outcome, null);
      }
    }
    System.out.printf(
        "%,d damaged files: slowest %d ms, largest %d kB; %s%n",
        files, slowestMs, largestBytes >> 10, outcomes);
    int read = outcomes.getOrDefault("read", 0);
    assertThat(read).as("some damage is harmless").isBetween(files / 20, files / 2);
    assertThat(outcomes).as("kinds of refusals met").hasSizeGreaterThan(25);
  }

  private static String outcome(byte[] content, int number) {
    long deadline = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(LIMIT_MS);
    Watch watch =
        new Watch() {
          @Override
          public void progress(String what, double share) {}

          @Override
          public boolean cancelled() {
            return System.nanoTime() > deadline;
          }
        };
    try {
      RawMesh mesh = MeshFiles.read(content, "scan", watch);
      checkSound(mesh, content.length);
      if (number % 10 == 0 && mesh.allFinite()) {
        checkComesBack(mesh);
      }
      return "read";
    } catch (Refusal refusal) {
      assertThat(refusal.getMessage()).startsWith("scan").doesNotContain("null");
      return refusal.code();
    } catch (Throwable crash) {
      throw failure(content, number, "crash", crash);
    }
  }

  private static void checkSound(RawMesh mesh, int fileBytes) {
    FileFacts facts = mesh.facts();
    long used = facts.faces() - facts.recordsDropped();
    assertThat((long) mesh.triangleCount())
        .as("triangles of the faces")
        .isBetween(used, facts.polygonsTriangulated() == 0 ? used : Long.MAX_VALUE);
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        assertThat(mesh.corner(t, k)).isBetween(0, mesh.vertexCount() - 1);
      }
    }
    if (mesh.hasFaceColours()) {
      mesh.faceColour(mesh.triangleCount() - 1);
    }
    if (mesh.hasVertexColours()) {
      mesh.vertexColour(mesh.vertexCount() - 1);
    }
    boolean plain = facts.format() != Format.THREE_MF && !facts.name().contains("!");
    if (plain && facts.format() != Format.GLB && facts.format() != Format.GLTF) {
      // A corner takes two bytes as text; packing and placing again are the only ways to more.
      assertThat(mesh.triangleCount()).isLessThan(20 * fileBytes);
    }
  }

  private static void checkComesBack(RawMesh mesh) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    MeshFiles.write(out, Format.PLY, mesh.toMesh(), Watch.NONE);
    assertThat(Samples.read(out.toByteArray()).toMesh()).isEqualTo(mesh.toMesh());
  }

  /** Keeps the file, so that it can become a test of its own. */
  private static AssertionError failure(
      byte[] content, int number, String what, @Nullable Throwable cause) {
    try {
      Path kept = Files.write(Files.createTempFile("fuzz", ".bin"), content);
      return new AssertionError(
          "seed " + SEED + ", file " + number + ", kept as " + kept + ": " + what, cause);
    } catch (java.io.IOException e) {
      return new AssertionError("seed " + SEED + ", file " + number + ": " + what, cause);
    }
  }
}
