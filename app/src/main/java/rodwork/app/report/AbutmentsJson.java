package rodwork.app.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.app.operation.JudgeAbutments;
import rodwork.design.abutment.Abutment;
import rodwork.design.abutment.GuidingPlane;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.BarSection;
import rodwork.design.clasp.Clause;
import rodwork.design.clasp.Fact;
import rodwork.design.clasp.Judgement;
import rodwork.design.cut.PlaneCut;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.survey.Tilt;
import rodwork.survey.plane.PlanePatch;
import rodwork.survey.plane.PlaneReading;
import rodwork.survey.standoff.StandOff;
import rodwork.survey.tooth.CrownZone;

/** Judged abutments as JSON; the schema is {@code docs/schema/abutments.schema.json}. */
public final class AbutmentsJson {
  public static final String FORMAT = "rodwork abutments";

  private AbutmentsJson() {}

  public static ObjectNode of(JudgeAbutments.Judged judged) {
    ObjectNode json = Json.object();
    json.put("format", FORMAT);
    json.put("version", 1);
    json.put("cast", judged.surveyed().cast().name());
    json.put("jaw", Words.jaw(judged.teeth().arch().frame().jaw()));
    json.set("axis", Json.direction(judged.surveyed().survey().axis()));
    Tilt tilt = judged.surveyed().path().tilt();
    if (tilt == null) {
      json.putNull("tilt");
    } else {
      ObjectNode at = json.putObject("tilt");
      Json.put(at, "anteriorDeg", tilt.anteriorDeg());
      Json.put(at, "rightDeg", tilt.rightDeg());
      Json.put(at, "totalDeg", tilt.totalDeg());
    }
    json.putObject("rulebook")
        .put("title", judged.rulebook().title())
        .put("hash", judged.rulebook().hash());
    json.put("kennedy", judged.teeth().dentition().kennedy().title());
    json.set("notes", Json.texts(judged.surveyed().notes()));
    ArrayNode all = json.putArray("abutments");
    judged.abutments().forEach(a -> all.add(abutment(a, judged.teeth().arch().mesh())));
    json.set("retention", ClaspJson.retention(judged.retention()));
    return json;
  }

  private static ObjectNode abutment(Abutment abutment, TriangleMesh mesh) {
    ObjectNode json = Json.object();
    json.put("tooth", abutment.tooth().number().fdi());
    json.put("side", word(abutment.side()));
    json.set("point", Json.point(face(abutment.tooth(), mesh)));
    json.set(
        "space",
        Json.orNull(
            abutment
                .space()
                .map(
                    s -> {
                      ObjectNode space = Json.object();
                      ArrayNode missing = space.putArray("missing");
                      s.missing().forEach(t -> missing.add(t.fdi()));
                      return space.put("freeEnd", s.freeEnd());
                    })
                .orElse(null)));
    AbutmentFacts facts = abutment.judgement().facts();
    ArrayNode told = json.putArray("facts");
    for (Fact fact : Fact.values()) {
      if (!fact.ofTip() && !fact.ofThird() && !fact.ofArm() && !fact.follows()) {
        ObjectNode one = told.addObject();
        one.put("fact", fact.key());
        one.put("what", facts.words(fact));
        one.set("choices", Json.texts(fact.choices()));
        one.set("reading", RulesJson.reading(facts.reading(fact)));
        one.set("place", RulesJson.place(facts.place(fact)));
      }
    }
    ArrayNode thirds = json.putArray("thirds");
    CrownZone.THIRDS.forEach(zone -> third(facts, zone).ifPresent(thirds::add));
    ArrayNode planes = json.putArray("planes");
    abutment.planes().forEach(p -> planes.add(plane(p)));
    ArrayNode sections = json.putArray("gum");
    abutment.sections().forEach(s -> sections.add(section(s)));
    ArrayNode families = json.putArray("families");
    for (Judgement j : abutment.judgement().inOrder()) {
      ObjectNode family = family(j);
      String id = j.family().id();
      family.set("clasp", Json.orNull(ClaspJson.of(abutment.actions().get(id))));
      family.put("noClasp", abutment.noCourse().get(id));
      families.add(family);
    }
    json.set("couldReorder", keys(abutment.judgement().couldReorder()));
    return json;
  }

  /** The middle of the facial surface: where a tooth is looked at that has no mark. */
  private static Vec3 face(Tooth tooth, TriangleMesh mesh) {
    Vec3 best = tooth.centroid();
    double least = Double.POSITIVE_INFINITY;
    for (int t : tooth.trianglesOf(Surface.FACIAL)) {
      Vec3 p = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
      double up = (tooth.heightShare(p) - 0.5) * tooth.size().facialHeightMm();
      double off = Math.hypot(up, tooth.axes().toTooth(p).x());
      if (off < least) {
        least = off;
        best = p;
      }
    }
    return best;
  }

  private static Optional<ObjectNode> third(AbutmentFacts facts, CrownZone zone) {
    AbutmentFacts.Third third =
        facts.thirds().get(new AbutmentFacts.Site(zone.surface(), zone.across()));
    if (third == null) {
      return Optional.empty();
    }
    ObjectNode json = Json.object();
    json.put("zone", zone.label());
    json.set("deepest", RulesJson.reading(third.deepest()));
    json.set("roomAbove", RulesJson.reading(third.roomAbove()));
    json.set("roomBelow", RulesJson.reading(third.roomBelow()));
    ArrayNode marks = json.putArray("marks");
    for (AbutmentFacts.Mark mark : third.marks()) {
      ObjectNode one = marks.addObject();
      one.put("gaugeMm", mark.gaugeMm());
      one.set("place", RulesJson.place(mark.place()));
      one.set("depth", RulesJson.reading(mark.depth()));
      one.set("atReference", RulesJson.reading(mark.atReference()));
      one.set("fromMargin", RulesJson.reading(mark.fromMargin()));
      one.set("belowLine", RulesJson.reading(mark.belowLine()));
      one.set("convergence", RulesJson.reading(mark.convergence()));
    }
    return Optional.of(json);
  }

  private static ObjectNode plane(GuidingPlane plane) {
    ObjectNode json = Json.object();
    json.put("surface", word(plane.face()));
    json.set("wantedHeight", RulesJson.threshold(plane.wantedHeight()));
    json.set("there", Json.orNull(plane.there().map(AbutmentsJson::patch).orElse(null)));
    json.set(
        "couldBe",
        Json.orNull(
            plane.couldBe().flatMap(p -> plane.asWanted().map(c -> cut(p, c))).orElse(null)));
    json.set(
        "within",
        Json.orNull(plane.couldBe().flatMap(p -> plane.within().map(c -> cut(p, c))).orElse(null)));
    json.set("enamelMost", RulesJson.threshold(plane.most()));
    json.set("heightLeast", RulesJson.threshold(plane.least()));
    return json;
  }

  private static ObjectNode patch(PlanePatch patch) {
    ObjectNode json = Json.object();
    Json.put(json, "heightMm", patch.heightMm());
    Json.put(json, "widthMm", patch.widthMm());
    Json.put(json, "areaMm2", patch.areaMm2());
    Json.put(json, "angleDeg", patch.angleDeg());
    json.set("point", Json.point(patch.place()));
    return json;
  }

  private static ObjectNode cut(PlaneReading there, PlaneCut cut) {
    ObjectNode json = Json.object();
    Json.put(json, "heightMm", cut.made().heightMm());
    Json.put(json, "belowRidgeMm", cut.belowMm());
    Json.put(json, "angleDeg", there.angleDeg());
    Json.put(json, "enamelMm", cut.enamelMm());
    json.set("point", Json.point(there.site().place()));
    return json;
  }

  private static ObjectNode section(BarSection section) {
    StandOff off = section.standOff();
    ObjectNode json = Json.object();
    json.put("third", word(section.across()));
    json.put(
        "part",
        section.edge() == 0 ? "middle" : section.edge() < 0 ? "distal edge" : "mesial edge");
    json.set("margin", Json.point(section.margin()));
    json.set("near", level(off.near()));
    json.set("far", level(off.far()));
    json.set("vestibuleDepth", RulesJson.reading(off.vestibuleDepth()));
    json.set("tissueStart", RulesJson.reading(off.tissueStart()));
    json.set("line", Json.points(off.line().stream().map(StandOff.Point::point).toList()));
    return json;
  }

  private static ObjectNode level(StandOff.Level level) {
    ObjectNode json = Json.object();
    Json.put(json, "fromMarginMm", level.fromMarginMm());
    json.set("point", Json.orNull(level.place().map(Json::point).orElse(null)));
    json.set("drop", RulesJson.reading(level.drop()));
    json.set("total", RulesJson.reading(level.total()));
    json.set("mostTotal", RulesJson.reading(level.mostTotal()));
    json.set("tissue", RulesJson.reading(level.tissue()));
    json.set("mostTissue", RulesJson.reading(level.mostTissue()));
    return json;
  }

  private static ObjectNode family(Judgement judgement) {
    ObjectNode json = Json.object();
    json.put("family", judgement.family().id());
    json.put("name", judgement.family().name());
    json.put("answer", judgement.answer().words());
    json.put("arm", judgement.family().arm().name().toLowerCase(Locale.ROOT));
    json.put("surface", word(judgement.family().surface()));
    json.put("third", judgement.tip().map(AbutmentsJson::word).orElse(null));
    json.set("gauge", RulesJson.threshold(judgement.family().gauge()));
    json.put("material", judgement.family().material());
    json.put("rankedBy", judgement.rankedBy());
    ArrayNode preparations = json.putArray("preparations");
    for (Judgement.Preparation p : judgement.preparations()) {
      preparations.add(preparation(p));
    }
    ArrayNode changes = json.putArray("changes");
    for (Judgement.Change c : judgement.changes()) {
      changes.addObject().put("rule", c.clause()).put("what", c.what());
    }
    json.set("warnings", Json.texts(judgement.warnings()));
    json.set("undecided", keys(judgement.undecided()));
    ArrayNode findings = json.putArray("findings");
    for (Judgement.Step step : judgement.steps()) {
      ObjectNode one = RulesJson.finding(step.finding());
      one.put("otherwise", otherwise(step.otherwise()));
      one.put("because", step.because());
      findings.add(one);
    }
    return json;
  }

  /** What is done first, how much, and what that takes of the enamel. */
  static ObjectNode preparation(Judgement.Preparation p) {
    ObjectNode one = Json.object().put("rule", p.clause()).put("what", p.what());
    Json.put(one, "amountMm", p.amountMm());
    Json.put(one, "enamelMm", p.enamelMm().orElse(Double.NaN));
    return one;
  }

  private static String otherwise(Clause.Consequence consequence) {
    return switch (consequence) {
      case Clause.Consequence.RulesOut _ -> "rules out";
      case Clause.Consequence.Warns _ -> "warns";
      case Clause.Consequence.Shows _ -> "shows";
      case Clause.Consequence.Prepares prepares when prepares.orWarns() -> "warns";
      case Clause.Consequence.Prepares prepares -> prepares.what();
      case Clause.Consequence.Changes change -> change.what();
    };
  }

  private static ArrayNode keys(Collection<Fact> facts) {
    return Json.texts(facts.stream().sorted().map(Fact::key).toList());
  }

  static String word(Surface surface) {
    return surface.name().toLowerCase(Locale.ROOT);
  }

  static String word(AcrossThird third) {
    return third.name().toLowerCase(Locale.ROOT);
  }
}
