package rodwork.design.load;

import java.util.List;

/**
 * A rigid denture on springs, seen from above. Immutable. Places are in the horizontal plane [mm];
 * all forces are upright, and what moves down, into the tissue, is positive.
 *
 * <p>The denture sinks by {@code s(x, y) = s₀ + a·x + b·y}. Tissue below it bears {@code F =
 * k·A·cos²γ·max(0, s)}, with k pressure over sinking, A the area and γ its slope: it gives along
 * its normal, and the upright part is counted. A rest at a distance e from the centre of resistance
 * of its tooth gives by {@code 1/kₐ + e²/k_θ} for every newton. The tip of an arm that rises in its
 * undercut pulls with {@code F = min(F_slip, F_slip/travel·rise)}. A tooth is tipped by {@code M =
 * |Σ F·r|}, with r the horizontal way from its centre of resistance to each force.
 *
 * <p>Guiding plates slide along their planes and carry nothing upright. What they do sideways is
 * left out: a base that sinks by 0.3 mm at 30 mm turns a plate 3 mm high by 0.03 mm, less than the
 * gap of a casting.
 *
 * @param teeth that rests and tips touch
 * @param rests on them: they press, and never pull
 * @param tips of retentive arms: they pull when they rise in their undercut, and never press
 * @param bed the tissue below bases and connector: it presses, and never pulls
 */
public record RigidDenture(
    List<Abutment> teeth, List<Rest> rests, List<Tip> tips, List<Patch> bed) {

  /**
   * A tooth in its socket.
   *
   * @param x of its centre of resistance
   * @param y of the same
   * @param axialNPerMm force over sinking
   * @param tippingNmm moment over angle about the centre of resistance [N·mm per radian]
   */
  public record Abutment(double x, double y, double axialNPerMm, double tippingNmm) {
    public Abutment {
      positive("stiffness along the axis", axialNPerMm);
      positive("stiffness against tipping", tippingNmm);
    }
  }

  /**
   * A rest.
   *
   * @param tooth index of the tooth
   */
  public record Rest(int tooth, double x, double y) {}

  /**
   * The tip of a retentive arm.
   *
   * @param tooth index of the tooth
   * @param nPerMm pull over rise until it slips
   * @param slipsN pull at which it slips, and which it keeps then
   */
  public record Tip(int tooth, double x, double y, double nPerMm, double slipsN) {
    public Tip {
      positive("stiffness of a tip", nPerMm);
      positive("pull of a tip", slipsN);
    }
  }

  /**
   * A piece of tissue.
   *
   * @param base index of the base on it; -1 below the connector
   * @param nPerMm its stiffness: pressure over sinking times area
   */
  public record Patch(int base, double x, double y, double nPerMm) {
    public Patch {
      positive("stiffness of tissue", nPerMm);
    }
  }

  /**
   * A force from above.
   *
   * @param newtons positive: down
   */
  public record Force(double x, double y, double newtons) {}

  public RigidDenture {
    teeth = List.copyOf(teeth);
    rests = List.copyOf(rests);
    tips = List.copyOf(tips);
    bed = List.copyOf(bed);
    for (Rest r : rests) {
      teeth.get(r.tooth);
    }
    for (Tip t : tips) {
      teeth.get(t.tooth);
    }
  }

  private static void positive(String what, double value) {
    if (!(value > 0) || !Double.isFinite(value)) {
      throw new IllegalArgumentException(what + ": " + value);
    }
  }
}
