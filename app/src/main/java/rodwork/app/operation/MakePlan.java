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
   * @param wanted path, chart, answers and opposing scan; its teeth and arms are left out: a plan
   *     takes the likely abutments, and the arms of the choices
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
                choices.arms(),
                wanted.opposing()),
            book,
            watch);
    return on(judged, wanted.chart(), choices, watch);
  }

  /**
   * Another plan on what one rests on; abutments are judged anew where arms lie otherwise.
   *
   * @throws rodwork.geometry.Refusal if a choice cannot be planned
   */
  public static Planned by(Planned first, Choices choices, Watch watch) {
    JudgeAbutments.Judged judged = first.judged();
    JudgeAbutments.Wanted wanted = judged.wanted();
    return choices.arms().equals(wanted.arms())
        ? on(judged, wanted.chart(), choices, watch)
        : of(judged.teeth(), wanted, choices, judged.rulebook(), watch);
  }

  /**
   * Plans on abutments that are judged already, with the arms of the choices.
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
