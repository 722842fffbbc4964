package rodwork.design.arm;

import rodwork.geometry.Vec3;

/** The tooth as a tip meets it. */
public interface ToothSurface {
  /** Signed distance of a point to the surface [mm], positive outside. */
  double distance(Vec3 point);

  /** Outward unit normal of the surface at the place nearest to a point. */
  Vec3 normal(Vec3 point);
}
