package rodwork.survey.plane;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.Arch;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.rules.Threshold;

/** Finds the surfaces of teeth that could guide, and cuts their sections. */
public final class PlaneSites {
  /** The surface is looked for within this of a section's place [mm], then farther. */
  private static final double NEAR_MM = 0.3;

  private static final double FARTHEST_MM = 1.5;

  private final TriangleMesh mesh;
  private final Vec3 up;
  private final PlaneRules rules;
  private final PlaneCutter cutter;

  public PlaneSites(Arch arch, TriangleTree tree, PlaneRules rules) {
    this.mesh = arch.mesh();
    this.up = arch.frame().z();
    this.rules = rules;
    this.cutter = new PlaneCutter(arch.topology(), tree, up);
  }

  /**
   * The site on one upright surface of a tooth.
   *
   * @param height that a plane there should have
   * @return none where the surface was not captured
   */
  public Optional<PlaneSite> site(Tooth tooth, Surface face, Threshold height) {
    Vec3 out = tooth.axes().outOf(face).across(up).unit();
    Vec3 across = up.cross(out).unit();
    double width = rules.widthShare().value() * tooth.size().faciolingualMm();
    int count = (int) rules.sections().value();
    List<PlaneSection> sections = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double off = count == 1 ? 0 : width * ((double) i / (count - 1) - 0.5);
      section(tooth, out, across, off).ifPresent(sections::add);
    }
    return sections.isEmpty()
        ? Optional.empty()
        : Optional.of(new PlaneSite(tooth.number().fdi(), face, out, height, width, sections));
  }

  /** The section through the middle of a tooth in a direction. */
  public Optional<PlaneSection> middle(Tooth tooth, Vec3 direction) {
    Vec3 out = direction.across(up).unit();
    return section(tooth, out, up.cross(out).unit(), 0);
  }

  /** The section at a way across from the middle of the tooth, through what sticks out most. */
  private Optional<PlaneSection> section(Tooth tooth, Vec3 out, Vec3 across, double off) {
    Vec3 origin = tooth.axes().origin();
    for (double reach = NEAR_MM; reach < FARTHEST_MM; reach *= 2) {
      double most = Double.NEGATIVE_INFINITY;
      Vec3 start = null;
      for (int t : tooth.copyOfTriangles()) {
        Vec3 q = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
        Vec3 way = q.minus(origin);
        if (Math.abs(way.dot(across) - off) < reach && way.dot(out) > most) {
          most = way.dot(out);
          start = q;
        }
      }
      if (start != null) {
        Vec3 place = start.plus(across.times(off - start.minus(origin).dot(across)));
        return cutter.at(place, out, tooth.axes().axis(), tooth::has);
      }
    }
    return Optional.empty();
  }
}
