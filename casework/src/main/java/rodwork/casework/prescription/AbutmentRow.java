package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.abutment.Abutment;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.Fact;
import rodwork.design.clasp.Family;
import rodwork.design.clasp.Judgement;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;
import rodwork.rules.Reading;
import rodwork.survey.Gauges;

/** One tooth that carries, as it is prescribed: clasp with both arms, rests, guiding plates. */
final class AbutmentRow {
  private AbutmentRow() {}

  /** The rows of a plan, from the patient's right to left. */
  static ArrayNode all(Plan plan, List<Abutment> abutments, Numbers numbers) {
    SortedSet<ToothNumber> teeth = new TreeSet<>();
    plan.clasps().forEach(c -> teeth.add(c.tooth()));
    plan.rests().forEach(r -> teeth.add(r.tooth()));
    plan.plates().forEach(p -> teeth.add(p.tooth()));
    ArrayNode json = JsonNodeFactory.instance.arrayNode();
    teeth.forEach(tooth -> json.add(of(plan, tooth, abutments, numbers)));
    return json;
  }

  private static ObjectNode of(
      Plan plan, ToothNumber tooth, List<Abutment> abutments, Numbers numbers) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    numbers.put(json, "tooth", tooth);
    ArrayNode spaces = json.putArray("spaces");
    abutments.stream()
        .filter(a -> a.tooth().number().equals(tooth) && a.space().isPresent())
        .forEach(a -> spaces.add(PrescriptionContent.word(a.side())));
    plan.clasp(tooth)
        .ifPresentOrElse(
            clasp -> json.set("clasp", clasp(clasp, abutments)), () -> json.putNull("clasp"));
    json.set("rests", PlanRows.rests(plan, tooth));
    json.set("guidingPlates", PlanRows.plates(plan, tooth));
    return json;
  }

  private static ObjectNode clasp(Part.Clasp clasp, List<Abutment> abutments) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    Judgement judgement = clasp.judgement();
    Family family = judgement.family();
    json.put("answer", judgement.answer().words());
    json.put("chosen", clasp.chosen());
    json.put("family", family.id());
    json.put("name", family.name());
    json.put("side", PrescriptionContent.word(family.begins(clasp.side())));
    json.put("approach", PrescriptionContent.word(clasp.approach()));
    json.put("material", family.material());
    Figures.put(json, "gaugeMm", clasp.gaugeMm(), Figures.MM);
    Figures.put(json, "gaugeInch", Gauges.nominalInch(clasp.gaugeMm()), 3);
    Optional<Abutment> abutment =
        abutments.stream()
            .filter(a -> a.tooth().number().equals(clasp.tooth()) && a.side() == clasp.side())
            .findFirst();
    json.put(
        "place",
        put(clasp, abutment)
            .or(() -> judgement.tip().map(tip -> tip.on(family.surface())))
            .orElse(null));
    Map<Fact, Reading> tip =
        judgement.tip().flatMap(third -> abutment.map(a -> tip(a, family, third))).orElse(Map.of());
    number(json, "undercutMm", tip.get(Fact.TIP_UNDERCUT));
    number(json, "undercutAtReferenceMm", tip.get(Fact.TIP_AT_REFERENCE));
    number(json, "fromMarginMm", tip.get(Fact.TIP_FROM_MARGIN));
    number(json, "belowSurveyLineMm", tip.get(Fact.TIP_TRAVEL));
    json.put("armByHand", clasp.byHand());
    Figures.put(json, "armMm", PlanRows.length(clasp.retentive()), Figures.MM);
    json.put("tipOnMark", clasp.standsOnMark());
    json.put("reciprocal", reciprocal(family));
    Figures.put(json, "reciprocalMm", PlanRows.length(clasp.reciprocal()), Figures.MM);
    ArrayNode warnings = json.putArray("warnings");
    judgement.warnings().forEach(warnings::add);
    ArrayNode changes = json.putArray("changes");
    judgement.changes().forEach(change -> changes.add(change.what()));
    ArrayNode advice = json.putArray("advice");
    abutment
        .map(a -> a.actions().get(family.id()))
        .ifPresent(action -> action.advice().sentences().forEach(advice::add));
    family.clauses().stream()
        .filter(clause -> clause.wants().fact() == Fact.ARM_STRESS)
        .flatMap(clause -> judgement.step(clause.id()).stream())
        .findFirst()
        .ifPresent(step -> json.put("armStress", step.finding().verdict().words()));
    json.put(
        "holdsIn",
        abutment
            .map(a -> a.actions().get(family.id()))
            .map(action -> action.advice().shortly())
            .orElse(""));
    ArrayNode undecided = json.putArray("notKnown");
    judgement.undecided().stream().map(PrescriptionContent::word).sorted().forEach(undecided::add);
    return json;
  }

  private static String reciprocal(Family family) {
    String other = family.surface() == Surface.LINGUAL ? "facial" : "lingual";
    return switch (family.opposing()) {
      case ARM, FAR_ARM -> other + " arm";
      case ITSELF -> "the rigid part of the same arm";
      case PLATE -> "guiding plate and minor connector";
    };
  }

  private static void number(ObjectNode json, String name, @Nullable Reading reading) {
    double value = reading instanceof Reading.Measured measured ? measured.value() : Double.NaN;
    Figures.put(json, name, value, Figures.MM);
  }

  /** Where a person put the tip. */
  private static Optional<String> put(Part.Clasp clasp, Optional<Abutment> abutment) {
    return clasp
        .course()
        .filter(c -> c.shape().movesTip())
        .flatMap(c -> abutment.map(a -> a.tooth().place(c.retentive().end().point())))
        .map(
            p ->
                p.surface().isProximal()
                    ? PrescriptionContent.word(p.surface())
                    : p.across().on(p.surface()));
  }

  /** What was read where a person put the tip, else at the mark of the gauge. */
  private static Map<Fact, Reading> tip(Abutment abutment, Family family, AcrossThird third) {
    Map<Fact, Reading> laid =
        abutment
            .judgement()
            .facts()
            .laid()
            .getOrDefault(new AbutmentFacts.Reach(family.id(), third), Map.of());
    if (laid.containsKey(Fact.TIP_UNDERCUT)) {
      return laid;
    }
    return mark(abutment, family, third)
        .map(
            m ->
                Map.of(
                    Fact.TIP_UNDERCUT, m.depth(),
                    Fact.TIP_AT_REFERENCE, m.atReference(),
                    Fact.TIP_FROM_MARGIN, m.fromMargin(),
                    Fact.TIP_TRAVEL, m.belowLine()))
        .orElse(Map.of());
  }

  private static Optional<AbutmentFacts.Mark> mark(
      Abutment abutment, Family family, AcrossThird tip) {
    AbutmentFacts.Third third =
        abutment.judgement().facts().thirds().get(new AbutmentFacts.Site(family.surface(), tip));
    return third == null ? Optional.empty() : third.mark(family.gauge());
  }
}
