package rodwork.anatomy;

import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;

/**
 * What a person says about the pose of a cast, in the scan frame; lengths do not matter.
 *
 * @param up direction to the occlusal side; null: to be found
 * @param front direction to the front, only its part across up counts; null: to be found
 */
public record FrameHints(@Nullable Vec3 up, @Nullable Vec3 front) {
  public static final FrameHints NONE = new FrameHints(null, null);

  public FrameHints {
    up = up == null ? null : up.unit();
    front = front == null ? null : front.unit();
  }
}
