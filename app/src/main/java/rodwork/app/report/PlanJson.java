package rodwork.app.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import rodwork.app.operation.MakePlan;
import rodwork.casework.prescription.PutRight;
import rodwork.design.clasp.Judgement;
import rodwork.design.plan.FulcrumLine;
import rodwork.design.plan.Line;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;
import rodwork.design.plan.TorusMark;
import rodwork.design.preparation.MouthPreparation;
import rodwork.design.preparation.Step;
import rodwork.rules.Finding;
import rodwork.survey.plane.PlanePatch;

/** A plan as JSON; the schema is {@code docs/schema/plan.schema.json}. */
public final class PlanJson {
  public static final String FORMAT = "rodwork plan";

  private PlanJson() {}

  public static ObjectNode of(MakePlan.Planned planned) {
    ObjectNode json = Json.object();
    json.put("format", FORMAT);
    json.put("version", 1);
    json.put("cast", planned.judged().surveyed().cast().name());
    json.putObject("rulebook")
        .put("title", planned.judged().rulebook().title())
        .put("hash", planned.judged().rulebook().hash());
    json.setAll(of(planned.plan()));
    for (int i = 0; i < planned.plan().findings().size(); i++) {
      Finding finding = planned.plan().findings().get(i);
      ((ObjectNode) json.get("findings").get(i))
          .set(
              "putRight",
              Json.orNull(
                  PutRight.of(finding, planned.preparation())
                      .map(PlanJson::putRight)
                      .orElse(null)));
    }
    return json.set("preparation", preparation(planned.preparation()));
  }

  /** The plan itself, without what it was made from. */
  public static ObjectNode of(Plan plan) {
    ObjectNode json = Json.object();
    json.put("jaw", Words.jaw(plan.jaw()));
    json.put("kennedy", plan.kennedy());
    json.set("axis", Json.direction(plan.axis()));
    ArrayNode replaced = json.putArray("replaced");
    plan.replaced().forEach(t -> replaced.add(t.fdi()));
    ArrayNode rests = json.putArray("rests");
    plan.rests().forEach(r -> rests.add(rest(r)));
    ArrayNode plates = json.putArray("guidingPlates");
    for (Part.GuidingPlate p : plan.plates()) {
      ObjectNode one = plates.addObject();
      one.put("tooth", p.tooth().fdi());
      one.put("side", AbutmentsJson.word(p.side()));
      one.set("line", line(p.line()));
      Json.put(one, "wantedHeightMm", p.plane().wantedHeight().value());
      Json.put(one, "heightMm", p.plane().there().map(PlanePatch::heightMm).orElse(0.0));
    }
    ArrayNode clasps = json.putArray("clasps");
    plan.clasps().forEach(c -> clasps.add(clasp(c)));
    ArrayNode minors = json.putArray("minorConnectors");
    for (Part.MinorConnector m : plan.minorConnectors()) {
      ObjectNode one = minors.addObject();
      one.put("tooth", m.tooth().fdi());
      one.put("side", AbutmentsJson.word(m.side()));
      one.set("line", line(m.line()));
      Json.put(one, "lengthMm", m.line().lengthMm());
    }
    json.set(
        "majorConnector", Json.orNull(plan.majorConnector().map(PlanJson::connector).orElse(null)));
    ArrayNode bases = json.putArray("bases");
    plan.bases().forEach(b -> bases.add(base(b)));
    json.set("fulcrum", Json.orNull(plan.fulcrum().map(PlanJson::fulcrum).orElse(null)));
    ArrayNode indirect = json.putArray("indirectRetainers");
    for (Part.IndirectRetainer i : plan.indirectRetainers()) {
      ObjectNode one = indirect.addObject();
      one.put("tooth", i.rest().tooth().fdi());
      one.put("side", AbutmentsJson.word(i.rest().side()));
      Json.put(one, "distanceMm", i.distanceMm());
      Json.put(one, "ratio", i.ratio());
    }
    ArrayNode tori = json.putArray("tori");
    for (TorusMark torus : plan.tori()) {
      ObjectNode one = tori.addObject().put("site", ChartJson.name(torus.site()));
      one.set("edge", Json.orNull(torus.edge().map(PlanJson::line).orElse(null)));
      Json.put(one, "roomMm", torus.roomMm().orElse(Double.NaN));
    }
    ArrayNode findings = json.putArray("findings");
    plan.findings().forEach(f -> findings.add(RulesJson.finding(f)));
    json.set("questions", Json.wordings(plan.questions()));
    json.set("questionPieces", Json.allPieces(plan.questions()));
    return json;
  }

  private static ObjectNode putRight(PutRight right) {
    ObjectNode json = Json.object().put("step", right.step().number());
    return json.set("after", RulesJson.reading(right.after().reading()));
  }

  private static ObjectNode preparation(MouthPreparation preparation) {
    ObjectNode json = Json.object();
    ArrayNode steps = json.putArray("steps");
    for (Step step : preparation.steps()) {
      ObjectNode one = steps.addObject();
      one.put("number", step.number());
      one.put("kind", step.kind().words());
      one.put("tooth", step.tooth().fdi());
      one.put("surface", AbutmentsJson.word(step.surface()));
      one.put("what", step.what());
      one.set("point", Json.point(step.place()));
      Json.put(one, "amountMm", step.amountMm());
      Json.put(one, "heightMm", step.heightMm());
      Json.put(one, "volumeMm3", step.volumeMm3());
      ArrayNode findings = one.putArray("findings");
      step.findings().forEach(f -> findings.add(RulesJson.finding(f)));
      one.set("cautions", Json.texts(step.cautions()));
    }
    ArrayNode refused = json.putArray("notPrescribed");
    for (MouthPreparation.Refused r : preparation.refused()) {
      refused
          .addObject()
          .put("tooth", r.tooth().fdi())
          .put("kind", r.kind().words())
          .put("why", r.why());
    }
    json.set("general", Json.texts(preparation.general()));
    return json;
  }

  private static ObjectNode rest(Part.Rest rest) {
    ObjectNode json = Json.object();
    json.put("tooth", rest.tooth().fdi());
    json.put("kind", ChoicesReader.name(rest.kind()));
    json.put("side", AbutmentsJson.word(rest.side()));
    json.set("outline", line(rest.outline()));
    json.set("point", Json.point(rest.middle()));
    Json.put(json, "lengthMm", rest.lengthMm());
    Json.put(json, "widthMm", rest.widthMm());
    Json.put(json, "depthMm", rest.depthMm());
    json.put("because", rest.because());
    return json;
  }

  private static ObjectNode clasp(Part.Clasp clasp) {
    Judgement judgement = clasp.judgement();
    ObjectNode json = Json.object();
    json.put("tooth", clasp.tooth().fdi());
    json.put("side", AbutmentsJson.word(clasp.side()));
    json.put("family", judgement.family().id());
    json.put("name", judgement.family().name());
    json.put("answer", judgement.answer().words());
    json.put("approach", ChoicesReader.name(clasp.approach()));
    json.put("surface", AbutmentsJson.word(judgement.family().surface()));
    Json.put(json, "gaugeMm", clasp.gaugeMm());
    json.put("material", judgement.family().material());
    json.set("retentive", Json.orNull(clasp.retentive().map(PlanJson::line).orElse(null)));
    json.set("reciprocal", Json.orNull(clasp.reciprocal().map(PlanJson::line).orElse(null)));
    json.set("tip", Json.orNull(clasp.tip().map(Json::point).orElse(null)));
    json.put("onMark", clasp.standsOnMark());
    json.put("byHand", clasp.byHand());
    json.put("chosen", clasp.chosen());
    json.set("warnings", Json.texts(judgement.warnings()));
    ArrayNode preparations = json.putArray("preparations");
    for (Judgement.Preparation p : judgement.preparations()) {
      preparations.add(AbutmentsJson.preparation(p));
    }
    return json;
  }

  private static ObjectNode connector(Part.MajorConnector connector) {
    ObjectNode json = Json.object();
    json.put("kind", ChoicesReader.name(connector.kind()));
    json.set("outline", line(connector.outline()));
    json.set("opening", Json.orNull(connector.opening().map(PlanJson::line).orElse(null)));
    ArrayNode edges = json.putArray("towardsTeeth");
    connector.towardsTeeth().forEach(e -> edges.add(line(e)));
    Json.put(json, "areaMm2", connector.areaMm2());
    Json.put(json, "leastWidthMm", connector.leastWidthMm());
    json.set("room", RulesJson.reading(connector.room()));
    json.put("because", connector.because());
    json.put("chosen", connector.chosen());
    return json;
  }

  private static ObjectNode base(Part.DentureBase base) {
    ObjectNode json = Json.object();
    ArrayNode missing = json.putArray("missing");
    base.space().missing().forEach(t -> missing.add(t.fdi()));
    json.put("freeEnd", base.space().freeEnd());
    ArrayNode teeth = json.putArray("teeth");
    base.teeth()
        .forEach(
            t -> teeth.addObject().put("tooth", t.tooth().fdi()).set("point", Json.point(t.at())));
    json.set("outline", line(base.outline()));
    Json.put(json, "areaMm2", base.areaMm2());
    json.set("connector", line(base.connector()));
    json.set("finishLine", line(base.finishLine()));
    json.set("tissueStop", Json.orNull(base.tissueStop().map(Json::point).orElse(null)));
    return json;
  }

  private static ObjectNode fulcrum(FulcrumLine fulcrum) {
    ObjectNode json = Json.object();
    json.put("right", fulcrum.right().fdi());
    json.put("left", fulcrum.left().fdi());
    json.set("from", Json.point(fulcrum.from()));
    json.set("to", Json.point(fulcrum.to()));
    return json;
  }

  private static ObjectNode line(Line line) {
    ObjectNode json = Json.object();
    json.put("closed", line.closed());
    json.set("points", Json.points(line.points()));
    return json;
  }
}
