package rodwork.survey;

import java.util.Locale;
import java.util.Optional;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.overhang.Overhang;

/**
 * Where a gauge sits in the section through a wanted place.
 *
 * @param place the gauge mark in that section, if there is one
 * @param deepestMm the deepest reading on the way down from the survey line [mm]
 * @param why why there is no mark; empty where there is
 */
public record Seat(Optional<Place> place, double deepestMm, String why) {
  /**
   * A place on the surface with its reading.
   *
   * @param point scan frame [mm]
   * @param triangle that holds it
   * @param reading what the rod tells there
   */
  public record Place(Vec3 point, int triangle, RodReading reading) {}

  /** A section is followed this far from the wanted place, up and down [mm]. */
  private static final double MOST_WAY_MM = 12;

  static Seat of(
      Surveyor surveyor,
      Overhang overhang,
      Gauges gauges,
      Vec3 point,
      int triangle,
      double gaugeMm) {
    Vec3 axis = overhang.axis();
    Vec3 out = outward(surveyor, overhang, point, triangle);
    if (out.length() < 1e-9) {
      return new Seat(Optional.empty(), 0, "the surface lies level here: no section to follow");
    }
    SectionWalk walk = new SectionWalk(surveyor.topology(), point, axis.cross(out).unit());
    Search search = new Search(overhang, gaugeMm, surveyor.rules());
    // First up to the free surface, so that the first crossing on the way down is the upper one.
    Step start = new Step(point, triangle, overhang.depthAt(point));
    Step top = start;
    if (start.depth > 0) {
      Step[] last = {start};
      walk.walk(
          triangle,
          axis,
          (q, a, b, s, t, length) -> {
            last[0] = new Step(q, t, overhang.depthAt(q));
            return last[0].depth > 0 && length < MOST_WAY_MM;
          });
      top = last[0];
    }
    search.begin(top);
    new SectionWalk(surveyor.topology(), top.point, axis.cross(out).unit())
        .walk(
            top.triangle,
            axis.times(-1),
            (q, a, b, s, t, length) ->
                search.next(new Step(q, t, overhang.depthAt(q))) && length < MOST_WAY_MM);
    if (search.found == null) {
      String why =
          search.deepest > 0
              ? String.format(Locale.ROOT, "deepest here %.2f mm", search.deepest)
              : "no undercut in this section";
      return new Seat(Optional.empty(), search.deepest, why);
    }
    Step at = search.found;
    RodReading reading = RodReading.of(surveyor, overhang, gauges, at.point, at.triangle);
    if (reading.overhang().flagged()) {
      return new Seat(
          Optional.empty(),
          search.deepest,
          String.format(
              Locale.ROOT,
              "deepest here %.2f mm; the gauge's place beyond it %s",
              search.deepest,
              reading.overhang().noGaugeReaches() ? "is out of its reach" : "is unsure"));
    }
    return new Seat(Optional.of(new Place(at.point, at.triangle, reading)), search.deepest, "");
  }

  /** Horizontal unit vector away from the tooth; zero where the surface lies level. */
  static Vec3 outward(Surveyor surveyor, Overhang overhang, Vec3 point, int triangle) {
    Vec3 axis = overhang.axis();
    Vec3 out = overhang.read(point).free().minus(point).across(axis);
    if (out.length() < 1e-6) {
      TriangleMesh mesh = surveyor.topology().mesh();
      Vec3 n = Vec3.ZERO;
      for (int k = 0; k < 3; k++) {
        n = n.plus(surveyor.normals().normal(mesh.corner(triangle, k)));
      }
      out = n.across(axis);
    }
    return out.length() < 1e-6 ? Vec3.ZERO : out.unit();
  }

  private record Step(Vec3 point, int triangle, double depth) {}

  /** Looks for the first place on the way down at which the depth comes to the gauge. */
  private static final class Search {
    private final Overhang overhang;
    private final double gauge;
    private final SurveyRules rules;
    private Step last = new Step(Vec3.ZERO, -1, 0);
    private double deepest;
    private @org.jspecify.annotations.Nullable Step found;

    Search(Overhang overhang, double gauge, SurveyRules rules) {
      this.overhang = overhang;
      this.gauge = gauge;
      this.rules = rules;
    }

    void begin(Step step) {
      last = step;
      deepest = step.depth;
    }

    boolean next(Step step) {
      if (last.depth < gauge && step.depth >= gauge) {
        GaugeMarks.Crossing crossing = GaugeMarks.bisect(overhang, last.point, step.point, gauge);
        if (Math.abs(crossing.depthMm() - gauge) <= rules.fits().value()) {
          found = new Step(crossing.point(), step.triangle, crossing.depthMm());
        }
        return false;
      }
      deepest = Math.max(deepest, step.depth);
      last = step;
      return true;
    }
  }
}
