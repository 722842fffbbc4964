package rodwork.anatomy.tooth;

import rodwork.geometry.Vec3;

/**
 * The room between two teeth.
 *
 * @param mm shortest distance of their crowns [mm]; 0 where they touch
 * @param from its end on the first tooth [mm]
 * @param to its end on the second
 */
public record ToothGap(double mm, Vec3 from, Vec3 to) {
  public static ToothGap between(Tooth first, Tooth second) {
    Gap gap = Gap.between(first.crown(), second.crown());
    return new ToothGap(gap.mm(), gap.from(), gap.to());
  }
}
