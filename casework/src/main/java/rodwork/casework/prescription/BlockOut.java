package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.stream.Collectors;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.chart.Torus;
import rodwork.design.plan.Part;
import rodwork.design.plan.Part.Approach;
import rodwork.design.plan.Part.ConnectorKind;
import rodwork.design.plan.Plan;
import rodwork.design.plan.TorusMark;
import rodwork.rules.Threshold;

/** The block-out and relief that a plan wants. */
final class BlockOut {
  private final ArrayNode rows = JsonNodeFactory.instance.arrayNode();

  private final Numbers teeth;

  private BlockOut(Numbers teeth) {
    this.teeth = teeth;
  }

  static ArrayNode of(Plan plan, LaboratoryRules rules, Threshold barArmRelief, Numbers teeth) {
    BlockOut all = new BlockOut(teeth);
    all.parallel(plan);
    all.relief(plan, rules, barArmRelief);
    return all.rows;
  }

  private void parallel(Plan plan) {
    if (!plan.plates().isEmpty()) {
      row(
          "under the guiding plates of "
              + plan.plates().stream()
                  .map(p -> teeth.of(p.tooth()) + " " + PrescriptionContent.word(p.side()))
                  .collect(Collectors.joining(", ")),
          "block out parallel to the path, from the plane down to the gum");
    }
    if (!plan.clasps().isEmpty() || !plan.minorConnectors().isEmpty()) {
      row(
          "under minor connectors, reciprocal arms and every other rigid part below the survey line",
          "block out parallel to the path, flush; no wax above the survey line");
    }
    List<ToothNumber> arms =
        plan.clasps().stream()
            .filter(c -> c.approach() == Approach.CIRCUMFERENTIAL && c.retentive().isPresent())
            .map(Part.Clasp::tooth)
            .toList();
    if (!arms.isEmpty()) {
      row(
          "at the lower edge of the retentive arms of " + teeth.list(arms),
          "a ledge of wax where the arm is drawn; the undercut at the tip stays free");
    }
    row(
        "tissue undercuts beyond the borders, the crevices crossed, gross defects",
        "block out as the model needs; nothing under parts that shall touch");
  }

  private void relief(Plan plan, LaboratoryRules rules, Threshold barArmRelief) {
    for (Part.DentureBase b : plan.bases()) {
      boolean free = b.space().freeEnd();
      row(
          "under the base connector of " + teeth.list(b.space().missing()),
          free ? "relief; the tissue stop goes through it" : "relief",
          free ? rules.freeEndRelief() : rules.meshRelief());
    }
    List<ToothNumber> stops =
        plan.bases().stream()
            .filter(b -> b.tissueStop().isPresent())
            .map(b -> b.space().missing().getFirst())
            .toList();
    if (!stops.isEmpty()) {
      row(
          "tissue stop in the base connector of the free end, where the drawing has it",
          "a square hole in the relief, side",
          rules.tissueStop());
    }
    plan.majorConnector().ifPresent(m -> under(m.kind(), rules));
    plan.majorConnector().ifPresent(m -> plan.tori().forEach(t -> overTorus(t, rules)));
    if (!plan.minorConnectors().isEmpty()) {
      row(
          "where minor connectors cross the gingival margin: "
              + teeth.list(
                  plan.minorConnectors().stream()
                      .map(Part.MinorConnector::tooth)
                      .distinct()
                      .toList()),
          "relief, crossing at a right angle",
          rules.crossingRelief());
    }
    List<ToothNumber> bars =
        plan.clasps().stream()
            .filter(c -> c.approach() == Approach.BAR)
            .map(Part.Clasp::tooth)
            .toList();
    if (!bars.isEmpty()) {
      row("under the approach arms of " + teeth.list(bars), "relief over the gum", barArmRelief);
    }
  }

  private void under(ConnectorKind kind, LaboratoryRules rules) {
    switch (kind) {
      case LINGUAL_BAR, SUBLINGUAL_BAR ->
          row("under the lower two thirds of the " + kind.words(), "relief", rules.barRelief());
      case LINGUAL_PLATE ->
          row(
              "under the lingual plate over the gum and its margins; it touches the teeth",
              "relief",
              rules.barRelief());
      case PALATAL_STRAP, ANTERIOR_POSTERIOR_STRAP, PALATAL_PLATE, U_SHAPED -> {
        row("under the " + kind.words(), "no relief but over a hard raphe, as found in the mouth");
        row(
            "along the borders of the " + kind.words(),
            "a bead, fading towards the gingival margins; none over a hard raphe",
            rules.bead());
      }
    }
  }

  private void overTorus(TorusMark torus, LaboratoryRules rules) {
    if (torus.mayBeCovered()) {
      row(
          "where the major connector passes over the " + torus.site().words(),
          "relief, as far as the torus reaches",
          torus.site() == Torus.Site.PALATAL
              ? rules.palatalTorusRelief()
              : rules.mandibularTorusRelief());
    }
  }

  private void row(String where, String what) {
    add(where, what).putNull("amountMm");
  }

  private void row(String where, String what, Threshold amount) {
    Figures.put(add(where, what), "amountMm", amount.value(), Figures.MM);
  }

  private ObjectNode add(String where, String what) {
    return rows.addObject().put("where", where).put("what", what);
  }
}
