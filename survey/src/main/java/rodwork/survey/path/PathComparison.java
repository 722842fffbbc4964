package rodwork.survey.path;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import rodwork.rules.Wording;

/**
 * Two tilts side by side: what gets better and what gets worse, tooth by tooth, where the two
 * differ by more than a step that means something.
 *
 * @param from the tilt that is left
 * @param to the tilt that is taken
 * @param better what gets better, the largest change in steps first
 * @param worse what gets worse, likewise
 * @param figures all that was compared, those that stay among them, in the order of the factors
 */
public record PathComparison(
    PathFactors from,
    PathFactors to,
    List<Change> better,
    List<Change> worse,
    List<Change> figures) {

  /**
   * One figure that changes.
   *
   * @param factor what it belongs to
   * @param what in words, with the tooth or zone
   * @param from before
   * @param to after
   * @param unit of both
   * @param steps size of the change in steps; below 1 it means nothing
   */
  public record Change(
      PathFactors.Factor factor, Wording what, double from, double to, String unit, double steps) {
    /** In one line, for a reader of that numbering. */
    public String in(Wording.Numbering numbering) {
      return String.format(Locale.ROOT, "%s: %.2f → %.2f %s", what.in(numbering), from, to, unit);
    }
  }

  /** Compares two tilts of one cast. */
  public static PathComparison of(PathFactors from, PathFactors to, PathRules rules) {
    Changes changes = new Changes(rules);
    for (int i = 0; i < from.guiding().planes().size(); i++) {
      var before = from.guiding().planes().get(i);
      var after = to.guiding().planes().get(i);
      if (before.isPresent() && after.isPresent()) {
        var site = before.get().site();
        String face = site.face().name().toLowerCase(Locale.ROOT);
        changes.less(
            PathFactors.Factor.GUIDING,
            of(site.tooth(), " " + face + ", enamel for a guiding plane"),
            before.get().greatestMm(),
            after.get().greatestMm());
      }
    }
    for (int i = 0; i < from.retention().abutments().size(); i++) {
      var before = from.retention().abutments().get(i);
      var after = to.retention().abutments().get(i);
      changes.more(
          PathFactors.Factor.RETENTION,
          of(before.tooth(), ", undercut that holds"),
          before.creditMm(),
          after.creditMm());
    }
    for (int i = 0; i < from.interference().zones().size(); i++) {
      var before = from.interference().zones().get(i);
      var after = to.interference().zones().get(i);
      Wording name = before.zone().wording();
      changes.less(
          PathFactors.Factor.INTERFERENCE,
          Wording.of(name, ", mean undercut in the way"),
          before.meanMm(),
          after.meanMm());
      changes.lessArea(
          PathFactors.Factor.INTERFERENCE,
          Wording.of(name, ", undercut surface"),
          before.undercutMm2(),
          after.undercutMm2());
    }
    for (int i = 0; i < from.appearance().teeth().size(); i++) {
      var before = from.appearance().teeth().get(i);
      var after = to.appearance().teeth().get(i);
      changes.less(
          PathFactors.Factor.APPEARANCE,
          of(before.tooth(), ", height of the survey line"),
          before.lineMm(),
          after.lineMm());
      changes.less(
          PathFactors.Factor.APPEARANCE,
          of(before.tooth(), ", dead space beside it"),
          before.gapMm(),
          after.gapMm());
    }
    changes.add(
        PathFactors.Factor.TILT,
        Wording.of("total tilt"),
        from.tilt().totalDeg(),
        to.tilt().totalDeg(),
        "°",
        rules.angleStep().value(),
        true);
    changes.less(
        PathFactors.Factor.TILT,
        Wording.of("sideways shift on the way out"),
        from.travel().shiftMm(),
        to.travel().shiftMm());
    return new PathComparison(
        from, to, changes.sorted(true), changes.sorted(false), List.copyOf(changes.all));
  }

  private static Wording of(int tooth, String words) {
    return Wording.of(new Wording.Piece.Tooth(tooth), words);
  }

  private static final class Changes {
    private final PathRules rules;
    private final List<Change> better = new ArrayList<>();
    private final List<Change> worse = new ArrayList<>();
    private final List<Change> all = new ArrayList<>();

    Changes(PathRules rules) {
      this.rules = rules;
    }

    void less(PathFactors.Factor factor, Wording what, double from, double to) {
      add(factor, what, from, to, "mm", rules.lengthStep().value(), true);
    }

    void more(PathFactors.Factor factor, Wording what, double from, double to) {
      add(factor, what, from, to, "mm", rules.lengthStep().value(), false);
    }

    void lessArea(PathFactors.Factor factor, Wording what, double from, double to) {
      add(factor, what, from, to, "mm²", rules.areaStep().value(), true);
    }

    void add(
        PathFactors.Factor factor,
        Wording what,
        double from,
        double to,
        String unit,
        double step,
        boolean lessIsBetter) {
      double steps = Math.abs(to - from) / step;
      Change change = new Change(factor, what, from, to, unit, steps);
      all.add(change);
      if (steps >= 1) {
        (to < from == lessIsBetter ? better : worse).add(change);
      }
    }

    List<Change> sorted(boolean good) {
      return (good ? better : worse)
          .stream().sorted(Comparator.comparingDouble(Change::steps).reversed()).toList();
    }
  }
}
