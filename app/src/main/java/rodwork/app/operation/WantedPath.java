package rodwork.app.operation;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.app.AppRefusal;
import rodwork.geometry.Vec3;
import rodwork.survey.Tilt;

/** In which direction the denture is to leave, as a person may say it. */
public sealed interface WantedPath {
  /** The reference orientation: upright to the occlusal plane. */
  static WantedPath reference() {
    return new AtTilt(Tilt.REFERENCE);
  }

  /** A withdrawal axis in the scan frame; any length but 0. */
  record AlongAxis(Vec3 axis) implements WantedPath {}

  /** A tilt against the reference orientation. */
  record AtTilt(Tilt tilt) implements WantedPath {}

  /**
   * The axis and, where the arch frame is known, the tilt.
   *
   * @param axis withdrawal axis, unit vector in the scan frame
   * @param tilt null where the frame is not known, or right and left would be needed and are not
   */
  record Resolved(Vec3 axis, @Nullable Tilt tilt) {}

  /**
   * Finds axis and tilt on a cast.
   *
   * @throws rodwork.geometry.Refusal if a tilt needs a frame or a jaw that is not known, or the
   *     axis comes from below
   */
  default Resolved on(OpenedCast cast) {
    return switch (this) {
      case AlongAxis(Vec3 axis) -> along(axis.unit(), cast);
      case AtTilt(Tilt tilt) -> {
        ArchFrame frame = cast.frame();
        if (tilt.rightDeg() != 0 && cast.jaw() == Jaw.UNKNOWN) {
          throw AppRefusal.RIGHT_NEEDS_JAW.with(
              String.format(Locale.ROOT, "%.1f", tilt.rightDeg()));
        }
        yield new Resolved(tilt.axis(frame), tilt);
      }
    };
  }

  private static Resolved along(Vec3 axis, OpenedCast cast) {
    if (cast.finding() == null) {
      return new Resolved(axis, null);
    }
    ArchFrame frame = cast.finding().frame();
    double total = axis.angleDegTo(frame.z());
    if (total >= 90) {
      throw AppRefusal.AXIS_FROM_BELOW.with(
          String.format(Locale.ROOT, "%.4f, %.4f, %.4f", axis.x(), axis.y(), axis.z()),
          String.format(Locale.ROOT, "%.0f", total));
    }
    return new Resolved(axis, frame.jaw() == Jaw.UNKNOWN ? null : Tilt.of(axis, frame));
  }
}
