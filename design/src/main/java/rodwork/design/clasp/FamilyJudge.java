package rodwork.design.clasp;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import rodwork.rules.Finding;
import rodwork.rules.Limit;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.rules.Verdict;

/** One family at one abutment, its tip in one third: asks every clause and keeps every answer. */
final class FamilyJudge {
  /** Id of the requirement that every family has: an undercut of its gauge. */
  static final String UNDERCUT = "retentive-undercut";

  private final Family family;
  private final TipPlace tip;
  private final double fitsMm;
  private final List<Judgement.Step> steps = new ArrayList<>();
  private final List<Judgement.Preparation> preparations = new ArrayList<>();
  private final List<Judgement.Change> changes = new ArrayList<>();
  private final List<String> warnings = new ArrayList<>();
  private final Set<Fact> undecided = EnumSet.noneOf(Fact.class);
  private boolean out;

  private FamilyJudge(Family family, TipPlace tip, double fitsMm) {
    this.family = family;
    this.tip = tip;
    this.fitsMm = fitsMm;
  }

  /** Where a family is not ruled out: only there arms are worth working out. */
  static List<AbutmentFacts.Reach> open(Family family, AbutmentFacts facts, double fitsMm) {
    return family.tips().stream()
        .map(spot -> new TipPlace(facts, family, spot))
        .filter(
            place ->
                new FamilyJudge(family, place, fitsMm).judge().answer()
                    != Judgement.Answer.DOES_NOT_SERVE)
        .map(TipPlace::reach)
        .toList();
  }

  /** The best that a family can do: its tip in the best of the thirds it may lie in. */
  static Judgement best(Family family, AbutmentFacts facts, double fitsMm) {
    Judgement best = null;
    for (AbutmentFacts.Spot spot : family.tips()) {
      TipPlace place = new TipPlace(facts, family, spot);
      Judgement there = new FamilyJudge(family, place, fitsMm).judge();
      if (best == null || there.answer().compareTo(best.answer()) < 0) {
        best = there;
      }
    }
    if (best == null) {
      throw new IllegalStateException("a family without a place for its tip: " + family.id());
    }
    return best;
  }

  private Judgement judge() {
    undercut();
    family.clauses().forEach(this::ask);
    Judgement.Answer answer =
        out
            ? Judgement.Answer.DOES_NOT_SERVE
            : !undecided.isEmpty()
                ? Judgement.Answer.NOT_DECIDED
                : preparations.isEmpty() && changes.isEmpty()
                    ? Judgement.Answer.SERVES
                    : Judgement.Answer.SERVES_AFTER;
    return new Judgement(
        family,
        answer,
        Optional.of(tip.across),
        steps,
        out ? List.of() : preparations,
        out ? List.of() : changes,
        warnings,
        out ? Set.of() : undecided,
        false,
        "");
  }

  private void undercut() {
    Threshold gauge = family.gauge();
    Optional<Reading> put = tip.put(Fact.TIP_UNDERCUT);
    if (put.isPresent()) {
      undercutPut(put.get());
      return;
    }
    Reading depth =
        tip.mark.isPresent()
            ? tip.mark.get().depth()
            : tip.third == null ? TipPlace.notMeasured() : tip.third.clear().depth();
    Limit limit = new Limit.Least(gauge.value() - fitsMm, gauge.unit());
    // A mark is a place where the gauge fits; no reading can take it back.
    Verdict verdict =
        tip.mark.isPresent()
            ? Verdict.MET
            : limit.judge(depth) == Verdict.MET ? Verdict.NOT_MET : limit.judge(depth);
    boolean deepEnough = tip.mark.isEmpty() && limit.judge(depth) == Verdict.MET;
    Clause.Consequence otherwise =
        deepEnough
            ? new Clause.Consequence.RulesOut()
            : new Clause.Consequence.Prepares(
                "deepen the undercut with a dimple or composite",
                Optional.empty(),
                family.deepening(),
                false);
    String because =
        deepEnough
            ? "deep enough, but no gauge reaches a place of that depth here"
            : String.format(Locale.ROOT, "the tip takes the %.2f mm gauge", gauge.value());
    Finding finding =
        new Finding(
            UNDERCUT,
            "undercut for the tip",
            tip.place(Fact.TIP_UNDERCUT),
            depth,
            new Limit.Least(gauge.value(), gauge.unit()),
            gauge.source(),
            gauge.standing(),
            verdict);
    steps.add(new Judgement.Step(finding, otherwise, because));
    if (verdict == Verdict.TOO_CLOSE_TO_CALL && canPrepare(otherwise, finding)) {
      follow(UNDERCUT, otherwise, finding);
    } else if (!verdict.decided()) {
      undecided.add(Fact.TIP_UNDERCUT);
    } else if (verdict == Verdict.NOT_MET) {
      follow(UNDERCUT, otherwise, finding);
    }
  }

  /** A tip that a person put elsewhere must lie within a gauge's fit of the undercut it takes. */
  private void undercutPut(Reading depth) {
    Threshold gauge = family.gauge();
    steps.add(
        new Judgement.Step(
            new Finding(
                UNDERCUT,
                "undercut where the tip was put",
                tip.place(Fact.TIP_UNDERCUT),
                depth,
                new Limit.Least(gauge.value() - fitsMm, gauge.unit()),
                gauge.source(),
                gauge.standing(),
                new Limit.Least(gauge.value() - fitsMm, gauge.unit()).judge(depth)),
            new Clause.Consequence.Warns(),
            String.format(Locale.ROOT, "the tip takes the %.2f mm gauge", gauge.value())));
    Finding deep =
        new Finding(
            UNDERCUT,
            "undercut where the tip was put",
            tip.place(Fact.TIP_UNDERCUT),
            depth,
            new Limit.Most(gauge.value() + fitsMm, gauge.unit()),
            gauge.source(),
            gauge.standing(),
            new Limit.Most(gauge.value() + fitsMm, gauge.unit()).judge(depth));
    steps.add(
        new Judgement.Step(
            deep,
            new Clause.Consequence.Warns(),
            "deeper than its gauge an arm is bent further than it is made for"));
    if (steps.stream().anyMatch(s -> s.finding().verdict() == Verdict.NOT_MET)) {
      warnings.add(UNDERCUT);
    }
  }

  private void ask(Clause clause) {
    Fact fact = clause.wants().fact();
    Verdict asked = Condition.all(clause.when(), tip::reading);
    if (asked == Verdict.NOT_MET) {
      return;
    }
    // Without a mark the retentive undercut has failed or is open already; its tip has no readings,
    // and an arm to it no forces: they are judged when it is made.
    if ((ofTip(clause.wants()) || ofForces(fact)) && !tip.stands()) {
      openUntilMade(clause, fact);
      return;
    }
    // What is ruled out by its place is not worked out as far as its forces.
    if (ofForces(fact) && !(tip.reading(fact) instanceof Reading.Measured) && out) {
      return;
    }
    Verdict verdict = clause.wants().judge(tip::reading);
    Finding finding =
        new Finding(
            clause.id(),
            tip.words(fact),
            tip.place(fact),
            tip.reading(fact),
            clause.wants().limit(tip::reading),
            clause.source(),
            clause.standing(),
            verdict);
    steps.add(new Judgement.Step(finding, clause.otherwise(), clause.because()));
    if (verdict == Verdict.MET || clause.otherwise() instanceof Clause.Consequence.Shows) {
      return;
    }
    if (clause.otherwise() instanceof Clause.Consequence.Warns) {
      // A warning that hangs on an unknown is given: the convenient value is not assumed.
      warnings.add(clause.id());
    } else if (verdict == Verdict.TOO_CLOSE_TO_CALL
        && clause.otherwise() instanceof Clause.Consequence.Changes) {
      warnings.add(clause.id());
    } else if (verdict == Verdict.TOO_CLOSE_TO_CALL
        && asked.decided()
        && canPrepare(clause.otherwise(), finding)) {
      follow(clause.id(), clause.otherwise(), finding);
    } else if (!(verdict.decided() && asked.decided()) && !clause.otherwise().decides()) {
      warnings.add(clause.id());
    } else if (!verdict.decided()) {
      undecided.add(fact);
      if (clause.wants() instanceof Condition.AtLeastFact both
          && !(tip.reading(both.other()) instanceof Reading.Measured)) {
        undecided.add(both.other());
      }
      addUndecided(clause.when());
    } else if (asked.decided()) {
      follow(clause.id(), clause.otherwise(), finding);
    } else {
      addUndecided(clause.when());
    }
  }

  private void openUntilMade(Clause clause, Fact fact) {
    if (out) {
      return;
    }
    Reading open = new Reading.NotKnown("judged again when the undercut for the tip is made");
    steps.add(
        new Judgement.Step(
            new Finding(
                clause.id(),
                tip.words(fact),
                tip.place(fact),
                open,
                clause.wants().limit(tip::reading),
                clause.source(),
                clause.standing(),
                Verdict.NOT_KNOWN),
            new Clause.Consequence.Shows(),
            clause.because()));
  }

  /** Whether it asks for the tip, on either side of what it compares. */
  private static boolean ofTip(Condition wants) {
    return wants.fact().ofTip()
        || (wants instanceof Condition.AtLeastFact both && both.other().ofTip());
  }

  private static boolean ofForces(Fact fact) {
    return fact == Fact.ARM_PULL || fact == Fact.ARM_STRESS || fact == Fact.ARM_STRESS_OTHERWISE;
  }

  /**
   * Whether what is too close to call can be prepared for: then the family serves in either case,
   * and the preparation is asked for rather than the convenient reading assumed.
   */
  private boolean canPrepare(Clause.Consequence otherwise, Finding finding) {
    return otherwise instanceof Clause.Consequence.Prepares prepares
        && new Limit.Most(prepares.most().value(), prepares.most().unit())
                .judge(
                    prepares
                        .by()
                        .map(tip::reading)
                        .orElseGet(() -> missing(finding.limit(), finding.reading())))
            == Verdict.MET;
  }

  private void addUndecided(List<Condition> when) {
    for (Condition c : when) {
      if (!c.judge(tip::reading).decided()) {
        undecided.add(c.fact());
      }
    }
  }

  private void follow(String clause, Clause.Consequence otherwise, Finding finding) {
    switch (otherwise) {
      case Clause.Consequence.RulesOut _ -> out = true;
      case Clause.Consequence.Warns _ -> warnings.add(clause);
      case Clause.Consequence.Shows _ -> {}
      case Clause.Consequence.Prepares prepares -> prepare(clause, prepares, finding);
      case Clause.Consequence.Changes change -> change(clause, change, finding);
    }
  }

  private void change(String clause, Clause.Consequence.Changes change, Finding finding) {
    Reading reached = tip.reading(change.by());
    Limit most = new Limit.Most(change.most().value(), change.most().unit());
    Verdict helps = most.judge(reached);
    steps.add(
        new Judgement.Step(
            new Finding(
                change.most().id(),
                change.what(),
                finding.place(),
                reached,
                most,
                change.most().source(),
                change.most().standing(),
                helps),
            new Clause.Consequence.RulesOut(),
            "else the arm must be longer"));
    if (helps == Verdict.MET) {
      changes.add(new Judgement.Change(clause, change.what()));
    } else if (helps == Verdict.NOT_MET) {
      out = true;
    } else {
      undecided.add(change.by());
    }
  }

  private void prepare(String clause, Clause.Consequence.Prepares prepares, Finding finding) {
    Reading amount =
        prepares
            .by()
            .map(tip::reading)
            .orElseGet(() -> missing(finding.limit(), finding.reading()));
    Limit most = new Limit.Most(prepares.most().value(), prepares.most().unit());
    Verdict possible = most.judge(amount);
    if (prepares.by().isPresent() || possible != Verdict.MET) {
      steps.add(
          new Judgement.Step(
              new Finding(
                  prepares.most().id(),
                  what(prepares, finding),
                  finding.place(),
                  amount,
                  most,
                  prepares.most().source(),
                  prepares.most().standing(),
                  possible),
              prepares.orWarns()
                  ? new Clause.Consequence.Warns()
                  : new Clause.Consequence.RulesOut(),
              "more than this cannot be prepared"));
    }
    if (possible == Verdict.MET || (possible == Verdict.TOO_CLOSE_TO_CALL && !prepares.orWarns())) {
      // What is too close to call is asked for all the same: the list says whether it can be had.
      preparations.add(preparation(clause, prepares, finding, amount));
    }
    if (possible == Verdict.MET) {
      return;
    }
    if (prepares.orWarns()) {
      warnings.add(clause);
    } else if (possible == Verdict.NOT_MET) {
      out = true;
    } else {
      undecided.add(prepares.by().orElse(factOf(clause)));
    }
  }

  /** What is asked of the enamel; of a line that is lowered, by how much. */
  private static String what(Clause.Consequence.Prepares prepares, Finding finding) {
    return prepares.by().filter(Fact::ofLowering).isPresent()
            && missing(finding.limit(), finding.reading()) instanceof Reading.Measured much
        ? String.format(Locale.ROOT, "enamel taken to %s by %.2f mm", prepares.what(), much.value())
        : prepares.what();
  }

  /**
   * A line is lowered by what is missing of its room, a plane is as high as is wanted; what that
   * takes is another number.
   */
  private static Judgement.Preparation preparation(
      String clause, Clause.Consequence.Prepares prepares, Finding finding, Reading taken) {
    double held = taken instanceof Reading.Measured m ? m.value() : 0;
    if (prepares.by().filter(by -> by == Fact.RECIPROCAL_ENAMEL).isPresent()
        && finding.limit() instanceof Limit.Least high) {
      return new Judgement.Preparation(
          clause, prepares.what(), high.value(), OptionalDouble.of(held));
    }
    if (prepares.by().filter(Fact::ofLowering).isPresent()
        && missing(finding.limit(), finding.reading()) instanceof Reading.Measured much) {
      return new Judgement.Preparation(
          clause, prepares.what(), much.value(), OptionalDouble.of(held));
    }
    return new Judgement.Preparation(clause, prepares.what(), held, OptionalDouble.empty());
  }

  private Fact factOf(String clause) {
    return family.clauses().stream()
        .filter(c -> c.id().equals(clause))
        .map(c -> c.wants().fact())
        .findFirst()
        .orElse(Fact.TIP_UNDERCUT);
  }

  /** What is missing to a limit, with the uncertainty of the reading. */
  static Reading missing(Limit limit, Reading reading) {
    if (reading instanceof Reading.Measured m) {
      double missing =
          switch (limit) {
            case Limit.Least least -> least.value() - m.value();
            case Limit.Most most -> m.value() - most.value();
            case Limit.OneOf _ -> Double.NaN;
          };
      if (!Double.isNaN(missing)) {
        return new Reading.Measured(Math.max(0, missing), m.uncertainty(), m.unit());
      }
    }
    return new Reading.NotKnown("how much it takes was not measured");
  }
}
