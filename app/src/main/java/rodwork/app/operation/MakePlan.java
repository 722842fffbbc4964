package rodwork.app.operation;

import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.dentition.Dentition;
import rodwork.casework.rulebook.Rulebook;
import rodwork.design.plan.Choices;
import rodwork.design.plan.Plan;
import rodwork.design.plan.Planner;
import rodwork.design.preparation.MouthPreparation;
import rodwork.design.preparation.Preparer;
import rodwork.geometry.Watch;

/** Judges the abutments of a cast at a path, and plans the denture. */
public final class MakePlan {
  private MakePlan() {}

  /**
   * What was made.
   *
   * @param judged the abutments that it rests on
   * @param plan the plan
   * @param preparation of the mouth for it
   */
  public record Planned(JudgeAbutments.Judged judged, Plan plan, MouthPreparation preparation) {}

  /**
   * Plans.
   *
   * @param wanted path, chart and answers; its teeth are left out: a plan takes the likely
   *     abutments
   * @throws rodwork.geometry.Refusal if the path cannot be found on this cast, or a choice cannot
   *     be planned
   * @throws java.util.concurrent.CancellationException when the watch says so
   */
  public static Planned of(
      CastTeeth teeth, JudgeAbutments.Wanted wanted, Choices choices, Rulebook book, Watch watch) {
    JudgeAbutments.Judged judged =
        JudgeAbutments.of(
            teeth,
            new JudgeAbutments.Wanted(
                wanted.path(),
                new TreeSet<>(),
                wanted.chart(),
                wanted.answers(),
                wanted.arms(),
                wanted.opposing()),
            book,
            watch);
    return on(judged, wanted.chart(), choices, watch);
  }

  /**
   * Plans on abutments that are judged already.
   *
   * @param chart what a person says of the teeth; null: what was said when they were found
   * @throws rodwork.geometry.Refusal if a choice cannot be planned
   */
  public static Planned on(
      JudgeAbutments.Judged judged, @Nullable Chart chart, Choices choices, Watch watch) {
    watch.progress("planning", 0);
    Arch arch = judged.teeth().arch();
    Dentition dentition = judged.teeth().dentition();
    if (chart != null) {
      dentition = dentition.withChart(chart);
    }
    Plan plan =
        Planner.of(
            arch,
            dentition,
            judged.surveyed().survey(),
            judged.abutments(),
            judged.rulebook().plan(),
            choices,
            judged.opposing(),
            watch);
    watch.progress("laying cuts", 0);
    return new Planned(
        judged,
        plan,
        Preparer.of(arch, dentition, judged.abutments(), plan, judged.rulebook().cuts()));
  }
}
