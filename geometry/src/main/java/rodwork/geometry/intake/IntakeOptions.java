package rodwork.geometry.intake;

import java.util.Optional;
import rodwork.geometry.io.LengthUnit;

/**
 * What the user may decide about the intake of a scan.
 *
 * @param unit the file's unit of length; empty to let it be found
 * @param islandShare loose pieces with less than this share of the whole area are removed [0 to 1];
 *     0 keeps all
 * @param pinholeEdges holes with at most this many edges are filled, at most 4; 0 fills none
 */
public record IntakeOptions(Optional<LengthUnit> unit, double islandShare, int pinholeEdges) {
  /** A third of the crown of one tooth on a whole arch; common practice, no published source. */
  public static final double DEFAULT_ISLAND_SHARE = 0.01;

  /** One or two missing triangles. */
  public static final int DEFAULT_PINHOLE_EDGES = 4;

  public IntakeOptions {
    if (!(islandShare >= 0 && islandShare < 1)) {
      throw new IllegalArgumentException("the island share must be in [0, 1): " + islandShare);
    }
    if (pinholeEdges < 0 || pinholeEdges > 4) {
      throw new IllegalArgumentException(
          "pinholes have at most 4 edges, 0 for none: " + pinholeEdges);
    }
  }

  public static IntakeOptions usual() {
    return new IntakeOptions(Optional.empty(), DEFAULT_ISLAND_SHARE, DEFAULT_PINHOLE_EDGES);
  }

  public IntakeOptions withUnit(LengthUnit given) {
    return new IntakeOptions(Optional.of(given), islandShare, pinholeEdges);
  }
}
