package rodwork.casework.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.AbutmentJudgement;
import rodwork.design.clasp.ClaspJudge;
import rodwork.design.clasp.Fact;
import rodwork.design.clasp.Judgement;
import rodwork.design.clasp.Judgement.Answer;
import rodwork.rules.Reading;
import rodwork.rules.Verdict;

/**
 * The shipped rulebook on invented abutments, one property changed at a time: it must flip exactly
 * the families that it should, by the clause that it should.
 *
 * <p>Over 600 lines: it is one table, read best in one piece.
 */
class ClaspDecisionTest {
  private static final ClaspJudge JUDGE = new ClaspJudge(Rulebook.shipped().clasps());

  /**
   * A change and what it must do.
   *
   * @param from the abutment before
   * @param to the abutment after
   * @param by the clause whose finding is expected at each family that changes
   * @param flips families and their answers after the change; all others keep theirs
   */
  record Change(
      String name, AbutmentFacts from, AbutmentFacts to, String by, Map<String, Answer> flips) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static Map<String, Answer> all(Answer answer, String... families) {
    Map<String, Answer> flips = new TreeMap<>();
    for (String f : families) {
      flips.put(f, answer);
    }
    return flips;
  }

  private static Map<String, Answer> out(String... families) {
    return all(Answer.DOES_NOT_SERVE, families);
  }

  private static Change change(
      AbutmentFacts from, Fact fact, Reading reading, String by, Map<String, Answer> flips) {
    return new Change(
        fact.key() + " " + reading.words(), from, from.with(fact, reading), by, flips);
  }

  private static Reading yes() {
    return Reading.yes(true);
  }

  private static Reading no() {
    return Reading.yes(false);
  }

  private static Reading word(String word) {
    return new Reading.Word(word);
  }

  private static Reading mm(double value) {
    return Abutments.mm(value);
  }

  private static Reading share(double value, double uncertainty) {
    return new Reading.Measured(value, uncertainty, "1");
  }

  /** What serves on the premolar. */
  private static final String[] SERVING = {
    "cast-circumferential",
    "reverse-circlet",
    "hairpin",
    "back-action",
    "combination",
    "i-bar",
    "t-bar",
    "modified-t-bar"
  };

  private static final String[] BARS = {"i-bar", "t-bar", "modified-t-bar"};

  static List<Change> changes() {
    AbutmentFacts p = Abutments.premolar();
    AbutmentFacts f = Abutments.freeEnd();
    AbutmentFacts lower = Abutments.tippedMolar("lower");
    AbutmentFacts upper = Abutments.tippedMolar("upper");
    AbutmentFacts embrasure = p.with(Fact.ADJACENT_SPACE, no());
    AcrossThird far = AcrossThird.MESIAL;
    AcrossThird near = AcrossThird.DISTAL;
    List<Change> c = new ArrayList<>();
    // Bars.
    c.add(change(p, Fact.TOTAL_STAND_OFF_6, mm(1.6), "bar-total-stand-off", out(BARS)));
    c.add(change(p, Fact.TOTAL_STAND_OFF_6, mm(1.45), "bar-total-stand-off", Map.of()));
    c.add(
        change(
            p,
            Fact.TOTAL_STAND_OFF_6,
            mm(1.48),
            "bar-total-stand-off",
            all(Answer.NOT_DECIDED, BARS)));
    c.add(
        change(
            p,
            Fact.TOTAL_STAND_OFF_6,
            new Reading.NotKnown("not captured"),
            "bar-total-stand-off",
            all(Answer.NOT_DECIDED, BARS)));
    c.add(
        change(
            p,
            Fact.TOTAL_STAND_OFF_6,
            new Reading.NoRoom("the vestibule ends at 5.1 mm"),
            "bar-total-stand-off",
            out(BARS)));
    c.add(change(p, Fact.TISSUE_UNDERCUT_3, mm(1.2), "bar-tissue-undercut", out(BARS)));
    c.add(change(p, Fact.TISSUE_UNDERCUT_START, mm(2), "bar-tissue-undercut-start", Map.of()));
    c.add(change(p, Fact.VESTIBULE_DEPTH, mm(3.8), "bar-vestibule", out(BARS)));
    c.add(change(p, Fact.FRENUM, yes(), "bar-frenum", out(BARS)));
    c.add(change(p, Fact.LINGUAL_INCLINATION, yes(), "bar-lingual-inclination", out(BARS)));
    c.add(change(p, Fact.BAR_LENGTH, mm(10), "bar-length", Map.of()));
    c.add(
        change(
            p, Fact.SURVEY_LINE, word("low between"), "y-bar-line", all(Answer.SERVES, "y-bar")));
    c.add(change(p, Fact.SURVEY_LINE, word("diagonal near"), "", Map.of()));
    c.add(
        change(
            p, Fact.SURVEY_LINE, word("high"), "t-bar-high-line", out("t-bar", "modified-t-bar")));
    c.add(
        change(
            f,
            Fact.TOTAL_STAND_OFF_6,
            mm(1.6),
            "bar-total-stand-off",
            out("rpi", "i-bar", "t-bar", "modified-t-bar")));
    c.add(change(p, Fact.BAR_CROSSING, Reading.degrees(60, 3), "bar-crossing", out(BARS)));
    c.add(
        change(
            p,
            Fact.BAR_CROSSING,
            Reading.degrees(76, 3),
            "bar-crossing",
            all(Answer.NOT_DECIDED, BARS)));
    // Arms: what is surely overstressed is made of another material or does not serve; what may be
    // is a warning.
    c.add(
        change(
            p, Fact.ARM_STRESS, share(1.5, 0.3), "arm-stress", all(Answer.SERVES_AFTER, SERVING)));
    c.add(change(p, Fact.ARM_STRESS, share(1.0, 0.3), "", Map.of()));
    c.add(
        new Change(
            "an arm overstressed in every material",
            p,
            p.with(Fact.ARM_STRESS, share(1.5, 0.3))
                .with(Fact.ARM_STRESS_OTHERWISE, share(1.1, 0.2)),
            "arm-stress",
            out(SERVING)));
    c.add(change(p, Fact.ARM_PULL, new Reading.Measured(1, 0.3, "N"), "arm-pull-weak", Map.of()));
    c.add(change(p, Fact.ARM_PULL, new Reading.Measured(15, 3, "N"), "arm-pull-strong", Map.of()));
    c.add(change(p, Fact.ARM_PULL, new Reading.NotKnown("the tip locks itself"), "", Map.of()));
    c.add(change(p, Fact.ENCIRCLEMENT, Reading.degrees(170, 3), "arm-encirclement", Map.of()));
    // Free end.
    Map<String, Answer> free = out("cast-circumferential");
    free.put("rpi", Answer.SERVES);
    free.put("rpa", Answer.SERVES);
    c.add(change(p, Fact.FREE_END, yes(), "", free));
    c.add(change(f, Fact.FAR_REST, no(), "far-rest", out("rpi", "rpa", "reverse-circlet")));
    c.add(
        change(
            f, Fact.TIPPING, word("away from the space"), "rpa-not-mesially-tipped", out("rpa")));
    c.add(change(f, Fact.PLANE_HEIGHT, mm(1), "rpi-plane", all(Answer.SERVES_AFTER, "rpi")));
    c.add(
        new Change(
            "a plane that would take too much enamel",
            f,
            f.with(Fact.PLANE_HEIGHT, mm(1)).with(Fact.PLANE_ENAMEL, mm(0.7)),
            "rpi-plane",
            out("rpi")));
    // Circlets.
    c.add(change(p, Fact.CIRCLET_LENGTH, mm(12), "", Map.of()));
    c.add(change(p, Fact.CIRCLET_LENGTH, mm(7), "wire-length", out("combination")));
    c.add(change(p, Fact.CIRCLET_LENGTH, mm(9), "wire-length-comfortable", Map.of()));
    c.add(change(p, Fact.HEAVY_HANDLING, yes(), "wire-handling", Map.of()));
    c.add(change(p, Fact.CROWN_HEIGHT, mm(4.5), "hairpin-crown-height", out("hairpin")));
    c.add(change(p, Fact.SHOWS, yes(), "", Map.of()));
    c.add(
        change(
            p,
            Fact.ISOLATED,
            yes(),
            "half-and-half-isolated",
            all(Answer.SERVES, "half-and-half")));
    c.add(change(p, Fact.NEAR_REST, no(), "back-action-near-rest", Map.of()));
    c.add(
        change(
            p,
            Fact.RECIPROCAL_UNDERCUT,
            mm(0.3),
            "reciprocal-undercut",
            all(
                Answer.SERVES_AFTER,
                "cast-circumferential",
                "reverse-circlet",
                "hairpin",
                "combination",
                "i-bar",
                "t-bar",
                "modified-t-bar")));
    c.add(
        change(
            p,
            Fact.RECIPROCAL_UNDERCUT,
            mm(0.6),
            "reciprocal-undercut",
            out(
                "cast-circumferential",
                "reverse-circlet",
                "hairpin",
                "combination",
                "i-bar",
                "t-bar",
                "modified-t-bar")));
    // A front tooth has less enamel to lose.
    c.add(
        change(
            p.with(Fact.TOOTH_KIND, word("canine")),
            Fact.RECIPROCAL_UNDERCUT,
            mm(0.4),
            "reciprocal-undercut-front",
            out(
                "cast-circumferential",
                "reverse-circlet",
                "combination",
                "i-bar",
                "t-bar",
                "modified-t-bar")));
    c.add(
        change(
            f.with(Fact.TOOTH_KIND, word("canine")),
            Fact.PLANE_HEIGHT,
            mm(1),
            "rpi-plane-front",
            all(Answer.SERVES_AFTER, "rpi")));
    c.add(change(p, Fact.RECIPROCAL_HEIGHT, mm(1), "reciprocal-contact", Map.of()));
    c.add(change(p, Fact.TOOTH_KIND, word("canine"), "", out("hairpin", "back-action")));
    // Where there is no space.
    Map<String, Answer> noSpace =
        out("combination", "i-bar", "t-bar", "modified-t-bar", "reverse-circlet");
    noSpace.put("embrasure", Answer.SERVES);
    c.add(change(p, Fact.ADJACENT_SPACE, no(), "", noSpace));
    c.add(
        change(
            embrasure,
            Fact.OCCLUSAL_ROOM,
            mm(1),
            "embrasure-room",
            all(Answer.SERVES_AFTER, "embrasure")));
    c.add(change(embrasure, Fact.OCCLUSAL_ROOM, mm(0.3), "embrasure-room", out("embrasure")));
    // Molars.
    Map<String, Answer> asUpper = out("ring-lower", "lingual-retention");
    asUpper.put("ring-upper", Answer.SERVES);
    c.add(new Change("an upper molar", lower, upper, "", asUpper));
    c.add(change(lower, Fact.TIPPING, word("none"), "ring-tipped", out("ring-lower")));
    c.add(change(lower, Fact.POOR_HYGIENE, yes(), "ring-hygiene", out("ring-lower")));
    c.add(
        change(
            lower,
            Fact.VESTIBULE_DEPTH,
            mm(3),
            "",
            out("ring-lower", "i-bar", "t-bar", "modified-t-bar")));
    c.add(
        change(
            lower,
            Fact.TISSUE_UNDERCUT_3,
            mm(1.4),
            "",
            out("ring-lower", "i-bar", "t-bar", "modified-t-bar")));
    // The strut of an upper ring is palatal: facial tissue and vestibule are nothing to it.
    for (Fact facial : List.of(Fact.VESTIBULE_DEPTH, Fact.TISSUE_UNDERCUT_3)) {
      c.add(
          change(
              upper,
              facial,
              mm(facial == Fact.VESTIBULE_DEPTH ? 3 : 1.4),
              "",
              out("i-bar", "t-bar", "modified-t-bar")));
    }
    c.add(
        change(
            lower,
            Fact.FACIAL_ARM_UNDERCUT,
            mm(0.3),
            "facial-arm-undercut",
            all(Answer.SERVES_AFTER, "lingual-retention")));
    c.add(
        change(
            lower,
            Fact.FACIAL_ARM_UNDERCUT,
            mm(0.6),
            "facial-arm-undercut",
            out("lingual-retention")));
    c.add(change(lower, Fact.FAR_REST, no(), "", out("reverse-circlet")));
    Map<String, Answer> lowerFree = out("cast-circumferential", "lingual-retention");
    lowerFree.put("rpi", Answer.SERVES);
    lowerFree.put("rpa", Answer.SERVES);
    c.add(change(lower, Fact.FREE_END, yes(), "", lowerFree));
    // A pier between a bounded space and a free end, seen from the bounded side.
    c.add(change(p, Fact.FREE_END_BEYOND, yes(), "", out("reverse-circlet", "back-action")));
    c.add(
        change(
            lower, Fact.FREE_END_BEYOND, yes(), "", out("reverse-circlet", "lingual-retention")));
    AbutmentFacts pier = p.with(Fact.ISOLATED, yes());
    Map<String, Answer> pierFree = out("cast-circumferential", "half-and-half");
    pierFree.put("rpi", Answer.SERVES);
    pierFree.put("rpa", Answer.SERVES);
    c.add(change(pier, Fact.FREE_END, yes(), "", pierFree));
    // The arm of an RPA lies on the line: half its width must have room above it.
    c.add(
        new Change(
            "a line high where the arms begin next to a free end",
            f,
            Abutments.facial(f, near, Abutments.third(0.6, 1.2, 2.5, 0.25, 0.5)),
            "",
            Map.of()));
    c.add(
        new Change(
            "so high that half an arm has no room",
            f,
            Abutments.facial(f, near, Abutments.third(0.6, 0.5, 2.5, 0.25, 0.5)),
            "arm-on-line-at-origin",
            all(Answer.SERVES_AFTER, "rpa")));
    // Readings of the thirds.
    c.add(
        new Change(
            "no undercut away from the space",
            p,
            Abutments.facial(p, far, Abutments.third(0, 2.2, 2.5)),
            "retentive-undercut",
            out("cast-circumferential", "combination")));
    c.add(
        new Change(
            "0.15 mm away from the space",
            p,
            Abutments.facial(p, far, Abutments.third(0.15, 2.2, 2.5)),
            "retentive-undercut",
            new TreeMap<>(
                Map.of(
                    "cast-circumferential",
                    Answer.SERVES_AFTER,
                    "combination",
                    Answer.DOES_NOT_SERVE))));
    c.add(
        new Change(
            "no undercut next to the space",
            p,
            Abutments.facial(p, near, Abutments.third(0, 2.2, 2.5)),
            "retentive-undercut",
            out("reverse-circlet", "hairpin", "back-action", "t-bar", "modified-t-bar")));
    c.add(
        new Change(
            "no undercut in the middle: the bar's tip goes a little mesial",
            p,
            Abutments.facial(p, AcrossThird.MIDDLE, Abutments.third(0, 2.2, 2.5)),
            "",
            Map.of()));
    c.add(
        new Change(
            "a line high where the arm begins",
            p,
            Abutments.facial(p, near, Abutments.third(0.6, 1.2, 2.5, 0.25, 0.5)),
            "cast-arm-above-line-at-origin",
            all(Answer.SERVES_AFTER, "cast-circumferential")));
    c.add(
        new Change(
            "a line whose lowering would take too much enamel",
            p,
            Abutments.facial(p, near, Abutments.third(0.6, 1.2, 2.5, 0.25, 0.5))
                .with(Fact.LOWERING_ENAMEL_ORIGIN, mm(0.6)),
            "cast-arm-above-line-at-origin",
            out("cast-circumferential")));
    c.add(
        new Change(
            "a line that ends at the margin before it is lowered",
            p,
            Abutments.facial(p, near, Abutments.third(0.6, 1.2, 2.5, 0.25, 0.5))
                .with(Fact.LOWERING_ENAMEL_ORIGIN, new Reading.NoRoom("the crown ends before")),
            "cast-arm-above-line-at-origin",
            out("cast-circumferential")));
    AbutmentFacts canine = p.with(Fact.TOOTH_KIND, word("canine"));
    c.add(
        new Change(
            "a front tooth has less enamel to lose where the arm begins",
            canine,
            Abutments.facial(canine, near, Abutments.third(0.6, 1.2, 2.5, 0.25, 0.5))
                .with(Fact.LOWERING_ENAMEL_ORIGIN, mm(0.4)),
            "cast-arm-above-line-at-origin-front",
            out("cast-circumferential")));
    c.add(
        new Change(
            "a front tooth has less enamel to lose in the middle",
            canine,
            Abutments.facial(canine, AcrossThird.MIDDLE, Abutments.third(0.6, 1.0, 2.5, 0.25, 0.5))
                .with(Fact.LOWERING_ENAMEL_MIDDLE, mm(0.4)),
            "cast-arm-above-line-in-middle-front",
            out("cast-circumferential", "reverse-circlet")));
    c.add(
        new Change(
            "a line high in the middle",
            p,
            Abutments.facial(p, AcrossThird.MIDDLE, Abutments.third(0.6, 1.0, 2.5, 0.25, 0.5)),
            "cast-arm-above-line-in-middle",
            all(Answer.SERVES_AFTER, "cast-circumferential", "reverse-circlet", "back-action")));
    c.add(
        new Change(
            "a line low in the middle",
            p,
            Abutments.facial(p, AcrossThird.MIDDLE, Abutments.third(0.6, 2.2, 0.3, 0.25, 0.5)),
            "wire-below-line-in-middle",
            out("combination")));
    c.add(
        new Change(
            "a line low at the tip",
            p,
            Abutments.facial(p, far, Abutments.third(0.6, 2.2, 0.3, 0.25, 0.5)),
            "wire-below-line-at-tip",
            out("combination")));
    c.add(
        new Change(
            "a mark too near to the margin",
            p,
            Abutments.facial(p, far, thirdWith(0.25, 0.25, 0.5, 1.5)),
            "tip-clear-of-margin",
            out("cast-circumferential")));
    return c;
  }

  /** Both marks, the one of a size with other readings. */
  private static AbutmentFacts.Third thirdWith(
      double gauge, double atReference, double fromMargin, double belowLine) {
    AbutmentFacts.Third usual = Abutments.third(0.6, 2.2, 2.5, 0.25, 0.5);
    return new AbutmentFacts.Third(
        usual.deepest(),
        usual.clear(),
        usual.roomAbove(),
        usual.roomBelow(),
        usual.marks().stream()
            .map(
                m ->
                    m.gaugeMm() == gauge
                        ? Abutments.mark(gauge, atReference, fromMargin, belowLine)
                        : m)
            .toList());
  }

  @ParameterizedTest
  @MethodSource("changes")
  void oneChangeFlipsExactlyWhatItShould(Change change) {
    AbutmentJudgement before = JUDGE.judge(change.from);
    AbutmentJudgement after = JUDGE.judge(change.to);
    Map<String, Answer> flipped = new TreeMap<>();
    for (Judgement j : after.inOrder()) {
      if (j.answer() != before.of(j.family().id()).answer()) {
        flipped.put(j.family().id(), j.answer());
      }
    }
    assertThat(flipped).isEqualTo(new TreeMap<>(change.flips));
    if (!change.by.isEmpty()) {
      Verdict wanted =
          change.flips.containsValue(Answer.SERVES)
              ? Verdict.MET
              : change.flips.containsValue(Answer.NOT_DECIDED) ? null : Verdict.NOT_MET;
      Set<String> families =
          change.flips.isEmpty()
              ? after.inOrder().stream()
                  .filter(j -> j.step(change.by).isPresent())
                  .map(j -> j.family().id())
                  .collect(Collectors.toSet())
              : change.flips.keySet();
      assertThat(families).isNotEmpty();
      for (String family : families) {
        var finding = after.of(family).step(change.by).orElseThrow().finding();
        if (wanted != null && !(change.flips.isEmpty() && finding.verdict() == Verdict.MET)) {
          assertThat(finding.verdict()).as(family).isEqualTo(wanted);
        }
        assertThat(finding.source()).isNotBlank();
      }
    }
  }

  @Test
  void everyClauseOfEveryFamilyFailsSomewhere() {
    Set<String> missed = new TreeSet<>();
    for (var family : Rulebook.shipped().clasps().families()) {
      for (var clause : family.clauses()) {
        missed.add(family.id() + " " + clause.id());
      }
    }
    int all = missed.size();
    List<AbutmentFacts> tried = new ArrayList<>(changes().stream().map(Change::to).toList());
    // Each change on each kind of abutment, so that shared clauses are hit in every family.
    List<AbutmentFacts> bases =
        List.of(
            Abutments.premolar(),
            Abutments.premolar().with(Fact.TOOTH_KIND, word("canine")),
            Abutments.freeEnd(),
            Abutments.tippedMolar("lower"),
            Abutments.tippedMolar("upper"),
            Abutments.premolar().with(Fact.ADJACENT_SPACE, no()),
            Abutments.tooth(14, "premolar", "upper"));
    for (AbutmentFacts base : bases) {
      tried.add(base);
      for (Fact fact : Fact.values()) {
        switch (fact.kind()) {
          case CHOICE -> fact.choices().forEach(w -> tried.add(base.with(fact, word(w))));
          case YES_NO -> {
            tried.add(base.with(fact, yes()));
            tried.add(base.with(fact, no()));
          }
          case LENGTH -> {
            tried.add(base.with(fact, mm(0)));
            tried.add(base.with(fact, mm(9)));
          }
          case ANGLE -> {
            tried.add(base.with(fact, Reading.degrees(5, 1)));
            tried.add(base.with(fact, Reading.degrees(350, 1)));
          }
          case FORCE -> {
            tried.add(base.with(fact, new Reading.Measured(0.5, 0.1, "N")));
            tried.add(base.with(fact, new Reading.Measured(30, 5, "N")));
          }
          case SHARE -> tried.add(base.with(fact, new Reading.Measured(1.6, 0.3, "1")));
        }
      }
      for (Surface surface : List.of(Surface.FACIAL, Surface.LINGUAL)) {
        for (AcrossThird across : AcrossThird.values()) {
          AbutmentFacts.Site site = new AbutmentFacts.Site(surface, across);
          tried.add(base.with(site, Abutments.third(0.6, 0.2, 0.2, 0.25, 0.5)));
        }
      }
      AbutmentFacts poor = base;
      for (Surface surface : List.of(Surface.FACIAL, Surface.LINGUAL)) {
        for (AcrossThird across : AcrossThird.values()) {
          AbutmentFacts.Third usual = Abutments.third(0.6, 2.2, 2.5, 0.25, 0.5);
          poor =
              poor.with(
                  new AbutmentFacts.Site(surface, across),
                  new AbutmentFacts.Third(
                      usual.deepest(),
                      usual.clear(),
                      usual.roomAbove(),
                      usual.roomBelow(),
                      List.of(Abutments.mark(0.25, 0, 0.3, 5), Abutments.mark(0.5, 0, 0.3, 5))));
        }
      }
      tried.add(poor);
    }
    for (AbutmentFacts facts : tried) {
      for (Judgement j : JUDGE.judge(facts).inOrder()) {
        for (Judgement.Step step : j.steps()) {
          if (step.finding().verdict() == Verdict.NOT_MET) {
            missed.remove(j.family().id() + " " + step.finding().rule());
          }
        }
      }
    }
    assertThat(missed).as("clauses never hit, of " + all).isEmpty();
  }

  @Test
  void theShippedFactsOfCommonPracticeHold() {
    var book = Rulebook.shipped().clasps();
    Map<String, Double> gauges =
        book.families().stream().collect(Collectors.toMap(f -> f.id(), f -> f.gauge().value()));
    assertThat(gauges).containsEntry("cast-circumferential", 0.25).containsEntry("i-bar", 0.25);
    assertThat(gauges).containsEntry("combination", 0.50);
    // A reverse circlet on an upper premolar shows too much; on a lower one, or an upper molar,
    // not.
    AbutmentFacts upper = Abutments.tooth(14, "premolar", "upper");
    Judgement reverse = JUDGE.judge(upper).of("reverse-circlet");
    assertThat(reverse.answer()).isEqualTo(Answer.DOES_NOT_SERVE);
    assertThat(reverse.step("reverse-circlet-upper-premolar").orElseThrow().because())
        .contains("shows too much");
    assertThat(JUDGE.judge(Abutments.premolar()).of("reverse-circlet").answer())
        .isEqualTo(Answer.SERVES);
    assertThat(JUDGE.judge(Abutments.tooth(16, "molar", "upper")).of("reverse-circlet").answer())
        .isEqualTo(Answer.SERVES);
    // The I-bar's tip lies mid-facially; a little mesial is acceptable, distal is not.
    AbutmentFacts p = Abutments.premolar();
    assertThat(JUDGE.judge(p).of("i-bar").tip()).contains(AcrossThird.MIDDLE);
    AbutmentFacts flatMiddle =
        Abutments.facial(p, AcrossThird.MIDDLE, Abutments.third(0, 2.2, 2.5));
    assertThat(JUDGE.judge(flatMiddle).of("i-bar").tip()).contains(AcrossThird.MESIAL);
    AbutmentFacts distalOnly =
        Abutments.facial(flatMiddle, AcrossThird.MESIAL, Abutments.third(0, 2.2, 2.5));
    assertThat(JUDGE.judge(distalOnly).of("i-bar").answer()).isEqualTo(Answer.DOES_NOT_SERVE);
    // A tilt of more than a few degrees is unusual.
    assertThat(Rulebook.shipped().survey().tiltNote().value()).isEqualTo(5);
  }

  @Test
  void nextToAFreeEndWhatReleasesComesFirst() {
    for (Fact reason : List.of(Fact.SHORT_ROOT, Fact.DISPLACEABLE_TISSUE)) {
      AbutmentJudgement judged = JUDGE.judge(Abutments.freeEnd().with(reason, yes()));
      List<String> order = serving(judged);
      assertThat(order.subList(0, 3)).containsExactly("rpi", "i-bar", "combination");
      assertThat(judged.of("i-bar").rankedBy()).contains("I-bar first", "common practice");
      // Without an undercut for the bar the wire is next.
      AbutmentFacts noBar =
          Abutments.freeEnd().with(reason, yes()).with(Fact.TOTAL_STAND_OFF_6, mm(2));
      assertThat(serving(JUDGE.judge(noBar)).getFirst()).isEqualTo("combination");
    }
  }

  @Test
  void aPierIsJudgedByItsFreeEndFromEitherSide() {
    AbutmentFacts pier = Abutments.premolar().with(Fact.FREE_END_BEYOND, yes());
    Judgement circlet = JUDGE.judge(pier).of("cast-circumferential");
    assertThat(circlet.warnings()).contains("circumferential-beyond-free-end");
    assertThat(serving(JUDGE.judge(pier)).getFirst()).isEqualTo("combination");
    for (Fact reason : List.of(Fact.SHORT_ROOT, Fact.DISPLACEABLE_TISSUE)) {
      assertThat(serving(JUDGE.judge(pier.with(reason, yes()))).subList(0, 2))
          .containsExactly("i-bar", "combination");
    }
    // RPI and RPA release towards a free end on their own side only.
    for (String released : List.of("rpi", "rpa")) {
      assertThat(JUDGE.judge(pier).of(released).answer()).isEqualTo(Answer.DOES_NOT_SERVE);
    }
    // Nobody told of the other side: it may change the answer, and is not assumed.
    AbutmentFacts open = Abutments.premolar().without(Fact.FREE_END_BEYOND);
    assertThat(JUDGE.judge(open).of("reverse-circlet").undecided())
        .containsExactly(Fact.FREE_END_BEYOND);
    assertThat(open.reading(Fact.FREE_END_EITHER)).isInstanceOf(Reading.NotKnown.class);
    assertThat(open.with(Fact.FREE_END, yes()).reading(Fact.FREE_END_EITHER)).isEqualTo(yes());
  }

  @Test
  void theOrderFollowsThePreferences() {
    assertThat(serving(JUDGE.judge(Abutments.premolar())).getFirst())
        .isEqualTo("cast-circumferential");
    List<String> seen = serving(JUDGE.judge(Abutments.premolar().with(Fact.SHOWS, yes())));
    assertThat(seen.indexOf("combination")).isLessThan(seen.indexOf("cast-circumferential"));
    assertThat(seen.getFirst()).isEqualTo("i-bar");
    assertThat(serving(JUDGE.judge(Abutments.premolar().with(Fact.MOBILE, yes()))).getFirst())
        .isEqualTo("combination");
    assertThat(
            serving(JUDGE.judge(Abutments.premolar().with(Fact.AHEAD_OF_AXIS, yes()))).getFirst())
        .isEqualTo("combination");
  }

  @Test
  void whatWaitsForTheUndercutToBeMadeIsSaid() {
    AbutmentFacts shallow =
        Abutments.facial(Abutments.premolar(), AcrossThird.MESIAL, Abutments.third(0.15, 2.2, 2.5));
    Judgement circlet = JUDGE.judge(shallow).of("cast-circumferential");
    assertThat(circlet.answer()).isEqualTo(Answer.SERVES_AFTER);
    for (String open : List.of("tip-clear-of-margin", "tip-holds-at-reference", "arm-stress")) {
      assertThat(circlet.step(open).orElseThrow().finding().verdict())
          .as(open)
          .isEqualTo(Verdict.NOT_KNOWN);
    }
    assertThat(circlet.undecided()).isEmpty();
  }

  @Test
  void aLastResortComesBehindWhatIsNotDecided() {
    AbutmentFacts unknown = Abutments.premolar().without(Fact.VESTIBULE_DEPTH);
    List<String> order =
        JUDGE.judge(unknown).inOrder().stream()
            .filter(j -> j.answer() != Answer.DOES_NOT_SERVE)
            .map(j -> j.family().id())
            .toList();
    assertThat(JUDGE.judge(unknown).of("back-action").answer()).isEqualTo(Answer.SERVES);
    assertThat(JUDGE.judge(unknown).of("i-bar").answer()).isEqualTo(Answer.NOT_DECIDED);
    assertThat(order.getLast()).isEqualTo("back-action");
    assertThat(JUDGE.judge(unknown).first().orElseThrow().family().id())
        .isEqualTo("cast-circumferential");
    assertThat(
            Judgement.ORDER.compare(
                JUDGE.judge(unknown).of("i-bar"), JUDGE.judge(unknown).of("back-action")))
        .isNegative();
    assertThat(JUDGE.judge(unknown).of("back-action").rankedBy()).startsWith("A last resort: ");
  }

  @Test
  void findingsNameThePlacesBelowTheMarginThatTheRulebookHas() {
    AbutmentFacts p = Abutments.premolar();
    AbutmentFacts deeper =
        new AbutmentFacts(
            p.tooth(),
            p.space(),
            new AbutmentFacts.Levels(2.5, 7),
            p.general(),
            p.places(),
            p.thirds());
    assertThat(
            JUDGE
                .judge(deeper)
                .of("i-bar")
                .step("bar-total-stand-off")
                .orElseThrow()
                .finding()
                .what())
        .isEqualTo("total stand-off 7 mm below the margin");
    assertThat(deeper.words(Fact.TISSUE_UNDERCUT_3))
        .isEqualTo("tissue undercut within 2.5 mm of the margin");
  }

  @Test
  void anUnknownIsSaidAndNeverAssumed() {
    AbutmentFacts unknown = Abutments.premolar().without(Fact.VESTIBULE_DEPTH);
    Judgement bar = JUDGE.judge(unknown).of("i-bar");
    assertThat(bar.answer()).isEqualTo(Answer.NOT_DECIDED);
    assertThat(bar.undecided()).containsExactly(Fact.VESTIBULE_DEPTH);
    // Where something else rules it out, the unknown cannot change the answer.
    Judgement ruledOut = JUDGE.judge(unknown.with(Fact.TISSUE_UNDERCUT_3, mm(2))).of("i-bar");
    assertThat(ruledOut.answer()).isEqualTo(Answer.DOES_NOT_SERVE);
    assertThat(ruledOut.undecided()).isEmpty();
    // Mobility changes no answer, but the order.
    AbutmentJudgement noMobility = JUDGE.judge(Abutments.premolar().without(Fact.MOBILE));
    assertThat(noMobility.couldReorder()).containsExactly(Fact.MOBILE);
    // Nothing known at all: nothing serves, nothing fails.
    AbutmentFacts nothing =
        new AbutmentFacts(
            Abutments.premolar().tooth(),
            Surface.DISTAL,
            Abutments.LEVELS,
            Map.of(),
            Map.of(),
            Map.of());
    assertThat(JUDGE.judge(nothing).inOrder())
        .allSatisfy(j -> assertThat(j.answer()).isEqualTo(Answer.NOT_DECIDED));
  }

  @Test
  void whatIsTooCloseToCallIsPreparedForWhereItCanBe() {
    AbutmentFacts close =
        Abutments.premolar().with(Fact.RECIPROCAL_UNDERCUT, Reading.mm(0.04, 0.03));
    Judgement circlet = JUDGE.judge(close).of("cast-circumferential");
    assertThat(circlet.answer()).isEqualTo(Answer.SERVES_AFTER);
    assertThat(circlet.preparations().getFirst().clause()).isEqualTo("reciprocal-undercut");
    // Where it may be more than can be prepared, nothing is decided.
    AbutmentFacts wide = Abutments.premolar().with(Fact.RECIPROCAL_UNDERCUT, Reading.mm(0.04, 0.6));
    Judgement open = JUDGE.judge(wide).of("cast-circumferential");
    assertThat(open.answer()).isEqualTo(Answer.NOT_DECIDED);
    assertThat(open.undecided()).containsExactly(Fact.RECIPROCAL_UNDERCUT);
  }

  /** What lies nearer to the margin than a tip may is no undercut that a depression can deepen. */
  @Test
  void anUndercutIsDeepenedWhereATipMayLie() {
    AbutmentFacts.Third usual = Abutments.third(0.15, 1.9, 2.5);
    AbutmentFacts.Third atTheGum =
        new AbutmentFacts.Third(
            usual.deepest(),
            new AbutmentFacts.Clear(Reading.mm(0.02, 0.03), Optional.empty()),
            usual.roomAbove(),
            usual.roomBelow(),
            usual.marks());
    Judgement circlet =
        JUDGE
            .judge(Abutments.facial(Abutments.premolar(), AcrossThird.MESIAL, atTheGum))
            .of("cast-circumferential");
    assertThat(circlet.answer()).isEqualTo(Answer.DOES_NOT_SERVE);
    assertThat(circlet.step("retentive-undercut").orElseThrow().finding().reading())
        .isEqualTo(Reading.mm(0.02, 0.03));
  }

  @Test
  void preparationsSayHowMuch() {
    AbutmentFacts shallow =
        Abutments.facial(Abutments.premolar(), AcrossThird.MESIAL, Abutments.third(0.15, 1.9, 2.5));
    Judgement circlet = JUDGE.judge(shallow).of("cast-circumferential");
    assertThat(circlet.preparations()).hasSize(1);
    assertThat(circlet.preparations().getFirst().amountMm()).isEqualTo(0.10, within(1e-9));
    assertThat(circlet.preparations().getFirst().what()).contains("deepen");
  }

  @Test
  void aLoweredLineTellsHowFarAndWhatThatTakes() {
    AbutmentFacts p = Abutments.premolar();
    AbutmentFacts high =
        Abutments.facial(p, AcrossThird.DISTAL, Abutments.third(0.6, 1.2, 2.5, 0.25, 0.5));
    Judgement.Preparation lower =
        JUDGE.judge(high).of("cast-circumferential").preparations().getFirst();
    assertThat(lower.amountMm()).isCloseTo(0.8, within(1e-9));
    assertThat(lower.enamelMm()).hasValue(0.3);
    assertThat(lower.words())
        .isEqualTo("lower the survey line where the arm begins, 0.80 mm (takes 0.30 mm of enamel)");
    // However far: what counts is the enamel.
    AbutmentFacts higher =
        Abutments.facial(p, AcrossThird.DISTAL, Abutments.third(0.6, 0.5, 2.5, 0.25, 0.5));
    assertThat(JUDGE.judge(higher).of("cast-circumferential").answer())
        .isEqualTo(Answer.SERVES_AFTER);
    Judgement refused =
        JUDGE.judge(higher.with(Fact.LOWERING_ENAMEL_ORIGIN, mm(0.7))).of("cast-circumferential");
    assertThat(refused.answer()).isEqualTo(Answer.DOES_NOT_SERVE);
    assertThat(refused.step("enamel-most-back").orElseThrow().finding().what())
        .contains("where the arm begins by 1.50 mm");
    // What was not measured is not assumed.
    Judgement open =
        JUDGE.judge(high.without(Fact.LOWERING_ENAMEL_ORIGIN)).of("cast-circumferential");
    assertThat(open.answer()).isEqualTo(Answer.NOT_DECIDED);
    assertThat(open.undecided()).containsExactly(Fact.LOWERING_ENAMEL_ORIGIN);
  }

  @Test
  void oneThresholdInACopyChangesWhatItShouldAndNoMore() {
    String text = Rulebook.shipped().text();
    String copy =
        text.replace("bar-stand-off-most: {value: 1.5,", "bar-stand-off-most: {value: 0.5,");
    assertThat(copy).isNotEqualTo(text);
    ClaspJudge strict = new ClaspJudge(Rulebook.of("copy", copy).clasps());
    AbutmentJudgement before = JUDGE.judge(Abutments.premolar());
    AbutmentJudgement after = strict.judge(Abutments.premolar());
    for (Judgement j : before.inOrder()) {
      boolean bar = Set.of(BARS).contains(j.family().id());
      assertThat(after.of(j.family().id()).answer())
          .as(j.family().id())
          .isEqualTo(bar ? Answer.DOES_NOT_SERVE : j.answer());
    }
  }

  private static List<String> serving(AbutmentJudgement judged) {
    return judged.inOrder().stream()
        .filter(j -> j.answer() == Answer.SERVES)
        .map(j -> j.family().id())
        .toList();
  }

  @Test
  void anOverstressedArmIsWeighedWithWhatWouldHelp() {
    AbutmentFacts over = Abutments.premolar().with(Fact.ARM_STRESS, share(1.5, 0.3));
    Judgement cast = JUDGE.judge(over).of("cast-circumferential");
    assertThat(cast.answer()).isEqualTo(Answer.SERVES_AFTER);
    assertThat(cast.preparations()).isEmpty();
    assertThat(cast.changes())
        .singleElement()
        .satisfies(c -> assertThat(c.what()).contains("material"));
    Judgement maybe =
        JUDGE
            .judge(Abutments.premolar().with(Fact.ARM_STRESS, share(1, 0.3)))
            .of("cast-circumferential");
    assertThat(maybe.answer()).isEqualTo(Answer.SERVES);
    assertThat(maybe.warnings()).contains("arm-stress");
    // What is ruled out by its place is not worked out as far as its forces, and says so.
    AbutmentFacts none =
        Abutments.premolar()
            .with(Fact.FRENUM, yes())
            .with(Fact.ARM_STRESS, new Reading.NotKnown("not worked out"))
            .with(Fact.ARM_PULL, new Reading.NotKnown("not worked out"));
    Judgement bar = JUDGE.judge(none).of("i-bar");
    assertThat(bar.answer()).isEqualTo(Answer.DOES_NOT_SERVE);
    assertThat(bar.step("arm-stress")).isEmpty();
  }
}
