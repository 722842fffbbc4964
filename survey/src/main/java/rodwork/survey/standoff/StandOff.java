package rodwork.survey.standoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rodwork.geometry.Vec3;
import rodwork.rules.Reading;
import rodwork.survey.SectionWalk;
import rodwork.survey.Survey;

/**
 * The section from the gingival margin down, through the path and a horizontal direction, and how
 * far the surface stands back in it.
 *
 * <p>Total stand-off of a point is {@code u_d} against all that lies above, the tooth included;
 * tissue undercut is the same against the gum of this section alone, from the margin down. Both in
 * mm, with the accuracy of the scan at both ends as uncertainty. A place that the scan does not
 * hold is not known; one below the floor of the vestibule has no room.
 *
 * @param line the surface from the margin down to the floor of the vestibule or the end of the scan
 * @param near readings at the upper place
 * @param far readings at the lower place
 * @param vestibuleDepth from the margin down to its floor along the path [mm]; a lower bound where
 *     the scan ends before
 * @param tissueStart distance from the margin along the surface at which the tissue undercut begins
 *     [mm]; a lower bound where it does not
 */
public record StandOff(
    List<Point> line, Level near, Level far, Reading vestibuleDepth, Reading tissueStart) {
  /**
   * A point of the section.
   *
   * @param point scan frame [mm]
   * @param fromMarginMm along the surface
   * @param dropMm below the margin along the path
   * @param totalMm total stand-off
   * @param tissueMm tissue undercut
   */
  public record Point(
      Vec3 point, double fromMarginMm, double dropMm, double totalMm, double tissueMm) {}

  /**
   * What stands at one distance below the margin.
   *
   * @param fromMarginMm along the surface
   * @param place scan frame; empty where there is none
   * @param drop below the margin along the path [mm]
   * @param total total stand-off there [mm]
   * @param mostTotal its maximum on the way [mm]
   * @param tissue tissue undercut there [mm]
   * @param mostTissue its maximum on the way [mm]
   */
  public record Level(
      double fromMarginMm,
      Optional<Vec3> place,
      Reading drop,
      Reading total,
      Reading mostTotal,
      Reading tissue,
      Reading mostTissue) {}

  /** Steps along the section are no longer than this [mm]; triangles may be larger. */
  private static final double STEP_MM = 0.1;

  /** A vestibule is no deeper than this [mm]. */
  private static final double FARTHEST_MM = 25;

  public StandOff {
    line = List.copyOf(line);
  }

  /**
   * Measures below one point of the margin.
   *
   * @param margin on the surface, scan frame [mm]
   * @param triangle that holds it
   * @param direction away from the tooth; its horizontal part counts
   */
  public static StandOff of(
      Survey survey, Vec3 margin, int triangle, Vec3 direction, StandOffRules rules) {
    Vec3 axis = survey.axis();
    Vec3 out = direction.across(axis).unit();
    Walk walk = new Walk(survey, margin, out, rules);
    new SectionWalk(survey.surveyor().topology(), margin, axis.cross(out).unit())
        .walk(triangle, out.minus(axis), (q, a, b, s, t, length) -> walk.reach(q, t));
    return walk.result();
  }

  /** Goes down the section and keeps what it passes. */
  private static final class Walk {
    private final Survey survey;
    private final Vec3 margin;
    private final Vec3 out;
    private final StandOffRules rules;
    private final List<Point> line = new ArrayList<>();
    private double farthestOut;
    private boolean floor;

    Walk(Survey survey, Vec3 margin, Vec3 out, StandOffRules rules) {
      this.survey = survey;
      this.margin = margin;
      this.out = out;
      this.rules = rules;
      add(margin, 0);
    }

    boolean reach(Vec3 to, int triangle) {
      if (survey.surveyor().surface().isBase(triangle)) {
        return false;
      }
      Point from = line.getLast();
      double length = to.distance(from.point);
      int pieces = Math.max(1, (int) Math.ceil(length / STEP_MM));
      for (int i = 1; i <= pieces; i++) {
        double share = (double) i / pieces;
        add(from.point.plus(to.minus(from.point).times(share)), from.fromMarginMm + share * length);
      }
      Point lowest = lowest();
      if (lowest.dropMm - line.getLast().dropMm >= rules.floorRise().value()) {
        floor = true;
        line.removeIf(p -> p.fromMarginMm > lowest.fromMarginMm);
        return false;
      }
      return line.getLast().fromMarginMm < FARTHEST_MM;
    }

    private void add(Vec3 q, double fromMargin) {
      Vec3 d = q.minus(margin);
      double outward = d.dot(out);
      farthestOut = line.isEmpty() ? outward : Math.max(farthestOut, outward);
      line.add(
          new Point(
              q,
              fromMargin,
              -d.dot(survey.axis()),
              survey.depthAlong(q, out),
              farthestOut - outward));
    }

    private Point lowest() {
      Point lowest = line.getFirst();
      for (Point p : line) {
        if (p.dropMm > lowest.dropMm) {
          lowest = p;
        }
      }
      return lowest;
    }

    StandOff result() {
      double start = Double.NaN;
      for (Point p : line) {
        if (Double.isNaN(start) && p.tissueMm >= rules.shallow().value()) {
          start = p.fromMarginMm;
        }
      }
      double deep = lowest().dropMm;
      return new StandOff(
          line,
          level(rules.near().value()),
          level(rules.far().value()),
          floor ? reading(deep) : new Reading.AtLeast(deep, "mm"),
          Double.isNaN(start)
              ? new Reading.AtLeast(line.getLast().fromMarginMm, "mm")
              : reading(start));
    }

    private Level level(double at) {
      Point last = line.getLast();
      if (last.fromMarginMm < at) {
        Reading none =
            floor
                ? new Reading.NoRoom(
                    String.format(
                        Locale.ROOT,
                        "the vestibule ends %.1f mm from the margin",
                        last.fromMarginMm))
                : new Reading.NotKnown(
                    String.format(
                        Locale.ROOT,
                        "not captured, the scan ends %.1f mm from the margin",
                        last.fromMarginMm));
        return new Level(at, Optional.empty(), none, none, none, none, none);
      }
      double mostTotal = 0;
      double mostTissue = 0;
      Point before = line.getFirst();
      for (Point p : line) {
        if (p.fromMarginMm >= at) {
          double gap = p.fromMarginMm - before.fromMarginMm;
          double share = gap > 0 ? (at - before.fromMarginMm) / gap : 0;
          Vec3 place = before.point.plus(p.point.minus(before.point).times(share));
          double total = survey.depthAlong(place, out);
          double tissue = mix(before.tissueMm, p.tissueMm, share);
          return new Level(
              at,
              Optional.of(place),
              reading(mix(before.dropMm, p.dropMm, share)),
              depth(total),
              depth(Math.max(mostTotal, total)),
              reading(tissue),
              reading(Math.max(mostTissue, tissue)));
        }
        mostTotal = Math.max(mostTotal, p.totalMm);
        mostTissue = Math.max(mostTissue, p.tissueMm);
        before = p;
      }
      throw new IllegalStateException("a section that reaches " + at + " mm and does not");
    }

    private static double mix(double a, double b, double share) {
      return a + share * (b - a);
    }

    /** A depth at its cap is a lower bound. */
    private Reading depth(double mm) {
      double cap = survey.surveyor().rules().cap().value();
      return mm >= cap ? new Reading.AtLeast(cap, "mm") : reading(mm);
    }

    private Reading reading(double mm) {
      return Reading.mm(mm, Math.sqrt(2) * rules.scanAccuracy().value());
    }
  }
}
