package rodwork.survey.tripod;

import rodwork.geometry.Vec3;

/**
 * One of three marks at one height.
 *
 * @param point where it is, scan frame [mm]
 * @param triangle the triangle that holds it
 * @param slopeDeg slope of the surface there against the horizontal [degrees, 0 to 90]
 */
public record TripodMark(Vec3 point, int triangle, double slopeDeg) {}
