package rodwork.design.abutment;

import java.util.List;
import rodwork.design.arm.ArmStock;
import rodwork.design.clasp.ClaspBook;
import rodwork.design.cut.PlaneLimits;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;
import rodwork.survey.plane.PlaneRules;
import rodwork.survey.standoff.StandOffRules;

/**
 * Everything that the judgement of abutments rests on.
 *
 * @param clasps families and preferences
 * @param planes guiding planes
 * @param cuts how far planes may be cut
 * @param standOff sections of the gum
 * @param arms what arms are made of, and their forces
 * @param limits what facts are told by
 */
public record AbutmentRules(
    ClaspBook clasps,
    PlaneRules planes,
    PlaneLimits cuts,
    StandOffRules standOff,
    ArmStock arms,
    Limits limits) {

  /**
   * Limits by which a measurement becomes a yes or a no.
   *
   * @param clearOfMargin how far an arm stays from the margin
   * @param marginKnownTo how exactly the gingival margin is known
   * @param barRelief how far a bar stands off the gum
   * @param encirclement how far a clasp goes round its tooth at least
   * @param tippedFrom lean to mesial or distal from which a tooth counts as tipped
   * @param inclinedFrom lean to lingual from which a tooth counts as inclined
   * @param axisOfTooth how exactly the axis of a tooth is known from its crown
   * @param crownToRootMost greatest crown-to-root ratio of a root that is not short
   * @param aheadFrom distance in front of the axis of rotation from which a tooth counts as ahead
   * @param restClearance room to the opposing tooth that a rest wants at its seat
   * @param restDepth how deep the seat of an occlusal rest is cut
   * @param cingulumDepth how deep that of a cingulum rest is
   */
  public record Limits(
      Threshold clearOfMargin,
      Threshold marginKnownTo,
      Threshold barRelief,
      Threshold encirclement,
      Threshold tippedFrom,
      Threshold inclinedFrom,
      Threshold axisOfTooth,
      Threshold crownToRootMost,
      Threshold aheadFrom,
      Threshold restClearance,
      Threshold restDepth,
      Threshold cingulumDepth) {

    /** The values of a rulebook. */
    public static Limits from(Thresholds book) {
      return new Limits(
          book.get("tip-from-margin-least", "mm"),
          book.get("margin-known-to", "mm"),
          book.get("bar-relief", "mm"),
          book.get("encirclement-least", "degrees"),
          book.get("tooth-tipped-from", "degrees"),
          book.get("tooth-inclined-from", "degrees"),
          book.get("tooth-axis-known-to", "degrees"),
          book.get("crown-to-root-most", "1"),
          book.get("ahead-of-axis-from", "mm"),
          book.get("rest-clearance-least", "mm"),
          book.get("rest-depth", "mm"),
          book.get("cingulum-rest-depth", "mm"));
    }

    /** All of them, for listing. */
    public List<Threshold> all() {
      return List.of(
          clearOfMargin,
          marginKnownTo,
          tippedFrom,
          inclinedFrom,
          axisOfTooth,
          crownToRootMost,
          aheadFrom,
          restClearance,
          restDepth,
          cingulumDepth);
    }
  }
}
