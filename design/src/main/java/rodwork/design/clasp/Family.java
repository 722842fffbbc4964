package rodwork.design.clasp;

import java.util.List;
import java.util.Set;
import rodwork.anatomy.tooth.Surface;
import rodwork.rules.Threshold;

/**
 * A kind of clasp.
 *
 * @param id stable name
 * @param name for a person
 * @param surface that carries the retentive tip
 * @param tips where on it the tip may lie, best first
 * @param gauge undercut it takes [mm]
 * @param origin where on the surface the arm begins
 * @param arm how its retentive arm runs
 * @param runs where its rigid part runs
 * @param rests where its rests lie; empty: beside a bounded space, away from a free end
 * @param opposing what holds against it
 * @param material id of the material of its retentive arm
 * @param deepening how much an undercut that falls short may be deepened [mm]
 * @param clauses what it requires
 */
public record Family(
    String id,
    String name,
    Surface surface,
    List<AbutmentFacts.Spot> tips,
    Threshold gauge,
    AbutmentFacts.Spot origin,
    ArmShape arm,
    Runs runs,
    Set<RestAt> rests,
    Opposing opposing,
    String material,
    Threshold deepening,
    List<Clause> clauses) {
  /**
   * The proximal side at which the arm leaves its rest or minor connector.
   *
   * @param near the side of the space, or of the embrasure used
   */
  public Surface begins(Surface near) {
    if (arm == ArmShape.RING) {
      return near;
    }
    return switch (origin) {
      case NEAR, MIDDLE -> near;
      case FAR -> near.opposite();
      case MESIAL -> Surface.MESIAL;
      case DISTAL -> Surface.DISTAL;
    };
  }

  /** How a retentive arm runs. */
  public enum ArmShape {
    /** Around the surface of the tip from one proximal side. */
    CIRCLET,
    /** Around the other surface and the far proximal one first. */
    RING,
    /** Along the surface above the line, and back below it. */
    HAIRPIN,
    /** Over the gum and up to the tip. */
    BAR
  }

  /** Where the rigid part of an arm runs. */
  public enum Runs {
    /** With its lower edge on the survey line. */
    ABOVE_THE_LINE,
    /** With its middle on it, so that it does not act as an inclined rest. */
    ON_THE_LINE
  }

  /** Where a rest of a clasp lies. */
  public enum RestAt {
    /** On the side of the space, or of the embrasure used. */
    NEAR,
    FAR,
    /** Where the arm begins, which must not hang in the air. */
    ORIGIN,
    /** On the next tooth, across the embrasure used. */
    NEIGHBOUR
  }

  /** What holds against the tip. */
  public enum Opposing {
    /** An arm on the other surface from the side of the space. */
    ARM,
    /** The same from the far side. */
    FAR_ARM,
    /** The rigid part of the same arm. */
    ITSELF,
    /** The plate beside the space and the minor connector of the far rest. */
    PLATE
  }

  public Family {
    tips = List.copyOf(tips);
    rests = Set.copyOf(rests);
    clauses = List.copyOf(clauses);
    if (tips.isEmpty()) {
      throw new IllegalArgumentException("the family " + id + " has no place for its tip");
    }
  }
}
