package rodwork.app.picture;

import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * What a picture shows. All directions and points are in the scan frame.
 *
 * @param mesh the cast [mm]
 * @param depthMm undercut depth of each vertex [mm]
 * @param base whether a triangle is plaster base; no undercut is shown there
 * @param axis withdrawal axis, unit vector to the occlusal side
 * @param front unit vector to the patient's front
 * @param frontUp whether the front is up in the plan (upper casts) or down (lower casts)
 * @param sidesKnown whether right and left are known, so that the views may be named by them
 * @param curves survey lines and gauge marks
 * @param title what the picture is of
 * @param notes further lines below the title
 */
public record PictureScene(
    TriangleMesh mesh,
    IntToDoubleFunction depthMm,
    IntPredicate base,
    Vec3 axis,
    Vec3 front,
    boolean frontUp,
    boolean sidesKnown,
    List<PictureCurve> curves,
    String title,
    List<String> notes) {

  public PictureScene {
    curves = List.copyOf(curves);
    notes = List.copyOf(notes);
  }
}
