package rodwork.design.abutment;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.space.Space;
import rodwork.design.arm.ArmRules;
import rodwork.design.clasp.Fact;
import rodwork.design.clasp.Judgement;
import rodwork.design.course.ClaspAction;
import rodwork.rules.Finding;
import rodwork.rules.Limit;
import rodwork.rules.Place;
import rodwork.rules.Range;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;

/**
 * What the clasps that come first at each abutment hold together, pulled straight along the path. A
 * sum, so nothing for a pull at one end: there the moment about the axis of rotation counts.
 *
 * @param shares one a tooth
 * @param sumN of all that are credited [N]
 * @param findings the sum against what is wanted of a denture with two free ends; empty for others,
 *     and where nothing is credited
 */
public record Retention(List<Share> shares, Range sumN, List<Finding> findings) {
  /**
   * One clasp's share.
   *
   * @param tooth which
   * @param abutment the row it stands in
   * @param family the one that comes first
   * @param pullN of it [N]; empty where it is not known
   * @param credited whether it counts: not where the tip holds along the path only
   */
  public record Share(
      ToothNumber tooth,
      Abutment abutment,
      String family,
      Optional<Range> pullN,
      boolean credited) {}

  public Retention {
    shares = List.copyOf(shares);
    findings = List.copyOf(findings);
  }

  /** Of judged abutments; a tooth with two rows takes part with the better answered one. */
  public static Retention of(List<Abutment> abutments, ArmRules rules) {
    Map<ToothNumber, Share> shares = new LinkedHashMap<>();
    Map<ToothNumber, Judgement> answers = new LinkedHashMap<>();
    for (Abutment abutment : abutments) {
      ToothNumber tooth = abutment.tooth().number();
      Judgement first = abutment.judgement().first().orElse(null);
      Judgement before = answers.get(tooth);
      if (first == null || (before != null && Judgement.ORDER.compare(before, first) <= 0)) {
        continue;
      }
      Optional<Range> pull =
          Optional.ofNullable(abutment.actions().get(first.family().id()))
              .flatMap(ClaspAction::forces)
              .flatMap(f -> f.pullN());
      boolean credited = pull.isPresent() && holds(first);
      answers.put(tooth, first);
      shares.put(tooth, new Share(tooth, abutment, first.family().id(), pull, credited));
    }
    double from = 0;
    double to = 0;
    for (Share share : shares.values()) {
      if (share.credited) {
        Range pull = share.pullN.orElseThrow();
        from += pull.from();
        to += pull.to();
      }
    }
    List<Finding> findings = new ArrayList<>();
    long freeEnds =
        abutments.stream()
            .flatMap(a -> a.space().stream())
            .filter(Space::freeEnd)
            .map(s -> s.missing().getFirst().side())
            .distinct()
            .count();
    // What is wanted is told of dentures with two free ends; others hold by their planes too.
    if (to > 0 && freeEnds == 2) {
      Reading reading = new Reading.Measured((from + to) / 2, (to - from) / 2, "N");
      findings.add(finding(rules.dentureFrom(), reading, true));
      findings.add(finding(rules.dentureTo(), reading, false));
    }
    return new Retention(List.copyOf(shares.values()), new Range(from, to), findings);
  }

  /** Whether no rule warns of a tip without undercut at the reference orientation. */
  private static boolean holds(Judgement judgement) {
    return judgement.family().clauses().stream()
        .filter(clause -> clause.wants().fact() == Fact.TIP_AT_REFERENCE)
        .noneMatch(clause -> judgement.warnings().contains(clause.id()));
  }

  private static Finding finding(Threshold t, Reading reading, boolean least) {
    return Finding.of(
        t.id(),
        "pull of all clasps together along the path",
        Place.of("the denture"),
        reading,
        least ? new Limit.Least(t.value(), t.unit()) : new Limit.Most(t.value(), t.unit()),
        t.source(),
        t.standing());
  }
}
