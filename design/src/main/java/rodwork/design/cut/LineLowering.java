package rodwork.design.cut;

import java.util.Optional;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The survey line lowered over one third of a surface: an upright wall from the new line up, and
 * the enamel that it takes.
 *
 * @param side the third, square to its surface
 * @param made the wall
 * @param enamelMm farthest in that it goes [mm], along its upright lines and on the vertices
 */
public record LineLowering(ToothSide side, WallMaker.Made made, double enamelMm) {

  /**
   * Lays the wall.
   *
   * @param axis path of placement
   * @param by how far down the line goes [mm]
   * @return empty where the crown ends before
   */
  public static Optional<LineLowering> of(
      TriangleMesh mesh, Tooth tooth, Surface surface, AcrossThird third, Vec3 axis, double by) {
    return ToothSide.third(mesh, tooth, surface, third, axis)
        .flatMap(
            t ->
                WallMaker.lowering(t.side(), t.from(), t.to(), by, ToothSide.HIGHEST_MM)
                    .map(
                        made ->
                            new LineLowering(
                                t.side(),
                                made,
                                PreparedCast.enamel(
                                    mesh,
                                    new PreparedCast.Applied(tooth, made.wall()),
                                    made.greatestMm()))));
  }
}
