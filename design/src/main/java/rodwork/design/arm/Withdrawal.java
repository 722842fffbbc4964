package rodwork.design.arm;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import rodwork.geometry.Vec3;

/**
 * A tip followed on its way out of the undercut, step by step.
 *
 * <p>The denture moves along the path by s; where the unbent tip would lie inside the tooth, the
 * surface pushes it out by the contact force {@code f = R·(n − μ·v)}, n the outward normal, v the
 * way the tip slides (the path's part in the surface), μ the friction. R follows from the tip
 * touching the surface: {@code tip + s·p + C·f} lies on it. The denture must be pulled with {@code
 * −f·p}. Seated, gap and force are 0.
 *
 * <p>In the plane, with P the part of f across the path and α the angle of convergence, this is
 * {@code F = P·tan(α + arctan μ) = R·sin(α + arctan μ)/cos(arctan μ)}. Where {@code n·C·(n − μ·v) ≤
 * 0} no force frees the tip: it locks itself; in the plane that is α + arctan μ ≥ 90°.
 *
 * @param steps from seated outwards
 * @param toLineMm travel until the tip has come to the survey line [mm]; empty if it never does
 * @param lockedAtMm travel at which it locks itself [mm]; empty if it does not
 */
public record Withdrawal(List<Step> steps, OptionalDouble toLineMm, OptionalDouble lockedAtMm) {
  /**
   * One position on the way.
   *
   * @param travelMm how far the denture has moved along the path
   * @param contact where the tip touches [mm]
   * @param force of the tooth on the tip [N]
   * @param normalN its part along the normal, R [N]
   * @param pullN force that draws the denture at this place [N]; negative where the tooth pushes it
   *     out
   * @param deflectionMm how far the tip is bent aside
   * @param convergenceDeg angle of convergence at the contact [degrees]; negative above the survey
   *     line
   */
  public record Step(
      double travelMm,
      Vec3 contact,
      Vec3 force,
      double normalN,
      double pullN,
      double deflectionMm,
      double convergenceDeg) {}

  /** Length of a step along the path [mm]. */
  private static final double STEP_MM = 0.02;

  /** A tip that is not free by then stays held [mm]. */
  private static final double FARTHEST_MM = 8;

  /** How near to the surface the tip is brought [mm]: a thousandth of a gauge's tolerance. */
  private static final double TOUCH_MM = 1e-7;

  /** By how much the normal may still turn: 0.0006°. */
  private static final double SAME_NORMAL = 1e-5;

  private static final int MOST_TURNS = 60;

  public Withdrawal {
    steps = List.copyOf(steps);
  }

  /**
   * Follows a tip.
   *
   * @param tip where it touches the tooth seated [mm]
   * @param path withdrawal axis, unit vector from tissue to the occlusal side
   * @param compliance of the tip [mm/N]
   * @param friction coefficient of friction, not negative
   */
  public static Withdrawal of(
      ToothSurface tooth, Vec3 tip, Vec3 path, Compliance compliance, double friction) {
    List<Step> steps = new ArrayList<>();
    Vec3 n = tooth.normal(tip);
    steps.add(new Step(0, tip, Vec3.ZERO, 0, 0, 0, convergence(n, path)));
    double toLine = Double.NaN;
    double normalForce = 0;
    for (int i = 1; i * STEP_MM <= FARTHEST_MM; i++) {
      double travel = i * STEP_MM;
      Vec3 unbent = tip.plus(path.times(travel));
      if (tooth.distance(unbent) >= 0) {
        steps.add(
            new Step(travel, unbent, Vec3.ZERO, 0, 0, 0, convergence(tooth.normal(unbent), path)));
        if (Double.isNaN(toLine)) {
          toLine = travel;
        }
        break;
      }
      Vec3 at = steps.getLast().contact;
      Vec3 force = Vec3.ZERO;
      for (int turn = 0; turn < MOST_TURNS; turn++) {
        Vec3 here = tooth.normal(at);
        if (turn > 1
            && here.distance(n) < SAME_NORMAL
            && Math.abs(tooth.distance(at)) <= TOUCH_MM) {
          break;
        }
        n = here;
        Vec3 slide = path.across(n);
        Vec3 direction = slide.length() > 1e-9 ? n.minus(slide.unit().times(friction)) : n;
        Vec3 bend = compliance.times(direction);
        double give = n.dot(bend);
        if (give <= 1e-9 * compliance.along(n)) {
          return new Withdrawal(steps, optional(toLine), OptionalDouble.of(travel));
        }
        // One step of Newton on the signed distance; the normal is brought up to date each turn.
        double off = tooth.distance(unbent.plus(bend.times(normalForce)));
        normalForce = Math.max(0, normalForce - off / give);
        force = direction.times(normalForce);
        at = unbent.plus(compliance.times(force));
      }
      double converges = convergence(n, path);
      Step before = steps.getLast();
      if (Double.isNaN(toLine) && converges <= 0) {
        double share = before.convergenceDeg / (before.convergenceDeg - converges);
        toLine = before.travelMm + share * STEP_MM;
      }
      steps.add(
          new Step(
              travel,
              at,
              force,
              normalForce,
              -force.dot(path),
              compliance.times(force).length(),
              converges));
    }
    return new Withdrawal(steps, optional(toLine), OptionalDouble.empty());
  }

  private static double convergence(Vec3 normal, Vec3 path) {
    return Math.toDegrees(Math.asin(Math.clamp(-normal.dot(path), -1, 1)));
  }

  private static OptionalDouble optional(double value) {
    return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  /** The step at which the pull is greatest. */
  public Step peak() {
    Step peak = steps.getFirst();
    for (Step step : steps) {
      if (step.pullN > peak.pullN) {
        peak = step;
      }
    }
    return peak;
  }

  /** Travel at which the tip is free [mm]; empty where it is not within 8 mm, or locks itself. */
  public OptionalDouble freeAtMm() {
    Step last = steps.getLast();
    return steps.size() > 1 && last.normalN == 0 && lockedAtMm.isEmpty()
        ? OptionalDouble.of(last.travelMm)
        : OptionalDouble.empty();
  }
}
