package rodwork.app.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.operation.ComparePlans;
import rodwork.app.operation.JudgeAbutments;
import rodwork.design.compare.PlanComparison;
import rodwork.design.load.LoadComparison;
import rodwork.design.load.LoadRules;

/** Plans beside each other as JSON; the schema is {@code docs/schema/comparison.schema.json}. */
public final class ComparisonJson {
  public static final String FORMAT = "rodwork plan comparison";

  /** What must be read with the ratios. */
  public static final String CAUTION =
      "Ratios only: how teeth and tissue give is known to a factor of ten at best, so nothing is"
          + " told about how much a plan sinks or loads a tooth, and there is no limit to hold it"
          + " against.";

  private ComparisonJson() {}

  /** Of at least one pair. */
  public static ObjectNode of(List<ComparePlans.Compared> compared) {
    ComparePlans.Named first = compared.getFirst().first();
    JudgeAbutments.Judged judged = first.planned().judged();
    ObjectNode json = Json.object();
    json.put("format", FORMAT);
    json.put("version", 1);
    json.put("cast", judged.surveyed().cast().name());
    json.putObject("rulebook")
        .put("title", judged.rulebook().title())
        .put("hash", judged.rulebook().hash());
    LoadRules rules = judged.rulebook().load();
    ObjectNode draws = json.putObject("draws");
    Json.put(draws, "count", rules.draws().value());
    Json.put(draws, "intervalShare", rules.share().value());
    Json.put(draws, "alike", rules.alike().value());
    json.put("caution", CAUTION);
    json.set("first", plan(first));
    ArrayNode others = json.putArray("others");
    for (ComparePlans.Compared c : compared) {
      ObjectNode one = plan(c.other());
      one.set("against", of(c.comparison()));
      others.add(one);
    }
    return json;
  }

  private static ObjectNode plan(ComparePlans.Named named) {
    ObjectNode json = Json.object().put("name", named.name());
    json.set("plan", PlanJson.of(named.planned().plan()));
    return json;
  }

  /** The comparison itself, without the plans. */
  public static ObjectNode of(PlanComparison comparison) {
    ObjectNode json = Json.object();
    ArrayNode parts = json.putArray("parts");
    for (PlanComparison.PartChange p : comparison.parts()) {
      ObjectNode one = parts.addObject().put("kind", p.kind().words());
      tooth(one, p.tooth());
      one.set("first", Json.texts(p.first()));
      one.set("other", Json.texts(p.other()));
    }
    ArrayNode measures = json.putArray("measures");
    for (PlanComparison.MeasureChange m : comparison.measures()) {
      ObjectNode one = measures.addObject().put("kind", m.kind().words());
      tooth(one, m.tooth());
      one.put("what", m.what()).put("unit", m.unit());
      Json.put(one, "first", m.first());
      Json.put(one, "other", m.other());
    }
    ArrayNode findings = json.putArray("findings");
    for (PlanComparison.FindingChange f : comparison.findings()) {
      ObjectNode one = findings.addObject().put("turn", f.turn().words());
      one.set("first", Json.orNull(f.first().map(RulesJson::finding).orElse(null)));
      one.set("other", Json.orNull(f.other().map(RulesJson::finding).orElse(null)));
    }
    json.set("firstOpen", Json.wordings(comparison.firstOpen()));
    json.set("firstOpenPieces", Json.allPieces(comparison.firstOpen()));
    json.set("otherOpenPieces", Json.allPieces(comparison.otherOpen()));
    json.set("otherOpen", Json.wordings(comparison.otherOpen()));
    ArrayNode loads = json.putArray("loads");
    for (LoadComparison.Ratio r : comparison.loads().ratios()) {
      ObjectNode one = loads.addObject();
      ArrayNode bitten = one.putArray("bitten");
      r.bitten().forEach(t -> bitten.add(t.fdi()));
      one.put("measure", r.measure().words());
      tooth(one, r.tooth());
      one.put("answer", r.answer().words());
      one.set("interval", Json.orNull(r.interval().map(RulesJson::range).orElse(null)));
      if (r.firstToDistal().isPresent() && r.otherToDistal().isPresent()) {
        ObjectNode distal = one.putObject("tipsToDistal");
        Json.put(distal, "first", r.firstToDistal().get());
        Json.put(distal, "other", r.otherToDistal().get());
      }
    }
    json.set("remarkPieces", Json.allPieces(comparison.loads().remarks()));
    json.set("remarks", Json.wordings(comparison.loads().remarks()));
    return json;
  }

  private static void tooth(ObjectNode json, Optional<ToothNumber> tooth) {
    if (tooth.isPresent()) {
      json.put("tooth", tooth.get().fdi());
    } else {
      json.putNull("tooth");
    }
  }
}
