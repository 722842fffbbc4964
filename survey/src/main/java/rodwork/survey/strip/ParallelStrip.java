package rodwork.survey.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.survey.path.SiteFinder;
import rodwork.survey.plane.PlaneReading;
import rodwork.survey.plane.PlaneRules;
import rodwork.survey.plane.PlaneSection;
import rodwork.survey.plane.PlaneSite;
import rodwork.survey.plane.PlaneSites;

/**
 * The sections that a surveyor looks at first: each proximal surface next to a space, then the
 * facial surface of each likely abutment. Cut once a cast; read at any tilt by projecting them, as
 * {@link PlaneSection} does. Immutable.
 *
 * @param planes proximal surfaces next to spaces
 * @param facials facial surfaces of the likely abutments
 */
public record ParallelStrip(List<PlaneSite> planes, List<Facial> facials) {
  public static final ParallelStrip EMPTY = new ParallelStrip(List.of(), List.of());

  public ParallelStrip {
    planes = List.copyOf(planes);
    facials = List.copyOf(facials);
  }

  /**
   * The facial section through the middle of a tooth.
   *
   * @param tooth FDI number
   * @param outward facial direction [unit vector, scan frame]
   */
  public record Facial(int tooth, PlaneSection section, Vec3 outward) {}

  /**
   * One drawing of the strip.
   *
   * @param tooth FDI number
   * @param face which surface
   * @param section with the rod against it: the middle one of a proximal surface
   * @param plane what a guiding plane there would be; empty on a facial surface, and where there is
   *     no room for one
   */
  public record Reading(
      int tooth, Surface face, RodSection section, Optional<PlaneReading> plane) {}

  /** Cuts the sections of a cast whose teeth are known. */
  public static ParallelStrip of(
      Arch arch, TriangleTree tree, Dentition dentition, PlaneRules rules) {
    PlaneSites sites = new PlaneSites(arch, tree, rules);
    List<PlaneSite> planes = new ArrayList<>();
    for (Dentition.ProximalSurface proximal : dentition.proximalSurfaces()) {
      sites
          .site(
              proximal.tooth(),
              proximal.side(),
              proximal.space().freeEnd() ? rules.heightFreeEnd() : rules.heightBounded())
          .ifPresent(planes::add);
    }
    List<Facial> facials = new ArrayList<>();
    for (ToothNumber number : SiteFinder.likelyAbutments(dentition)) {
      Tooth tooth = dentition.tooth(number).orElseThrow();
      Vec3 out = tooth.axes().facial().across(arch.frame().z()).unit();
      sites
          .middle(tooth, out)
          .ifPresent(section -> facials.add(new Facial(number.fdi(), section, out)));
    }
    return new ParallelStrip(planes, facials);
  }

  /**
   * All drawings at a path, proximal surfaces first.
   *
   * @param axis the path [scan frame; any length but 0]
   */
  public List<Reading> at(Vec3 axis, PlaneRules rules) {
    Vec3 p = axis.unit();
    List<Reading> readings = new ArrayList<>();
    for (PlaneSite site : planes) {
      PlaneSection middle = site.sections().get(site.sections().size() / 2);
      readings.add(
          new Reading(
              site.tooth(),
              site.face(),
              RodSection.of(middle, p, site.outward()),
              site.read(p, rules)));
    }
    for (Facial facial : facials) {
      readings.add(
          new Reading(
              facial.tooth(),
              Surface.FACIAL,
              RodSection.of(facial.section(), p, facial.outward()),
              Optional.empty()));
    }
    return readings;
  }
}
