package rodwork.design.arm;

import java.util.ArrayList;
import java.util.List;
import rodwork.geometry.Vec3;

/**
 * An arm as a slender beam in space, rigid at its origin and loaded at its tip.
 *
 * <p>Held at one end, the arm is statically determinate: the moment at every place follows from the
 * force at the tip, and Castigliano's theorem gives the tip's displacement as an integral along the
 * curve of centroids:
 *
 * <pre>
 * C = ∫ b̂ b̂ᵀ/(E·I_away) + ô ôᵀ/(E·I_side) + t̂ t̂ᵀ/(G·J) + t tᵀ/(E·A) ds,   v̂ = v × (tip − x)
 * </pre>
 *
 * with t along the arm, o away from the tooth, b across. That is what frame elements converge to,
 * so no elements are assembled. Euler's beam: the shear of short arms is left out, which makes an
 * arm ten thicknesses long 0.5 % too stiff, and so are the changes of shape under load.
 *
 * <p>The stress is that of a straight bar; strong curvature (radius under three thicknesses) raises
 * it on the inner side by more than a tenth.
 */
public final class ArmBeam {
  /** Pieces along the arm, at least; halving them changes a tapered arm by less than 0.001 %. */
  private static final int PIECES = 200;

  /** Two-point Gauss rule on a piece. */
  private static final double GAUSS = 0.5 / Math.sqrt(3);

  private final List<Sample> samples;
  private final Vec3 tip;
  private final double poisson;
  private final Compliance perMpa;

  /** A place on the centroid line with its share of the length. */
  private record Sample(
      Vec3 at, Vec3 along, Vec3 out, Vec3 across, Section section, double ds, double fromRootMm) {}

  private ArmBeam(List<Sample> samples, Vec3 tip, double poisson) {
    this.samples = samples;
    this.tip = tip;
    this.poisson = poisson;
    this.perMpa = integrate();
  }

  /**
   * The beam of an arm.
   *
   * @param poisson Poisson's ratio of the material
   */
  public static ArmBeam of(Arm arm, double poisson) {
    return of(arm, poisson, arm.end().point());
  }

  /** The same with the load at another point of the tip's section. */
  static ArmBeam of(Arm arm, double poisson, Vec3 loaded) {
    List<Arm.Station> line = arm.line();
    double total = arm.lengthMm();
    List<Sample> samples = new ArrayList<>();
    double before = 0;
    for (int i = 1; i < line.size(); i++) {
      Arm.Station a = line.get(i - 1);
      Arm.Station b = line.get(i);
      double length = b.point().distance(a.point());
      int pieces = Math.max(1, (int) Math.ceil(PIECES * length / total));
      for (int k = 0; k < pieces; k++) {
        for (int g = -1; g <= 1; g += 2) {
          double share = (k + 0.5 + g * GAUSS) / pieces;
          samples.add(sample(arm, a, b, share, (before + share * length) / total, pieces, total));
        }
      }
      before += length;
    }
    return new ArmBeam(List.copyOf(samples), loaded, poisson);
  }

  private static Sample sample(
      Arm arm, Arm.Station a, Arm.Station b, double share, double way, int pieces, double total) {
    Vec3 step = b.point().minus(a.point());
    Section section = arm.root().towards(arm.tip(), way);
    Vec3 out = a.outward().times(1 - share).plus(b.outward().times(share)).unit();
    double perMm = 1 / step.length();
    double taper = (arm.tip().centroidMm() - arm.root().centroidMm()) / total;
    // The centroids run beside the tooth: their line turns with the normals and draws in with the
    // taper.
    Vec3 slope =
        step.times(perMm)
            .plus(b.outward().minus(a.outward()).times(section.centroidMm() * perMm))
            .plus(out.times(taper));
    double stretch = slope.length();
    Vec3 along = slope.times(1 / stretch);
    Vec3 away = out.across(along);
    if (away.length() < 1e-6) {
      away = along.anyPerpendicular();
    }
    away = away.unit();
    Vec3 at = a.point().plus(step.times(share)).plus(out.times(section.centroidMm()));
    double ds = step.length() / pieces / 2 * stretch;
    return new Sample(at, along, away, along.cross(away), section, ds, way * total);
  }

  private Compliance integrate() {
    Compliance sum = Compliance.NONE;
    double shear = 2 * (1 + poisson);
    for (Sample s : samples) {
      Vec3 lever = tip.minus(s.at);
      sum =
          sum.plus(s.across.cross(lever), s.ds / s.section.awayMm4())
              .plus(s.out.cross(lever), s.ds / s.section.sidewaysMm4())
              .plus(s.along.cross(lever), s.ds * shear / s.section.torsionMm4())
              .plus(s.along, s.ds / s.section.areaMm2());
    }
    return sum;
  }

  /**
   * Compliance of the tip [mm/N].
   *
   * @param modulusMpa Young's modulus [MPa]
   */
  public Compliance compliance(double modulusMpa) {
    if (!(modulusMpa > 0)) {
      throw new IllegalArgumentException("a modulus of " + modulusMpa + " MPa");
    }
    return perMpa.scaled(1 / modulusMpa);
  }

  /**
   * The greatest stress on the way and where it is.
   *
   * @param mpa equivalent stress after von Mises; the greatest tension and the greatest shear of a
   *     section are taken as if at one place, which errs on the safe side
   * @param fromRootMm along the curve from the origin [mm]
   */
  public record Peak(double mpa, double fromRootMm) {}

  /** The greatest stress under a force at the tip [N]. */
  public Peak peakStress(Vec3 force) {
    Peak peak = new Peak(0, 0);
    for (Sample s : samples) {
      Vec3 moment = tip.minus(s.at).cross(force);
      double tension =
          s.section.bendingMpa(moment.dot(s.across), moment.dot(s.out))
              + Math.abs(force.dot(s.along)) / s.section.areaMm2();
      double shear = s.section.shearMpa(moment.dot(s.along));
      double mpa = Math.sqrt(tension * tension + 3 * shear * shear);
      if (mpa > peak.mpa) {
        peak = new Peak(mpa, s.fromRootMm);
      }
    }
    return peak;
  }
}
