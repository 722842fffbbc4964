package rodwork.anatomy.kennedy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothEntry.Presence;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.kennedy.ArchState.Ask;
import rodwork.anatomy.kennedy.KennedyFinding.Kind;

/**
 * Kennedy's classes with Applegate's rules. Truth: cases worked by hand from the rules as they are
 * taught (dentalnotebook.com; medizzy.com 32713134), then every set of teeth against a second way
 * of reading the same rules (patterns over a text of sixteen letters).
 */
class KennedyTest {
  /**
   * Teeth that are missing beside the third molars, and the class. The rule beside each case is the
   * one it is about.
   */
  @ParameterizedTest(name = "{0} missing: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        // Kennedy's four classes as defined.
        "17 16 15 25 26 27          | class I",
        "37 36 35 45 46 47          | class I",
        "27 26 25                   | class II",
        "16                         | class III",
        "12 11 21 22                | class IV",
        // Across the midline from 11 to 27: free on the left alone.
        "11 21 22 23 24 25 26 27    | class II",
        // Across the midline and in front of all that is left, however long.
        "13 12 11 21 22 23          | class IV",
        "15 14 13 12 11 21 22 23 24 25 26 | class IV",
        // Rule 8: another space behind the one across the midline decides.
        "12 11 21 22 25             | class III modification 1",
        "12 11 21 22 25 26 27       | class II modification 1",
        "17 16 12 11 21 26 27       | class I modification 1",
        // One central incisor alone does not cross the midline.
        "11                         | class III",
        "21                         | class III",
        "11 21                      | class IV",
        // Only the front teeth are left: free on both sides.
        "17 16 15 14 24 25 26 27    | class I",
        // Rules 6 and 7: further spaces are counted, whatever their length.
        "17 16 14 12                | class II modification 2",
        "16 14 24 26                | class III modification 3",
        "47 46 45 43 32 36          | class II modification 3",
        // Rule 5: the more posterior of the bounded spaces decides.
        "16 15 23                   | class III modification 1"
      })
  void asTaught(String missing, String wanted) {
    assertThat(Kennedy.classify(missing(missing)).title()).isEqualTo(wanted);
  }

  @ParameterizedTest(name = "only {0} left: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "13 12 11 21 22 23 | class I",
        "13                | class I",
        "17                | class II",
        "27                | class II",
        "16                | class I",
        "11                | class I"
      })
  void fewTeethLeft(String left, String wanted) {
    assertThat(Kennedy.classify(standing(left)).title()).isEqualTo(wanted);
  }

  @Test
  void aThirdMolarCountsOnlyAsAnAbutment() { // rule 3
    Chart chart = missingChart("17 16").with(tooth(18), ToothEntry.PRESENT);
    KennedyFinding unsaid = Kennedy.classify(ArchState.of(chart));
    assertThat(unsaid.title()).isEqualTo("class II");
    assertThat(unsaid.questions())
        .singleElement()
        .satisfies(
            q -> {
              assertThat(q.text().fdi()).isEqualTo("Is the third molar 18 an abutment?");
              assertThat(q.otherwise()).isEqualTo("class III");
            });
    KennedyFinding used =
        Kennedy.classify(ArchState.of(chart.change(tooth(18), e -> e.withAbutment(Answer.YES))));
    assertThat(used.title()).isEqualTo("class III");
    assertThat(used.questions()).extracting(q -> q.ask()).containsExactly(Ask.CLOSED);
    KennedyFinding unused =
        Kennedy.classify(ArchState.of(chart.change(tooth(18), e -> e.withAbutment(Answer.NO))));
    assertThat(unused.title()).isEqualTo("class II");
    assertThat(rules(unused)).contains(ApplegateRule.THIRD_MOLAR_PRESENT);
  }

  @Test
  void aThirdMolarThatIsReplacedCounts() { // rule 2
    assertThat(Kennedy.classify(missing("")).kind()).isEqualTo(Kind.NO_SPACE);
    assertThat(Kennedy.classify(missing("").with(Ask.REPLACED, tooth(18), Answer.YES)).title())
        .isEqualTo("class II");
  }

  @Test
  void aSecondMolarThatIsNotReplacedIsLeftOut() { // rule 4
    Chart chart = missingChart("17");
    KennedyFinding unsaid = Kennedy.classify(ArchState.of(chart));
    assertThat(unsaid.title()).isEqualTo("class II");
    assertThat(unsaid.questions())
        .singleElement()
        .satisfies(q -> assertThat(q.otherwise()).isEqualTo("no space"));
    KennedyFinding not =
        Kennedy.classify(ArchState.of(chart.change(tooth(17), e -> e.withReplace(Answer.NO))));
    assertThat(not.kind()).isEqualTo(Kind.NO_SPACE);
    assertThat(rules(not)).contains(ApplegateRule.SECOND_MOLAR_ABSENT);
    assertThat(not.leftOut()).contains(tooth(17), tooth(18));
  }

  @Test
  void plannedExtractionsComeFirst() { // rule 1
    Chart chart =
        missingChart("16").change(tooth(17), e -> e.withPresence(Presence.TO_BE_EXTRACTED));
    KennedyFinding found = Kennedy.classify(ArchState.of(chart));
    assertThat(found.title()).isEqualTo("class II");
    assertThat(found.reasons().getFirst().rule()).isEqualTo(ApplegateRule.EXTRACTIONS_FIRST);
    assertThat(found.reasons().getFirst().text().fdi()).contains("17");
  }

  @Test
  void aClosedSpaceIsNoSpaceAndAnUnmeasuredOneIsAsked() {
    KennedyFinding unmeasured = Kennedy.classify(missing("14"));
    assertThat(unmeasured.title()).isEqualTo("class III");
    assertThat(unmeasured.questions())
        .singleElement()
        .satisfies(q -> assertThat(q.text().fdi()).contains("space of 14").contains("2 mm"));
    KennedyFinding closed = Kennedy.classify(missing("14").with(Ask.CLOSED, tooth(14), Answer.YES));
    assertThat(closed.kind()).isEqualTo(Kind.NO_SPACE);
    KennedyFinding open = Kennedy.classify(missing("14").with(Ask.CLOSED, tooth(14), Answer.NO));
    assertThat(open.title()).isEqualTo("class III");
    assertThat(open.questions()).isEmpty();
    // A closed space in the way does not divide what lies on both sides of it.
    KennedyFinding freeBehind =
        Kennedy.classify(missing("14 16 17").with(Ask.CLOSED, tooth(14), Answer.YES));
    assertThat(freeBehind.title()).isEqualTo("class II");
  }

  @Test
  void theRuleThatDecidedIsTold() {
    KennedyFinding found = Kennedy.classify(missing("12 11 21 22 25"));
    assertThat(rules(found))
        .contains(
            ApplegateRule.MOST_POSTERIOR,
            ApplegateRule.MODIFICATIONS,
            ApplegateRule.CLASS_IV_ALONE);
    assertThat(found.deciding()).extracting(ToothRun::toString).containsExactly("25");
    assertThat(found.reasons())
        .anySatisfy(
            r -> assertThat(r.text().fdi()).contains("teeth before and behind").contains("25"));
  }

  @Test
  void withoutTeethThereIsNoClass() {
    assertThat(Kennedy.classify(ArchState.of(Jaw.LOWER, Set.of())).kind()).isEqualTo(Kind.NO_TOOTH);
    // The only tooth left is a third molar that is no abutment.
    assertThat(Kennedy.classify(standing("28")).kind()).isEqualTo(Kind.NO_TOOTH);
  }

  /**
   * Flags: bit 0 third molars are abutments, 1 second and 2 third molars are replaced, 3 closed.
   */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 8, 10, 13, 15})
  void everySetOfTeethIsAnswered(int flags) {
    int partly = 0;
    for (int teeth = 0; teeth < 1 << 16; teeth++) {
      ArchState state = state(Jaw.UPPER, teeth, flags);
      KennedyFinding found = Kennedy.decide(state);
      String wanted = byPattern(teeth, flags);
      if (!found.title().equals(wanted)) { // an assertion each would take most of the time
        throw new AssertionError(where(teeth, flags) + ": " + found + ", wanted " + wanted);
      }
      for (ToothRun run : found.spaces()) {
        for (ToothNumber missing : run.missing()) {
          if (state.standing().contains(missing) || found.leftOut().contains(missing)) {
            throw new AssertionError(
                where(teeth, flags) + ": " + missing + " is no missing place that counts");
          }
        }
      }
      if (found.kind() == Kind.PARTLY_TOOTHLESS) {
        partly++;
        if (found.modifications() != found.spaces().size() - found.deciding().size()
            || (found.kennedy().orElseThrow() == KennedyClass.IV && found.modifications() != 0)) {
          throw new AssertionError(where(teeth, flags) + ": modifications " + found);
        }
      }
      if (teeth % 61 == 0) {
        // Mirrored, in the other jaw, and with its questions.
        int mirrored = Integer.reverse(teeth) >>> 16;
        assertThat(Kennedy.decide(state(Jaw.UPPER, mirrored, flags)).title())
            .isEqualTo(found.title());
        assertThat(Kennedy.decide(state(Jaw.LOWER, teeth, flags)).title()).isEqualTo(found.title());
        assertThat(Kennedy.classify(state).title()).isEqualTo(found.title());
      }
    }
    assertThat(partly).isGreaterThan(20_000);
  }

  private static final Pattern RUN = Pattern.compile("-+(\\|-+)?");

  /** The rules read a second way: as patterns over the row of places that count. */
  private static String byPattern(int teeth, int flags) {
    StringBuilder row = new StringBuilder();
    for (int i = 0; i < 16; i++) {
      boolean stands = (teeth >> i & 1) == 1;
      boolean third = i == 0 || i == 15;
      boolean second = i == 1 || i == 14;
      boolean counts =
          third ? (flags & (stands ? 1 : 4)) != 0 : !(second && !stands && (flags & 2) == 0);
      row.append(i == 8 ? "|" : "").append(counts ? (stands ? "T" : "-") : "");
    }
    String text = row.toString();
    if ((flags & 8) != 0) {
      text = text.replaceAll("(?<=T)(\\|?)-+(\\|?)-*(?=T)|(?<=T\\|)-+(?=T)", "$1$2");
    }
    if (!text.contains("T")) {
      return "no tooth that counts";
    }
    List<String> runs = new ArrayList<>();
    Matcher matcher = RUN.matcher(text);
    while (matcher.find()) {
      runs.add(matcher.group());
    }
    if (runs.isEmpty()) {
      return "no space";
    }
    int free = (text.matches("\\|?-.*") ? 1 : 0) + (text.matches(".*-\\|?") ? 1 : 0);
    String kennedy =
        free == 2
            ? "I"
            : free == 1 ? "II" : runs.size() == 1 && runs.getFirst().contains("|") ? "IV" : "III";
    int modifications = runs.size() - Math.max(free, 1);
    return "class " + kennedy + (modifications > 0 ? " modification " + modifications : "");
  }

  private static String where(int teeth, int flags) {
    return "teeth " + Integer.toBinaryString(teeth) + " flags " + flags;
  }

  private static final Map<String, Map<Ask, Map<ToothNumber, Boolean>>> ANSWERS = new HashMap<>();

  /** The answers that the flags stand for; the same for all sets of teeth. */
  private static Map<Ask, Map<ToothNumber, Boolean>> answers(Jaw jaw, int flags) {
    return ANSWERS.computeIfAbsent(
        jaw + " " + flags,
        key -> {
          ArchState state = ArchState.of(jaw, Set.of());
          for (int i : new int[] {0, 1, 14, 15}) {
            ToothNumber tooth = ToothNumber.inOrder(jaw, i);
            int replaced = tooth.isThirdMolar() ? 4 : 2;
            state = state.with(Ask.ABUTMENT, tooth, Answer.of((flags & 1) != 0));
            state = state.with(Ask.REPLACED, tooth, Answer.of((flags & replaced) != 0));
          }
          for (int i = 0; i < 16 && (flags & 8) != 0; i++) {
            state = state.with(Ask.CLOSED, ToothNumber.inOrder(jaw, i), Answer.YES);
          }
          return state.answers();
        });
  }

  private static ArchState state(Jaw jaw, int teeth, int flags) {
    TreeSet<ToothNumber> standing = new TreeSet<>();
    for (int i = 0; i < 16; i++) {
      if ((teeth >> i & 1) == 1) {
        standing.add(ToothNumber.inOrder(jaw, i));
      }
    }
    return new ArchState(jaw, standing, new TreeSet<>(), answers(jaw, flags));
  }

  private static ArchState missing(String numbers) {
    return ArchState.of(missingChart(numbers));
  }

  private static Chart missingChart(String numbers) {
    List<ToothNumber> teeth = teeth(numbers);
    Jaw jaw = teeth.isEmpty() ? Jaw.UPPER : teeth.getFirst().jaw();
    return Chart.missing(jaw, teeth);
  }

  private static ArchState standing(String numbers) {
    return ArchState.of(Jaw.UPPER, new TreeSet<>(teeth(numbers)));
  }

  private static List<ToothNumber> teeth(String numbers) {
    return Arrays.stream(numbers.strip().split(" +", -1))
        .filter(s -> !s.isEmpty())
        .map(s -> tooth(Integer.parseInt(s)))
        .toList();
  }

  private static ToothNumber tooth(int fdi) {
    return ToothNumber.of(fdi);
  }

  private static List<ApplegateRule> rules(KennedyFinding found) {
    return found.reasons().stream().map(KennedyFinding.Reason::rule).toList();
  }
}
