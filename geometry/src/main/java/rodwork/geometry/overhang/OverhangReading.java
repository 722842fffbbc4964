package rodwork.geometry.overhang;

import rodwork.geometry.Vec3;

/**
 * The depth of one point with what it was measured against. Positions are in the mesh's own frame.
 *
 * @param point where it was read [mm]
 * @param depthMm undercut depth u [mm]; 0 where nothing lies above, at most the cap
 * @param capped whether the true depth is more than the cap
 * @param free the nearest vertical line that comes down free, at the level of the point [mm]; the
 *     point itself where nothing lies above; its own position when capped
 * @param contact where an upright rod on that line touches the surface [mm]: the fold above it, or
 *     the line's own foot where the surface slopes down to the level; the point itself where
 *     nothing lies above or the depth is capped
 * @param unsure whether the free line passes through a hole of the mesh, or the way to it runs
 *     inside the body
 * @param noGaugeReaches whether no upright cylinder of the shank's radius, free down to the level,
 *     comes near enough to the free line
 */
public record OverhangReading(
    Vec3 point,
    double depthMm,
    boolean capped,
    Vec3 free,
    Vec3 contact,
    boolean unsure,
    boolean noGaugeReaches) {

  /** Whether a gauge can be held to this place and the reading stands for the real tooth. */
  public boolean flagged() {
    return capped || unsure || noGaugeReaches;
  }
}
