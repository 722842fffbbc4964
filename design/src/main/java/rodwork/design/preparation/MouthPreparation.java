package rodwork.design.preparation;

import java.util.List;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.design.cut.PreparedCast;

/**
 * The preparation of a mouth for a plan. Immutable.
 *
 * @param steps in working order
 * @param refused what a plan wants and no cut within the limits gives
 * @param general what follows for every tooth, in order
 * @param crowns surveyed crowns, each an order of its own; cuts in them are not in the list
 */
public record MouthPreparation(
    List<Step> steps, List<Refused> refused, List<String> general, List<CrownOrder> crowns) {
  public MouthPreparation {
    steps = List.copyOf(steps);
    refused = List.copyOf(refused);
    general = List.copyOf(general);
    crowns = List.copyOf(crowns);
  }

  /**
   * A cut that is not prescribed.
   *
   * @param tooth which
   * @param kind of work
   * @param why one sentence, with value and limit
   */
  public record Refused(ToothNumber tooth, Step.Kind kind, String why) {}

  /** The cuts, in working order. */
  public List<PreparedCast.Applied> cuts() {
    return steps.stream().flatMap(s -> s.cut().stream()).toList();
  }

  /** The arch with every cut made. */
  public Arch prepared(Arch arch) {
    return PreparedCast.of(arch, cuts());
  }
}
