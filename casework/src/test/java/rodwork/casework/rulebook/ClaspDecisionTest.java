package rodwork.casework.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rodwork.casework.rulebook.ClaspChanges.mm;
import static rodwork.casework.rulebook.ClaspChanges.no;
import static rodwork.casework.rulebook.ClaspChanges.share;
import static rodwork.casework.rulebook.ClaspChanges.word;
import static rodwork.casework.rulebook.ClaspChanges.yes;

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
 */
class ClaspDecisionTest {
  private static final ClaspJudge JUDGE = new ClaspJudge(Rulebook.shipped().clasps());

  @ParameterizedTest
  @MethodSource("rodwork.casework.rulebook.ClaspChanges#changes")
  void oneChangeFlipsExactlyWhatItShould(ClaspChanges.Change change) {
    AbutmentJudgement before = JUDGE.judge(change.from());
    AbutmentJudgement after = JUDGE.judge(change.to());
    Map<String, Answer> flipped = new TreeMap<>();
    for (Judgement j : after.inOrder()) {
      if (j.answer() != before.of(j.family().id()).answer()) {
        flipped.put(j.family().id(), j.answer());
      }
    }
    assertThat(flipped).isEqualTo(new TreeMap<>(change.flips()));
    if (!change.by().isEmpty()) {
      Verdict wanted =
          change.flips().containsValue(Answer.SERVES)
              ? Verdict.MET
              : change.flips().containsValue(Answer.NOT_DECIDED) ? null : Verdict.NOT_MET;
      Set<String> families =
          change.flips().isEmpty()
              ? after.inOrder().stream()
                  .filter(j -> j.step(change.by()).isPresent())
                  .map(j -> j.family().id())
                  .collect(Collectors.toSet())
              : change.flips().keySet();
      assertThat(families).isNotEmpty();
      for (String family : families) {
        var finding = after.of(family).step(change.by()).orElseThrow().finding();
        if (wanted != null && !(change.flips().isEmpty() && finding.verdict() == Verdict.MET)) {
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
    List<AbutmentFacts> tried =
        new ArrayList<>(ClaspChanges.changes().stream().map(ClaspChanges.Change::to).toList());
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
            serving(
                    JUDGE.judge(
                        Abutments.premolar().with(Fact.SURVEY_LINE, new Reading.Word("high"))))
                .getFirst())
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
      boolean bar = Set.of(ClaspChanges.BARS).contains(j.family().id());
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
