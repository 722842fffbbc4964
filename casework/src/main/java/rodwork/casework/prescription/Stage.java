package rodwork.casework.prescription;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;

/** A stage at which the work comes back before it is finished. */
public enum Stage {
  FRAMEWORK_TRY_IN("framework try-in"),
  ALTERED_CAST("altered cast for the free ends"),
  JAW_RECORD("jaw record"),
  TOOTH_TRY_IN("tooth try-in");

  private final String words;

  Stage(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** The name on the command line and in JSON, such as {@code framework-try-in}. */
  public String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * A stage with its answer.
   *
   * @param asked whether it is asked for
   * @param proposed whether the answer is a proposal: the prescriber said nothing of stages
   * @param because one sentence
   */
  record Asked(Stage stage, boolean asked, boolean proposed, String because) {}

  /** All stages of a plan: as the prescriber says, or as is usual for such a plan. */
  static List<Asked> of(Plan plan, Order order) {
    List<Asked> all = new ArrayList<>();
    for (Stage stage : values()) {
      if (order.stages().isPresent()) {
        boolean asked = order.stages().get().contains(stage);
        all.add(new Asked(stage, asked, false, "the prescriber says so"));
      } else {
        all.add(proposal(stage, plan));
      }
    }
    return all;
  }

  /** Common practice, no published source. */
  private static Asked proposal(Stage stage, Plan plan) {
    boolean free = plan.bases().stream().map(Part.DentureBase::space).anyMatch(s -> s.freeEnd());
    boolean front = plan.replaced().stream().anyMatch(ToothNumber::isAnterior);
    return switch (stage) {
      case FRAMEWORK_TRY_IN ->
          new Asked(stage, true, true, "its fit is proven in the mouth before teeth are set");
      case ALTERED_CAST ->
          free && plan.jaw() == Jaw.LOWER
              ? new Asked(stage, true, true, "a lower free end rests on tissue that yields")
              : new Asked(
                  stage,
                  false,
                  true,
                  free ? "an upper free end has the palate too" : "no free end in this plan");
      case JAW_RECORD ->
          free || plan.bases().size() > 1
              ? new Asked(
                  stage,
                  true,
                  true,
                  free
                      ? "no tooth stops the bite behind"
                      : "more than one space interrupts the bite")
              : new Asked(stage, false, true, "the remaining teeth hold the bite");
      case TOOTH_TRY_IN ->
          front || free
              ? new Asked(
                  stage,
                  true,
                  true,
                  front ? "front teeth are replaced" : "the bite on the free end is seen")
              : new Asked(stage, false, true, "back teeth between teeth");
    };
  }

  /**
   * The stages that keys name; none: no stage.
   *
   * @param keys as {@link #key} has them
   * @param name what messages call the place they were read from
   */
  public static Set<Stage> named(List<String> keys, String name) {
    Set<Stage> stages = EnumSet.noneOf(Stage.class);
    for (String key : keys) {
      if (key.equals("none")) {
        continue;
      }
      stages.add(
          List.of(values()).stream()
              .filter(s -> s.key().equals(key.strip()))
              .findFirst()
              .orElseThrow(
                  () ->
                      PrescriptionProblem.ORDER_WRONG.with(
                          name,
                          "there is no stage \""
                              + key
                              + "\"; there are "
                              + List.of(values()).stream().map(Stage::key).toList()
                              + ", or none")));
    }
    return stages;
  }
}
