package rodwork.anatomy.kennedy;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.rules.Wording;

/**
 * The class of an arch, and why.
 *
 * @param kind what kind of arch it is
 * @param kennedy the class, where the arch is partly toothless
 * @param modifications number of further spaces; 0 in class IV and where there is no class
 * @param spaces all spaces that count, from the patient's right to left
 * @param deciding those that decide the class: two in class I, else one
 * @param leftOut places that do not count, standing or missing
 * @param reasons the rules that were applied, in their order; the one that decided is among them
 * @param questions what is not known and would change the class
 */
public record KennedyFinding(
    Kind kind,
    Optional<KennedyClass> kennedy,
    int modifications,
    List<ToothRun> spaces,
    List<ToothRun> deciding,
    SortedSet<ToothNumber> leftOut,
    List<Reason> reasons,
    List<Question> questions) {

  /** Which arches have a class. */
  public enum Kind {
    PARTLY_TOOTHLESS,
    /** No space counts. */
    NO_SPACE,
    /** No tooth counts: no removable partial denture is made. */
    NO_TOOTH
  }

  /**
   * A rule at work.
   *
   * @param rule one of Applegate's
   * @param text what it did here
   */
  public record Reason(ApplegateRule rule, Wording text) {}

  /**
   * What a person is asked.
   *
   * @param ask kind of question
   * @param places the places it is about: one answer is for all of them
   * @param text the question
   * @param assumed what was assumed
   * @param otherwise the class with the other answer
   */
  public record Question(
      ArchState.Ask ask,
      List<ToothNumber> places,
      Wording text,
      boolean assumed,
      String otherwise) {
    public Question {
      places = List.copyOf(places);
    }

    /** The first of the places. */
    public ToothNumber tooth() {
      return places.getFirst();
    }
  }

  public KennedyFinding {
    spaces = List.copyOf(spaces);
    deciding = List.copyOf(deciding);
    leftOut = Collections.unmodifiableSortedSet(new TreeSet<>(leftOut));
    reasons = List.copyOf(reasons);
    questions = List.copyOf(questions);
  }

  /** Such as {@code class II modification 1}, {@code no space}, {@code no tooth that counts}. */
  public String title() {
    return switch (kind) {
      case NO_SPACE -> "no space";
      case NO_TOOTH -> "no tooth that counts";
      case PARTLY_TOOTHLESS ->
          "class "
              + kennedy.orElseThrow()
              + (modifications > 0 ? " modification " + modifications : "");
    };
  }
}
