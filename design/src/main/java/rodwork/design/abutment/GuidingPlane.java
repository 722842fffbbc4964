package rodwork.design.abutment;

import java.util.Optional;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.cut.PlaneCut;
import rodwork.rules.Threshold;
import rodwork.survey.plane.PlanePatch;
import rodwork.survey.plane.PlaneReading;

/**
 * A surface of an abutment that guides, or could. One plane alone guides nothing; they count in
 * pairs.
 *
 * @param face which surface
 * @param wantedHeight height that a plane there should have
 * @param there what is parallel to the path as the tooth stands; empty: nothing
 * @param couldBe the surface that could be cut; empty: there is no room for a plane
 * @param asWanted the plane at the place and height of the rules, whatever it takes
 * @param within the plane that the list of cuts makes: the highest within the enamel that may be
 *     taken; empty: none fits
 * @param least height of a plane that is cut
 * @param most enamel that may be taken
 */
public record GuidingPlane(
    Surface face,
    Threshold wantedHeight,
    Optional<PlanePatch> there,
    Optional<PlaneReading> couldBe,
    Optional<PlaneCut> asWanted,
    Optional<PlaneCut> within,
    Threshold least,
    Threshold most) {
  /**
   * What a plane takes: the one that would be cut, else the one that is wanted [mm]; empty where
   * the wall is lower than any plane.
   */
  public Optional<Double> enamelMm() {
    return within
        .or(() -> asWanted.filter(cut -> cut.made().heightMm() >= least.value()))
        .map(PlaneCut::enamelMm);
  }
}
