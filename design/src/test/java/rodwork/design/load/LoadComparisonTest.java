package rodwork.design.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.chart.Firmness;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.design.load.DentureOnCast.Base;
import rodwork.design.load.DentureOnCast.Carrier;
import rodwork.design.load.DentureOnCast.Cell;
import rodwork.design.load.DentureOnCast.Place;
import rodwork.design.load.DentureOnCast.Rest;
import rodwork.design.load.DentureOnCast.Tip;
import rodwork.design.load.LoadComparison.Answer;
import rodwork.design.load.LoadComparison.Measure;
import rodwork.geometry.Watch;
import rodwork.rules.Threshold;

/** Two plans of a made-up lower mouth with two free ends: teeth 35 and 45 carry. */
class LoadComparisonTest {
  private static final Map<String, Double> VALUES =
      Map.ofEntries(
          Map.entry("load-tooth-axial-least", 100.0),
          Map.entry("load-tooth-axial-most", 1000.0),
          Map.entry("load-teeth-uneven", 2.0),
          Map.entry("load-tooth-tipping-least", 3000.0),
          Map.entry("load-tooth-tipping-most", 30000.0),
          Map.entry("load-resistance-depth-least", 4.0),
          Map.entry("load-resistance-depth-most", 9.0),
          Map.entry("load-loose-softer", 10.0),
          Map.entry("load-ridge-firm-least", 0.2),
          Map.entry("load-ridge-firm-most", 1.0),
          Map.entry("load-ridge-yielding-least", 0.1),
          Map.entry("load-ridge-yielding-most", 0.5),
          Map.entry("load-ridge-flabby-least", 0.03),
          Map.entry("load-ridge-flabby-most", 0.15),
          Map.entry("load-ridge-unknown-least", 0.03),
          Map.entry("load-ridge-unknown-most", 1.0),
          Map.entry("load-palate-least", 0.25),
          Map.entry("load-palate-most", 1.2),
          Map.entry("load-clasp-pull-least", 2.3),
          Map.entry("load-clasp-pull-most", 47.5),
          Map.entry("load-clasp-travel-least", 0.3),
          Map.entry("load-clasp-travel-most", 0.7),
          Map.entry("load-force-least", 20.0),
          Map.entry("load-force-most", 120.0),
          Map.entry("load-draws", 200.0),
          Map.entry("load-interval-share", 0.9),
          Map.entry("load-alike", 1.1));

  private static final LoadRules RULES =
      LoadRules.from(
          (id, unit) -> Threshold.own(id, VALUES.getOrDefault(id, Double.NaN), unit, "for a test"));

  private static final ToothNumber RIGHT = ToothNumber.of(45);
  private static final ToothNumber LEFT = ToothNumber.of(35);

  /** To distal is towards −y. The rest lies so far to mesial of the axis, the tip so far. */
  private static DentureOnCast mouth(double rest, double tip, double baseLength) {
    List<Carrier> teeth = new ArrayList<>();
    List<Rest> rests = new ArrayList<>();
    List<Tip> tips = new ArrayList<>();
    List<Base> bases = new ArrayList<>();
    List<Cell> bed = new ArrayList<>();
    for (ToothNumber t : List.of(RIGHT, LEFT)) {
      double x = t.equals(RIGHT) ? 20 : -20;
      teeth.add(new Carrier(t, x, 0, 0, 0, 0, -1, false));
      rests.add(new Rest(t, x, rest));
      tips.add(new Tip(t, x + Math.signum(x) * 4, tip, Optional.empty()));
      // An indirect retainer far in front.
      ToothNumber front = ToothNumber.of(t.equals(RIGHT) ? 43 : 33);
      teeth.add(new Carrier(front, x / 2, 18, 0, 0, 0, -1, false));
      rests.add(new Rest(front, x / 2, 18));
      for (double y = -5; y > -5 - baseLength; y -= 1.5) {
        for (double u = -5; u <= 5; u += 1.5) {
          bed.add(new Cell(bases.size(), x + u, y, 2.25));
        }
      }
      bases.add(
          new Base(
              List.of(ToothNumber.of(t.quadrant() * 10 + 6)),
              List.of(new Place(x, -10), new Place(x, -20)),
              true,
              Firmness.NOT_KNOWN));
    }
    return new DentureOnCast(teeth, rests, tips, bed, bases);
  }

  private static LoadStudy study(DentureOnCast denture) {
    return LoadStudy.of(denture, RULES, Watch.NONE);
  }

  private static LoadComparison.Ratio ratio(LoadComparison c, Measure measure, int tooth) {
    return c.ratios().stream()
        .filter(
            r ->
                r.measure() == measure
                    && r.bitten().getFirst().fdi() == 46
                    && r.tooth().map(ToothNumber::fdi).orElse(0) == tooth)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aPlanBesideItselfIsAlikeInEveryMeasure() {
    LoadStudy study = study(mouth(3, 0, 30));
    LoadComparison c = LoadComparison.of(study, study(mouth(3, 0, 30)), RULES);
    assertThat(c.ratios()).hasSize(2 * (2 + 2 * 4));
    assertThat(c.ratios())
        .allSatisfy(
            r -> {
              assertThat(r.answer()).isIn(Answer.ALIKE, Answer.NEITHER);
              assertThat(r.interval().orElseThrow().from()).isEqualTo(1);
              assertThat(r.interval().orElseThrow().to()).isEqualTo(1);
            });
    assertThat(ratio(c, Measure.REST, 45).answer()).isEqualTo(Answer.ALIKE);
    assertThat(c.remarks()).isEmpty();
  }

  /**
   * Common teaching: a rest next to the free end tips the tooth to distal, one away from it does
   * not.
   */
  @Test
  void aRestAwayFromTheFreeEndTipsTheToothToTheOtherSide() {
    LoadComparison c = LoadComparison.of(study(mouth(-3, 3, 30)), study(mouth(3, 0, 30)), RULES);
    LoadComparison.Ratio moment = ratio(c, Measure.MOMENT, 45);
    assertThat(moment.firstToDistal().orElseThrow()).isEqualTo(1);
    assertThat(moment.otherToDistal().orElseThrow()).isZero();
  }

  @Test
  void aLongerBaseLoadsItsTissueMoreAndSinksLess() {
    LoadComparison c = LoadComparison.of(study(mouth(3, 0, 18)), study(mouth(3, 0, 33)), RULES);
    assertThat(ratio(c, Measure.SINKING, 0).answer()).isEqualTo(Answer.LESS);
    // The teeth are a tenth of what nobody knows: the ratio is known far better.
    double[] sinking = sorted(study(mouth(3, 0, 33)).loads().getFirst().sinking());
    double spread = sinking[190] / sinking[10];
    LoadComparison.Ratio r = ratio(c, Measure.SINKING, 0);
    assertThat(spread).isGreaterThan(5);
    assertThat(r.interval().orElseThrow().to() / r.interval().orElseThrow().from())
        .isLessThan(spread / 2);
  }

  @Test
  void turnedRoundARatioIsItsInverse() {
    LoadStudy a = study(mouth(-3, 3, 24));
    LoadStudy b = study(mouth(3, 0, 30));
    LoadComparison forth = LoadComparison.of(a, b, RULES);
    LoadComparison back = LoadComparison.of(b, a, RULES);
    for (int i = 0; i < forth.ratios().size(); i++) {
      assertThat(forth.ratios().get(i).middle() * back.ratios().get(i).middle())
          .isCloseTo(1, within(0.02));
      assertThat(
              forth.ratios().get(i).interval().orElseThrow().from()
                  * back.ratios().get(i).interval().orElseThrow().to())
          .isCloseTo(1, within(1e-12));
    }
  }

  @Test
  void theRightSideOfAnEvenMouthIsTheLeftOne() {
    DentureOnCast mouth = mouth(3, 0, 30);
    LoadStudy study = study(mouth);
    // Mirrored, and the names of the sides with it: the unknown of the sides change places.
    assertThat(study.loads().get(0).base().missing().getFirst().fdi()).isEqualTo(46);
    double[] right = sorted(study.loads().get(0).sinking());
    double[] left = sorted(study.loads().get(1).sinking());
    assertThat(right[100] / left[100]).isCloseTo(1, within(0.15));
  }

  @Test
  void aToothThatOnlyOnePlanUsesIsNamedAndNoRatioIsMadeUp() {
    DentureOnCast with = mouth(3, 0, 30);
    DentureOnCast without =
        new DentureOnCast(
            with.teeth().stream().filter(t -> t.tooth().fdi() != 43).toList(),
            with.rests().stream().filter(t -> t.tooth().fdi() != 43).toList(),
            with.tips(),
            with.bed(),
            with.bases());
    LoadComparison c = LoadComparison.of(study(with), study(without), RULES);
    LoadComparison.Ratio r = ratio(c, Measure.REST, 43);
    assertThat(r.answer()).isEqualTo(Answer.ONLY_FIRST);
    assertThat(r.interval()).isEmpty();
    assertThat(r.middle()).isNaN();
  }

  @Test
  void aPlanThatNothingHoldsIsSaidToTipOver() {
    DentureOnCast held = mouth(3, 0, 30);
    DentureOnCast bare =
        new DentureOnCast(
            held.teeth().subList(0, 1),
            held.rests().subList(0, 1),
            List.of(),
            List.of(),
            held.bases());
    LoadComparison c = LoadComparison.of(study(held), study(bare), RULES);
    assertThat(c.remarks()).anyMatch(r -> r.fdi().contains("tips over in 200 of 200"));
    assertThat(c.ratios()).noneMatch(r -> r.interval().isPresent());
  }

  @Test
  void drawsDependOnTheNameAloneAndMeetEveryPartOnce() {
    double[] a = new Draws(50).of("tooth 35");
    assertThat(new Draws(50).of("tooth 35")).isEqualTo(a);
    assertThat(new Draws(50).of("tooth 36")).isNotEqualTo(a);
    double[] sorted = a.clone();
    Arrays.sort(sorted);
    for (int i = 0; i < 50; i++) {
      assertThat(sorted[i]).isEqualTo((i + 0.5) / 50);
    }
  }

  private static double[] sorted(LoadStudy.Values values) {
    double[] all = new double[values.count()];
    for (int i = 0; i < all.length; i++) {
      all[i] = values.of(i);
    }
    Arrays.sort(all);
    return all;
  }
}
