package rodwork.anatomy.kennedy;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Predicate;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.kennedy.ArchState.Ask;
import rodwork.anatomy.kennedy.KennedyFinding.Kind;
import rodwork.anatomy.kennedy.KennedyFinding.Question;
import rodwork.anatomy.kennedy.KennedyFinding.Reason;
import rodwork.rules.Wording;

/**
 * Kennedy's classes with Applegate's rules as an algorithm.
 *
 * <p>Places that do not count are left out first: third molars that are no abutment or are missing
 * and not replaced, second molars missing and not replaced, spaces that have closed. The rest is
 * read from the patient's right to left as runs of missing teeth.
 *
 * <p>Identities: the mirrored arch has the same class; so has the same arch in the other jaw; a
 * place left out changes nothing whether a tooth stands there or not.
 */
public final class Kennedy {
  private Kennedy() {}

  /** The class with the rules that decided, and what should be asked. */
  public static KennedyFinding classify(ArchState state) {
    KennedyFinding found = decide(state);
    List<Question> questions = questions(state, found);
    return new KennedyFinding(
        found.kind(),
        found.kennedy(),
        found.modifications(),
        found.spaces(),
        found.deciding(),
        found.leftOut(),
        found.reasons(),
        questions);
  }

  /** As {@link #classify}, without looking what other answers would change. */
  static KennedyFinding decide(ArchState state) {
    List<Reason> reasons = new ArrayList<>();
    SortedSet<ToothNumber> leftOut = new TreeSet<>();
    if (!state.extracted().isEmpty()) {
      reasons.add(
          new Reason(
              ApplegateRule.EXTRACTIONS_FIRST,
              Wording.of("to be extracted, taken as missing: ", state.extracted())));
    }
    leaveOut(state, leftOut, reasons);
    List<ToothRun> spaces = spaces(state, leftOut);
    boolean anyTooth = state.standing().stream().anyMatch(t -> !leftOut.contains(t));
    if (!anyTooth) {
      return none(Kind.NO_TOOTH, leftOut, reasons);
    }
    if (spaces.isEmpty()) {
      return none(Kind.NO_SPACE, leftOut, reasons);
    }
    return decide(spaces, leftOut, reasons);
  }

  private static KennedyFinding none(
      Kind kind, SortedSet<ToothNumber> leftOut, List<Reason> reasons) {
    return new KennedyFinding(
        kind, Optional.empty(), 0, List.of(), List.of(), leftOut, reasons, List.of());
  }

  private static void leaveOut(
      ArchState state, SortedSet<ToothNumber> leftOut, List<Reason> reasons) {
    leave(
        state,
        t -> t.isThirdMolar() && !state.standing().contains(t) && !state.answer(Ask.REPLACED, t),
        ApplegateRule.THIRD_MOLAR_ABSENT,
        "missing and not replaced, left out: ",
        leftOut,
        reasons);
    leave(
        state,
        t -> t.isThirdMolar() && state.standing().contains(t) && !state.answer(Ask.ABUTMENT, t),
        ApplegateRule.THIRD_MOLAR_PRESENT,
        "standing and no abutment, left out: ",
        leftOut,
        reasons);
    leave(
        state,
        t -> t.place() == 7 && !state.standing().contains(t) && !state.answer(Ask.REPLACED, t),
        ApplegateRule.SECOND_MOLAR_ABSENT,
        "missing and not replaced, left out: ",
        leftOut,
        reasons);
    // A closed space is no space: its places drop out, and its neighbours are neighbours.
    for (ToothRun run : spaces(state, leftOut)) {
      if (run.bounded() && run.missing().stream().allMatch(t -> state.answer(Ask.CLOSED, t))) {
        leftOut.addAll(run.missing());
      }
    }
  }

  private static void leave(
      ArchState state,
      Predicate<ToothNumber> which,
      ApplegateRule rule,
      String text,
      SortedSet<ToothNumber> leftOut,
      List<Reason> reasons) {
    List<ToothNumber> found = ToothNumber.allOf(state.jaw()).filter(which).toList();
    leftOut.addAll(found);
    if (!found.isEmpty()) {
      reasons.add(new Reason(rule, Wording.of(text, found)));
    }
  }

  /** Runs of missing places among those that count, from the patient's right to left. */
  private static List<ToothRun> spaces(ArchState state, SortedSet<ToothNumber> leftOut) {
    List<ToothRun> runs = new ArrayList<>();
    List<ToothNumber> run = new ArrayList<>();
    boolean toothBefore = false;
    for (int i = 0; i < ToothNumber.PLACES; i++) {
      ToothNumber tooth = ToothNumber.inOrder(state.jaw(), i);
      if (leftOut.contains(tooth)) {
        continue;
      }
      if (!state.standing().contains(tooth)) {
        run.add(tooth);
        continue;
      }
      if (!run.isEmpty()) {
        runs.add(new ToothRun(run, !toothBefore, false));
        run.clear();
      }
      toothBefore = true;
    }
    if (!run.isEmpty()) {
      runs.add(new ToothRun(run, !toothBefore, true));
    }
    return runs;
  }

  private static KennedyFinding decide(
      List<ToothRun> spaces, SortedSet<ToothNumber> leftOut, List<Reason> reasons) {
    List<ToothRun> free = spaces.stream().filter(r -> !r.bounded()).toList();
    List<ToothRun> deciding;
    KennedyClass kennedy;
    if (!free.isEmpty()) {
      kennedy = free.size() == 2 ? KennedyClass.I : KennedyClass.II;
      deciding = free;
    } else if (spaces.size() == 1 && spaces.getFirst().crossesMidline()) {
      kennedy = KennedyClass.IV;
      deciding = spaces;
    } else {
      kennedy = KennedyClass.III;
      deciding =
          List.of(
              spaces.stream()
                  .filter(r -> !r.crossesMidline())
                  .max(Comparator.comparingInt(ToothRun::reach))
                  .orElseThrow());
    }
    reasons.add(
        new Reason(ApplegateRule.MOST_POSTERIOR, Wording.of(kennedy.text(), ": ", deciding)));
    int modifications = spaces.size() - deciding.size();
    List<ToothRun> further = spaces.stream().filter(r -> !deciding.contains(r)).toList();
    if (modifications > 0) {
      reasons.add(
          new Reason(
              ApplegateRule.MODIFICATIONS, Wording.of("further spaces, counted: ", further)));
    }
    if (kennedy != KennedyClass.IV && further.stream().anyMatch(ToothRun::crossesMidline)) {
      reasons.add(
          new Reason(
              ApplegateRule.CLASS_IV_ALONE,
              Wording.of(
                  "the space across the midline is a modification, for another lies behind it")));
    }
    return new KennedyFinding(
        Kind.PARTLY_TOOTHLESS,
        Optional.of(kennedy),
        modifications,
        spaces,
        deciding,
        leftOut,
        reasons,
        List.of());
  }

  /** What is not known and would, by itself, change the class. */
  private static List<Question> questions(ArchState state, KennedyFinding found) {
    List<Question> questions = new ArrayList<>();
    for (int i = 0; i < ToothNumber.PLACES; i++) {
      ToothNumber tooth = ToothNumber.inOrder(state.jaw(), i);
      boolean stands = state.standing().contains(tooth);
      if (tooth.isThirdMolar() && stands) {
        ask(state, found, Ask.ABUTMENT, List.of(tooth), questions);
      }
      if (tooth.place() == 7 && !stands) {
        ask(state, found, Ask.REPLACED, List.of(tooth), questions);
      }
    }
    for (ToothRun run : found.spaces()) {
      // Three missing teeth in a row do not close to less than 2 mm.
      if (run.bounded() && run.missing().size() <= MOST_CLOSED) {
        ask(state, found, Ask.CLOSED, run.missing(), questions);
      }
    }
    return questions;
  }

  private static final int MOST_CLOSED = 2;

  private static void ask(
      ArchState state,
      KennedyFinding found,
      Ask ask,
      List<ToothNumber> places,
      List<Question> questions) {
    if (places.stream().allMatch(t -> state.known(ask, t))) {
      return;
    }
    ToothNumber tooth = places.getFirst();
    boolean assumed = state.answer(ask, tooth);
    ArchState other = state;
    for (ToothNumber place : places) {
      other = other.with(ask, place, Answer.of(!assumed));
    }
    KennedyFinding otherwise = decide(other);
    if (otherwise.title().equals(found.title())) {
      return;
    }
    Wording text =
        switch (ask) {
          case ABUTMENT -> Wording.of("Is the third molar ", tooth, " an abutment?");
          case REPLACED -> Wording.of("Is the missing second molar ", tooth, " to be replaced?");
          case CLOSED ->
              Wording.of(
                  "Has the space of ", places, " closed to less than 2 mm between neighbours?");
        };
    questions.add(new Question(ask, places, text, assumed, otherwise.title()));
  }
}
