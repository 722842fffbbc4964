package rodwork.design.plan;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.abutment.Abutments;
import rodwork.design.course.ArmShape;
import rodwork.geometry.Vec3;

/**
 * What a person chose in place of what is proposed. Immutable.
 *
 * @param rests where the rest of a tooth shall lie, and of which kind
 * @param families id of the clasp family of a tooth; {@link #NONE_THERE} for none
 * @param connector kind of the major connector
 * @param notUsed abutments that shall carry nothing
 * @param moves of points of borders of the major connector
 * @param indirectAdded rests that shall serve as indirect retainers
 * @param indirectTaken teeth whose proposed indirect retainer is taken away
 * @param arms what was made of retentive arms by hand; the others lie as they are laid out
 */
public record Choices(
    Map<ToothNumber, RestChoice> rests,
    Map<ToothNumber, String> families,
    Optional<Part.ConnectorKind> connector,
    Set<ToothNumber> notUsed,
    List<BorderMove> moves,
    Map<ToothNumber, RestChoice> indirectAdded,
    Set<ToothNumber> indirectTaken,
    Map<Abutments.ArmKey, ArmShape> arms) {
  /** For a clasp or an indirect retainer: none. */
  public static final String NONE_THERE = "none";

  public static final Choices NONE =
      new Choices(
          Map.of(), Map.of(), Optional.empty(), Set.of(), List.of(), Map.of(), Set.of(), Map.of());

  public Choices {
    rests = Map.copyOf(rests);
    families = Map.copyOf(families);
    notUsed = Set.copyOf(notUsed);
    moves = List.copyOf(moves);
    indirectAdded = Map.copyOf(indirectAdded);
    indirectTaken = Set.copyOf(indirectTaken);
    arms = Map.copyOf(arms);
  }

  /**
   * A rest.
   *
   * @param side mesial, distal, or lingual for a cingulum rest
   */
  public record RestChoice(Part.RestKind kind, Surface side) {}

  /**
   * A point of the connector's border that was moved; its neighbours follow.
   *
   * @param from where it was taken hold of, scan frame [mm]
   * @param to where it was let go; laid back on the surface
   */
  public record BorderMove(Vec3 from, Vec3 to) {
    public BorderMove {
      if (!from.isFinite() || !to.isFinite()) {
        throw new IllegalArgumentException("a border moved from " + from + " to " + to);
      }
    }
  }
}
