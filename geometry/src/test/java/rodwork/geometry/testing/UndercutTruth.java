package rodwork.geometry.testing;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rodwork.geometry.Vec3;

/**
 * Undercut depths of a real arch by an independent program: brute-force rays with Embree, radius
 * step 0.01 mm, 360 directions (shared/reference/undercut). That program can only over-read: by its
 * step, and in slots between two of its directions.
 *
 * @param axis the withdrawal axis in the scan's frame
 */
public record UndercutTruth(Vec3 axis, List<Row> rows) {
  /**
   * One vertex.
   *
   * @param vertex its number in an indexed file
   * @param capped whether the depth is deeper than was looked for
   */
  public record Row(int vertex, Vec3 point, double depthMm, boolean capped) {}

  /**
   * The depths of an arch at one of its axes; the calling test is skipped where they are absent.
   *
   * @param which {@code a} or {@code b}
   */
  public static UndercutTruth of(String arch, String which) throws IOException {
    List<String> lines =
        Files.readAllLines(Shared.file("reference/undercut/" + arch + "." + which + ".csv"));
    List<Row> rows = new ArrayList<>();
    for (String line : lines.subList(2, lines.size())) {
      String[] cell = line.split(",", -1);
      rows.add(
          new Row(
              Integer.parseInt(cell[0]),
              new Vec3(number(cell[1]), number(cell[2]), number(cell[3])),
              number(cell[4]),
              !cell[5].equals("0")));
    }
    double[] p =
        Arrays.stream(lines.getFirst().replaceAll(".*p = ([-0-9.,e]+) .*", "$1").split(",", -1))
            .mapToDouble(UndercutTruth::number)
            .toArray();
    return new UndercutTruth(new Vec3(p[0], p[1], p[2]), List.copyOf(rows));
  }

  private static double number(String cell) {
    return Double.parseDouble(cell);
  }
}
