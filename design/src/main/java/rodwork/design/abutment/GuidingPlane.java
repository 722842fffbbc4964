package rodwork.design.abutment;

import java.util.Optional;
import rodwork.anatomy.tooth.Surface;
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
 * @param couldBe the plane that could be cut, and what it takes; empty: there is no room for one
 */
public record GuidingPlane(
    Surface face,
    Threshold wantedHeight,
    Optional<PlanePatch> there,
    Optional<PlaneReading> couldBe) {}
