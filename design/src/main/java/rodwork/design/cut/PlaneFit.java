package rodwork.design.cut;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.survey.plane.PlaneSection;
import rodwork.survey.plane.PlaneSite;

/** Fits guiding planes to one surface of a crown: the ledger and the list of cuts ask the same. */
public final class PlaneFit {
  /** A plane is tried this much lower at a time [mm]. */
  public static final double LOWER_MM = 0.1;

  /** Places up the crown are tried this much apart, as shares of it. */
  private static final double SHARE = 0.05;

  private final TriangleMesh mesh;
  private final Tooth tooth;
  private final ToothSide side;
  private final List<WallMaker.Upright> uprights;

  private PlaneFit(
      TriangleMesh mesh, Tooth tooth, ToothSide side, List<WallMaker.Upright> uprights) {
    this.mesh = mesh;
    this.tooth = tooth;
    this.side = side;
    this.uprights = uprights;
  }

  /**
   * A fit to a surface.
   *
   * @param site the surface, with its marginal ridge
   * @param axis path of placement
   */
  public static PlaneFit of(TriangleMesh mesh, Tooth tooth, PlaneSite site, Vec3 axis) {
    ToothSide side = new ToothSide(mesh, tooth, site.outward(), axis);
    List<WallMaker.Ridge> ridges = new ArrayList<>();
    for (PlaneSection section : site.sections()) {
      Vec3 ridge = side.frame.local(section.ridge());
      ridges.add(new WallMaker.Ridge(ridge.x(), ridge.z()));
    }
    return new PlaneFit(mesh, tooth, side, WallMaker.uprights(side, ridges));
  }

  /**
   * The plane of one place and height.
   *
   * @param belowMm how far below the ridge it begins
   * @param heightMm wanted; less where the crown ends first
   */
  public Optional<PlaneCut> at(double belowMm, double heightMm) {
    return WallMaker.below(side, uprights, belowMm, heightMm).map(made -> cut(made, belowMm));
  }

  /**
   * The highest plane within a limit of enamel, as near to the ridge as it can be. It is as high as
   * it is tried all over its width; where no such plane fits it may run out at the gum, and its
   * mean height counts.
   *
   * @param firstMm how far below the ridge it begins best
   * @param lastMm and at most
   * @param wantedMm height
   * @param leastMm height
   * @param mostMm enamel
   */
  public Optional<PlaneCut> within(
      double firstMm, double lastMm, double wantedMm, double leastMm, double mostMm) {
    return within(firstMm, lastMm, wantedMm, leastMm, mostMm, true)
        .or(() -> within(firstMm, lastMm, wantedMm, leastMm, mostMm, false));
  }

  private Optional<PlaneCut> within(
      double firstMm, double lastMm, double wantedMm, double leastMm, double mostMm, boolean even) {
    for (double h = wantedMm; h >= leastMm - LOWER_MM / 2; h -= LOWER_MM) {
      for (double below = firstMm; below <= lastMm + LOWER_MM / 2; below += LOWER_MM) {
        Optional<WallMaker.Made> made = WallMaker.below(side, uprights, below, h);
        if (made.isEmpty()
            || made.get().greatestMm() > mostMm
            || made.get().heightMm() < (even ? h : leastMm) - LOWER_MM / 2) {
          continue;
        }
        PlaneCut cut = cut(made.get(), below);
        if (cut.enamelMm() <= mostMm) {
          return Optional.of(cut);
        }
      }
    }
    return Optional.empty();
  }

  /**
   * The plane that an arm which braces slides along: from about half way up the crown, where it
   * lies, as far up as asked, and along the surface as far as the arm runs; the one that takes
   * least.
   *
   * @param heightMm along the path
   * @param limits where up the crown the arm may lie
   * @return empty where the crown has no such height below its ridge
   */
  public Optional<PlaneCut> forArm(double heightMm, PlaneLimits limits) {
    if (uprights.isEmpty()) {
      return Optional.empty();
    }
    WallMaker.Upright middle = uprights.get(uprights.size() / 2);
    double ridge = middle.ridge().height();
    double gum = middle.line().height().getFirst();
    double half = tooth.size().mesiodistalMm() / 3;
    double across = middle.ridge().across();
    PlaneCut best = null;
    double most = limits.armHeight().value() + SHARE / 2;
    for (double share = limits.armLowest().value(); share < most; share += SHARE) {
      double foot = gum + share * (ridge - gum);
      double below = ridge - foot - heightMm;
      Optional<PlaneCut> made =
          below < 0
              ? Optional.empty()
              : WallMaker.standing(side, across - half, across + half, foot, heightMm)
                  .filter(m -> m.heightMm() > heightMm - LOWER_MM / 2)
                  .map(m -> cut(m, below));
      if (made.isPresent() && (best == null || made.get().enamelMm() < best.enamelMm())) {
        best = made.get();
      }
    }
    return Optional.ofNullable(best);
  }

  private PlaneCut cut(WallMaker.Made made, double belowMm) {
    return new PlaneCut(
        side.frame,
        made,
        belowMm,
        PreparedCast.enamel(mesh, new PreparedCast.Applied(tooth, made.wall()), made.greatestMm()));
  }
}
