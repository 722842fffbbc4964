package rodwork.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Whether those who were timed at hidden vertices found the same ones: a fast wrong answer is worth
 * nothing. Each left a file of one byte a vertex, 1 for hidden.
 */
final class Agreement {
  private static final String WITNESS = "hidden-embree.bin";
  private static final List<String> OTHERS =
      List.of("hidden-rodwork.bin", "hidden-rodwork-rays.bin", "hidden-three-mesh-bvh.bin");

  private Agreement() {}

  /** One sentence a program that can be compared; none where Embree did not run. */
  static List<String> sentences(Path folder) throws IOException {
    List<String> sentences = new ArrayList<>();
    Path witness = folder.resolve(WITNESS);
    if (!Files.exists(witness)) {
      return sentences;
    }
    byte[] embree = Files.readAllBytes(witness);
    for (String other : OTHERS) {
      Path file = folder.resolve(other);
      if (Files.exists(file)) {
        sentences.add(sentence(name(other), embree, Files.readAllBytes(file)));
      }
    }
    return sentences;
  }

  private static String name(String file) {
    return switch (file) {
      case "hidden-rodwork.bin" -> "Rodwork's undercut depths";
      case "hidden-rodwork-rays.bin" -> "Rodwork's rays";
      default -> "three-mesh-bvh";
    };
  }

  static String sentence(String who, byte[] embree, byte[] other) {
    if (embree.length != other.length) {
      throw new IllegalArgumentException(
          who + " looked at " + other.length + " vertices, Embree at " + embree.length);
    }
    int more = 0;
    int fewer = 0;
    for (int v = 0; v < embree.length; v++) {
      more += other[v] > embree[v] ? 1 : 0;
      fewer += other[v] < embree[v] ? 1 : 0;
    }
    return String.format(
        Locale.ROOT,
        "%s and Embree agree on %.2f %% of %,d vertices; %,d are hidden to %s alone, %,d to Embree"
            + " alone.",
        who,
        100.0 * (embree.length - more - fewer) / embree.length,
        embree.length,
        more,
        who,
        fewer);
  }
}
