package rodwork.anatomy;

import java.util.List;
import rodwork.geometry.Vec3;

/**
 * An arch frame and what speaks for it.
 *
 * @param frame the frame, with its ± degrees
 * @param cues what each sign of the pose says by itself
 */
public record FrameFinding(ArchFrame frame, List<Cue> cues) {
  /** Within these the frame may be used without a second look [± degrees]. */
  private static final double SURE_UP_DEG = 8;

  private static final double SURE_FRONT_DEG = 12;

  public FrameFinding {
    cues = List.copyOf(cues);
  }

  /** The same finding once the jaw is known. */
  public FrameFinding withJaw(Jaw jaw) {
    return new FrameFinding(frame.withJaw(jaw), cues);
  }

  /** The same finding, its occlusal direction known so well [± degrees]. */
  public FrameFinding withUpUncertainty(double upDeg) {
    return new FrameFinding(
        new ArchFrame(
            frame.origin(), frame.y(), frame.z(), frame.jaw(), upDeg, frame.frontUncertaintyDeg()),
        cues);
  }

  /** Whether no second look is needed; where it is not, show the ± and ask. */
  public boolean confident() {
    return frame.upUncertaintyDeg() <= SURE_UP_DEG && frame.frontUncertaintyDeg() <= SURE_FRONT_DEG;
  }

  /**
   * One sign of the pose, independent of the others.
   *
   * @param name what it is, in a few words
   * @param direction what it takes for up or front, unit vector in the scan frame
   * @param offDeg its angle to the direction that was settled on [degrees]
   */
  public record Cue(String name, Vec3 direction, double offDeg) {}
}
