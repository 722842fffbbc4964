package rodwork.design.clasp;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
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
   */
  public record Preparation(String clause, String what, double amountMm) {}

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
