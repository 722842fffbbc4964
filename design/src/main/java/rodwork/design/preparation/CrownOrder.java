package rodwork.design.preparation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.clasp.Family;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;

/**
 * A surveyed crown as an order of its own: what its contours shall be at the path (McCracken, from
 * memory). It is made before the framework.
 *
 * @param tooth that gets it
 * @param decided whether the chart says that it is made; else it is only to be considered
 * @param because what cannot be had by cutting, or what the chart says, a sentence each
 * @param planes guiding planes in it
 * @param rests seats in it
 * @param undercut for the tip of the clasp; empty where the plan has no clasp there
 */
public record CrownOrder(
    ToothNumber tooth,
    boolean decided,
    List<String> because,
    List<Plane> planes,
    List<Part.Rest> rests,
    Optional<Undercut> undercut) {
  public CrownOrder {
    because = List.copyOf(because);
    planes = List.copyOf(planes);
    rests = List.copyOf(rests);
  }

  /**
   * A guiding plane.
   *
   * @param surface that it is made on
   * @param heightMm along the path, from the marginal ridge
   */
  public record Plane(Surface surface, double heightMm) {}

  /**
   * An undercut for a tip.
   *
   * @param place such as mesio-facial
   * @param gaugeMm at that place, exactly
   * @param family name of the clasp
   * @param fromMarginMm least distance of the tip from the margin
   */
  public record Undercut(String place, double gaugeMm, String family, double fromMarginMm) {}

  /** Whether the chart says that a tooth gets a surveyed crown. */
  static boolean decided(Dentition dentition, ToothNumber tooth) {
    return dentition.chart().tooth(tooth).restoration() == ToothEntry.Restoration.SURVEYED_CROWN;
  }

  static CrownOrder of(
      ToothNumber tooth, boolean decided, List<String> because, Plan plan, double fromMarginMm) {
    List<Plane> planes = new ArrayList<>();
    for (Part.GuidingPlate plate : plan.plates()) {
      if (plate.tooth().equals(tooth)) {
        planes.add(new Plane(plate.side(), plate.plane().wantedHeight().value()));
      }
    }
    return new CrownOrder(
        tooth,
        decided,
        because,
        planes,
        plan.rests(tooth),
        plan.clasp(tooth).map(c -> undercut(c, fromMarginMm)));
  }

  private static Undercut undercut(Part.Clasp clasp, double fromMarginMm) {
    Family family = clasp.judgement().family();
    AcrossThird third = clasp.judgement().tip().orElse(AcrossThird.MIDDLE);
    return new Undercut(third.on(family.surface()), clasp.gaugeMm(), family.name(), fromMarginMm);
  }
}
