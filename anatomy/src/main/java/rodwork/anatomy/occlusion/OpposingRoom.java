package rodwork.anatomy.occlusion;

import java.util.Collection;
import java.util.Optional;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.geometry.Vec3;
import rodwork.rules.Reading;

/**
 * What is known of the room to the opposing teeth: what the chart says of a tooth goes before what
 * an opposing scan shows that was laid over the cast. Immutable.
 *
 * @param clearance to the opposing scan; empty: none was laid
 * @param knownToMm how exactly a room to it is known [mm]
 */
public record OpposingRoom(Optional<Clearance> clearance, double knownToMm) {
  /** No opposing scan: only the chart can tell. */
  public static final OpposingRoom NOT_SCANNED = new OpposingRoom(Optional.empty(), 0);

  /** The least room over places of one tooth [mm], negative where the two run into each other. */
  public Reading over(ToothEntry entry, Collection<Vec3> places) {
    return entry.opposing().clearanceMm().isPresent()
        ? Reading.mm(entry.opposing().clearanceMm().getAsDouble(), 0)
        : measured(places);
  }

  /**
   * The same by the scan alone. A place over which it does not lie tells nothing: there the gaps
   * between the opposing teeth are.
   */
  public Reading measured(Collection<Vec3> places) {
    if (clearance.isEmpty()) {
      return new Reading.NotKnown("no opposing scan, and the chart does not say");
    }
    return places.stream()
        .mapToDouble(clearance.get()::at)
        .filter(room -> !Double.isNaN(room))
        .min()
        .stream()
        .mapToObj(room -> Reading.mm(room, knownToMm))
        .findFirst()
        .orElseGet(
            () ->
                new Reading.NotKnown(
                    "the opposing scan does not lie over this place, and the chart does not say"));
  }
}
