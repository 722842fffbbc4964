package rodwork.app.operation;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.dentition.Dentition;
import rodwork.design.compare.PlanComparison;
import rodwork.design.load.DentureOnCast;
import rodwork.design.load.LoadComparison;
import rodwork.design.load.LoadRules;
import rodwork.design.load.LoadStudy;
import rodwork.geometry.Watch;

/** Holds plans of one cast beside the first of them. */
public final class ComparePlans {
  private ComparePlans() {}

  /**
   * A plan with a name.
   *
   * @param name what a person calls it
   */
  public record Named(String name, MakePlan.Planned planned) {}

  /**
   * Two plans.
   *
   * @param comparison of the other against the first
   */
  public record Compared(Named first, Named other, PlanComparison comparison) {}

  /**
   * Compares.
   *
   * @param plans of one cast at one path; the first is what the others are held against
   * @param chart that they were planned with; null: what was said when the teeth were found
   * @throws java.util.concurrent.CancellationException when the watch says so
   */
  public static List<Compared> of(List<Named> plans, @Nullable Chart chart, Watch watch) {
    Named first = plans.getFirst();
    LoadRules rules = first.planned().judged().rulebook().load();
    LoadStudy under = study(first, chart, rules, watch);
    List<Compared> all = new ArrayList<>();
    for (Named other : plans.subList(1, plans.size())) {
      LoadComparison loads = LoadComparison.of(under, study(other, chart, rules, watch), rules);
      all.add(
          new Compared(
              first,
              other,
              PlanComparison.of(first.planned().plan(), other.planned().plan(), loads)));
    }
    return all;
  }

  private static LoadStudy study(Named plan, @Nullable Chart chart, LoadRules rules, Watch watch) {
    watch.progress("loading the bases", 0);
    JudgeAbutments.Judged judged = plan.planned().judged();
    Dentition dentition = judged.teeth().dentition();
    if (chart != null) {
      dentition = dentition.withChart(chart);
    }
    return LoadStudy.of(
        DentureOnCast.of(
            plan.planned().plan(), judged.teeth().arch(), dentition, judged.abutments()),
        rules,
        watch);
  }
}
