package rodwork.design.cut;

/**
 * A guiding plane laid on a crown.
 *
 * @param frame directions of its side
 * @param made the wall
 * @param belowMm how far below the marginal ridge it begins
 * @param enamelMm farthest in that it goes, along its upright lines and on the vertices
 */
public record PlaneCut(CutFrame frame, WallMaker.Made made, double belowMm, double enamelMm) {}
