package rodwork.design.clasp;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.rules.Finding;

/**
 * What one family can do at one abutment.
 *
 * @param family which
 * @param answer the answer
 * @param tip third that its tip would lie in; empty where there is no place for it
 * @param steps every clause that was asked, in order
 * @param preparations what must be done in the mouth first, with how much
 * @param changes what must be made otherwise about the clasp itself
 * @param warnings ids of the clauses that warn
 * @param undecided facts that could change the answer
 * @param lastResort whether a preference keeps it behind all that may serve
 * @param rankedBy one sentence: why it stands where it stands
 */
public record Judgement(
    Family family,
    Answer answer,
    Optional<AcrossThird> tip,
    List<Step> steps,
    List<Preparation> preparations,
    List<Change> changes,
    List<String> warnings,
    Set<Fact> undecided,
    boolean lastResort,
    String rankedBy) {
  /**
   * What serves first comes first: last resorts behind all that may serve, then what is ruled out.
   */
  public static final Comparator<Judgement> ORDER =
      Comparator.comparing((Judgement j) -> j.answer == Answer.DOES_NOT_SERVE || j.lastResort)
          .thenComparing(Judgement::answer);

  /** In the order in which they are listed. */
  public enum Answer {
    SERVES("serves"),
    SERVES_AFTER("serves after"),
    /** A fact that is not known, or too close to call, decides. */
    NOT_DECIDED("not decided"),
    DOES_NOT_SERVE("does not serve");

    private final String words;

    Answer(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * A clause and what was found.
   *
   * @param finding what was measured, where, against which limit
   * @param otherwise what follows where it is not met
   * @param because the clause's sentence
   */
  public record Step(Finding finding, Clause.Consequence otherwise, String because) {}

  /**
   * Something to do in the mouth first.
   *
   * @param clause id of the clause that wants it
   * @param what for a person
   * @param amountMm how much [mm]
   * @param enamelMm what that takes of the enamel [mm], where it is not the amount itself
   */
  public record Preparation(String clause, String what, double amountMm, OptionalDouble enamelMm) {
    /** Less than this is no amount [mm]: the reading is too close to its limit. */
    private static final double NOTHING_MM = 0.005;

    /** For a person, with its figures. */
    public String words() {
      if (amountMm < NOTHING_MM) {
        return what + ", if at all: too close to call";
      }
      String much = String.format(Locale.ROOT, "%s, %.2f mm", what, amountMm);
      return enamelMm.isEmpty()
          ? much
          : much + String.format(Locale.ROOT, " (takes %.2f mm of enamel)", enamelMm.getAsDouble());
    }
  }

  /**
   * Something to make otherwise.
   *
   * @param clause id of the clause that wants it
   * @param what for a person
   */
  public record Change(String clause, String what) {}

  public Judgement {
    steps = List.copyOf(steps);
    preparations = List.copyOf(preparations);
    changes = List.copyOf(changes);
    warnings = List.copyOf(warnings);
    undecided = Set.copyOf(undecided);
  }

  /** The step of a clause, if it was asked. */
  public Optional<Step> step(String clause) {
    return steps.stream().filter(s -> s.finding().rule().equals(clause)).findFirst();
  }

  Judgement ranked(boolean last, String sentence) {
    return new Judgement(
        family, answer, tip, steps, preparations, changes, warnings, undecided, last, sentence);
  }
}
