package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.design.plan.Line;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;
import rodwork.design.plan.PlanRules;
import rodwork.design.preparation.MouthPreparation;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.rules.Verdict;
import rodwork.survey.plane.PlanePatch;

/** What joins, carries and covers in a plan, as the prescription has it. */
final class PlanRows {
  private PlanRows() {}

  /** The major connector; JSON null where there is nothing to connect. */
  static Optional<ObjectNode> major(Plan plan, PlanRules rules, LaboratoryRules laboratory) {
    return plan.majorConnector().map(m -> major(plan, m, rules, laboratory));
  }

  private static ObjectNode major(
      Plan plan, Part.MajorConnector connector, PlanRules rules, LaboratoryRules laboratory) {
    boolean upper = connector.kind().isUpper();
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("kind", connector.kind().words());
    json.put("because", connector.because());
    json.put("chosen", connector.chosen());
    Figures.put(json, "leastWidthMm", connector.leastWidthMm(), Figures.MM);
    Figures.put(json, "areaMm2", connector.areaMm2(), Figures.AREA);
    Threshold thickness =
        switch (connector.kind()) {
          case LINGUAL_BAR, SUBLINGUAL_BAR -> laboratory.barThickness();
          case LINGUAL_PLATE, PALATAL_PLATE -> laboratory.plateThickness();
          case PALATAL_STRAP ->
              connector.leastWidthMm() >= rules.upper().thinStrap().value()
                  ? laboratory.plateThickness()
                  : laboratory.frameThickness();
          case ANTERIOR_POSTERIOR_STRAP, U_SHAPED -> laboratory.frameThickness();
        };
    Figures.put(json, "thicknessMm", thickness.value(), Figures.MM);
    String border = (upper ? rules.upper().border() : rules.lower().border()).id();
    Figures.put(json, "fromMarginsMm", measured(plan, border), Figures.MM);
    Figures.put(json, "openingMm2", openingMm2(connector), Figures.AREA);
    json.put("room", connector.room().words());
    return json;
  }

  private static double measured(Plan plan, String rule) {
    return plan.findings().stream()
        .filter(f -> f.rule().equals(rule))
        .map(Finding::reading)
        .filter(Reading.Measured.class::isInstance)
        .mapToDouble(r -> ((Reading.Measured) r).value())
        .min()
        .orElse(Double.NaN);
  }

  /** Area of the opening as a polygon laid out flat [mm²]; NaN without one. */
  private static double openingMm2(Part.MajorConnector connector) {
    if (connector.opening().isEmpty()) {
      return Double.NaN;
    }
    List<Vec3> points = connector.opening().get().points();
    Vec3 sum = Vec3.ZERO;
    for (int i = 0; i < points.size(); i++) {
      sum = sum.plus(points.get(i).cross(points.get((i + 1) % points.size())));
    }
    return sum.length() / 2;
  }

  static ArrayNode minor(Plan plan, Numbers numbers) {
    ArrayNode json = JsonNodeFactory.instance.arrayNode();
    for (Part.MinorConnector m : plan.minorConnectors()) {
      ObjectNode one = json.addObject();
      numbers.put(one, "tooth", m.tooth());
      one.put("side", PrescriptionContent.word(m.side()));
      Figures.put(one, "lengthMm", m.line().lengthMm(), Figures.MM);
    }
    return json;
  }

  static ArrayNode bases(Plan plan, Numbers numbers) {
    ArrayNode json = JsonNodeFactory.instance.arrayNode();
    for (Part.DentureBase b : plan.bases()) {
      ObjectNode one = json.addObject();
      ArrayNode space = one.putArray("space");
      b.space().missing().forEach(t -> numbers.add(space, t));
      ArrayNode teeth = one.putArray("teeth");
      b.teeth().forEach(t -> numbers.add(teeth, t.tooth()));
      one.put("freeEnd", b.space().freeEnd());
      Figures.put(one, "areaMm2", b.areaMm2(), Figures.AREA);
      Figures.put(one, "finishLineMm", b.finishLine().lengthMm(), Figures.MM);
      one.put("tissueStop", b.tissueStop().isPresent());
    }
    return json;
  }

  /** The axis of rotation and what holds against it. */
  static ObjectNode support(Plan plan, Numbers numbers) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    plan.fulcrum()
        .ifPresentOrElse(
            f -> {
              ObjectNode line = json.putObject("fulcrum");
              numbers.put(line, "right", f.right());
              numbers.put(line, "left", f.left());
            },
            () -> json.putNull("fulcrum"));
    ArrayNode indirect = json.putArray("indirectRetainers");
    for (Part.IndirectRetainer i : plan.indirectRetainers()) {
      ObjectNode one = indirect.addObject();
      numbers.put(one, "tooth", i.rest().tooth());
      one.put("kind", i.rest().kind().words());
      one.put("side", PrescriptionContent.word(i.rest().side()));
      Figures.put(one, "distanceMm", i.distanceMm(), Figures.MM);
      Figures.put(one, "ratio", i.ratio(), 2);
    }
    return json;
  }

  /**
   * Every finding that is not met, too close to call, or not known, in that order; each with what
   * the preparation makes of it.
   */
  static ArrayNode findings(Plan plan, MouthPreparation preparation, Numbers numbers) {
    ArrayNode json = JsonNodeFactory.instance.arrayNode();
    for (Verdict verdict : List.of(Verdict.NOT_MET, Verdict.TOO_CLOSE_TO_CALL, Verdict.NOT_KNOWN)) {
      plan.findings().stream()
          .filter(f -> f.verdict() == verdict)
          .map(f -> finding(f, preparation, numbers))
          .distinct()
          .forEach(json::add);
    }
    return json;
  }

  private static ObjectNode finding(
      Finding finding, MouthPreparation preparation, Numbers numbers) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("rule", finding.rule());
    json.put("what", finding.what());
    json.put("place", numbers.in(finding.place().wording()));
    json.put("reading", finding.reading().words());
    json.put("limit", finding.limit().words());
    json.put("verdict", finding.verdict().words());
    json.put("standing", finding.standing().words());
    json.put("source", finding.source());
    PutRight.of(finding, preparation)
        .ifPresentOrElse(
            right -> {
              ObjectNode by = json.putObject("putRightBy");
              by.put("step", right.step().number());
              by.put("reading", right.after().reading().words());
            },
            () -> json.putNull("putRightBy"));
    return json;
  }

  static ArrayNode rests(Plan plan, ToothNumber tooth) {
    ArrayNode json = JsonNodeFactory.instance.arrayNode();
    for (Part.Rest r : plan.rests(tooth)) {
      ObjectNode one = json.addObject();
      one.put("kind", r.kind().words());
      one.put("side", PrescriptionContent.word(r.side()));
      Figures.put(one, "lengthMm", r.lengthMm(), Figures.MM);
      Figures.put(one, "widthMm", r.widthMm(), Figures.MM);
      Figures.put(one, "seatDepthMm", r.depthMm(), Figures.MM);
      one.put(
          "indirectRetainer", plan.indirectRetainers().stream().anyMatch(i -> i.rest().equals(r)));
    }
    return json;
  }

  static ArrayNode plates(Plan plan, ToothNumber tooth) {
    ArrayNode json = JsonNodeFactory.instance.arrayNode();
    for (Part.GuidingPlate p : plan.plates()) {
      if (p.tooth().equals(tooth)) {
        ObjectNode one = json.addObject();
        one.put("side", PrescriptionContent.word(p.side()));
        Figures.put(
            one, "parallelMm", p.plane().there().map(PlanePatch::heightMm).orElse(0.0), Figures.MM);
        Figures.put(one, "wantedMm", p.plane().wantedHeight().value(), Figures.MM);
      }
    }
    return json;
  }

  static double length(Optional<Line> line) {
    return line.map(Line::lengthMm).orElse(Double.NaN);
  }
}
