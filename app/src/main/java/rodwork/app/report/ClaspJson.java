package rodwork.app.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import rodwork.design.abutment.Retention;
import rodwork.design.arm.Arm;
import rodwork.design.arm.ArmForces;
import rodwork.design.arm.Section;
import rodwork.design.arm.Withdrawal;
import rodwork.design.course.ClaspAction;
import rodwork.design.course.ClaspCourse;
import rodwork.rules.Range;

/** Arms and forces of clasps, as members of {@code docs/schema/abutments.schema.json}. */
final class ClaspJson {
  /** Every so many steps of 0.02 mm of a way out are written. */
  private static final int EVERY = 2;

  private ClaspJson() {}

  static @Nullable ObjectNode of(@Nullable ClaspAction action) {
    if (action == null) {
      return null;
    }
    ClaspCourse course = action.course();
    ObjectNode json = Json.object();
    ObjectNode arm = json.putObject("retentive");
    arm.set(
        "line", Json.points(course.retentive().line().stream().map(Arm.Station::point).toList()));
    Json.put(arm, "lengthMm", course.retentive().lengthMm());
    arm.set("root", section(course.retentive().root()));
    arm.set("tip", section(course.retentive().tip()));
    arm.put("onMark", course.standsOnMark());
    if (course.opposing().isEmpty()) {
      json.putNull("opposing");
    } else {
      ObjectNode opposing = json.putObject("opposing");
      opposing.set("line", Json.points(course.opposing()));
      Json.put(opposing, "lengthMm", course.opposingMm());
    }
    Json.put(json, "encirclementDeg", course.encirclementDeg());
    number(json, "crossingDeg", course.crossingDeg());
    json.set("forces", Json.orNull(action.forces().map(f -> forces(f, action)).orElse(null)));
    ArrayNode findings = json.putArray("findings");
    action.findings().forEach(f -> findings.add(RulesJson.finding(f)));
    json.set("advice", Json.texts(action.advice().sentences()));
    return json;
  }

  private static ObjectNode section(Section section) {
    ObjectNode json = Json.object();
    json.put("shape", section instanceof Section.Round ? "round" : "half-round");
    Json.put(json, "widthMm", section.widthMm());
    Json.put(json, "thicknessMm", section.thicknessMm());
    return json;
  }

  private static ObjectNode forces(ArmForces forces, ClaspAction action) {
    ObjectNode json = Json.object();
    json.put("material", forces.material().name());
    json.set("cautions", Json.texts(forces.material().cautions()));
    json.set("pullN", range(forces.pullN()));
    json.set("opposingN", range(action.opposingN()));
    number(json, "locksFromFriction", forces.locksFrom());
    Json.put(json, "peakAtMm", forces.peakTravelMm());
    number(json, "toLineMm", forces.toLineMm());
    number(json, "freeAtMm", forces.freeAtMm());
    json.set("stressMpa", RulesJson.range(forces.stressMpa()));
    json.set("proofMpa", RulesJson.range(forces.material().proofMpa()));
    json.set("stressShare", RulesJson.range(forces.stressShare()));
    Json.put(json, "stressFromRootMm", forces.stressFromRootMm());
    // The edges of the range: the way out does not depend on the modulus, all forces are in
    // proportion to it.
    double soft = forces.material().modulusGpa().from() / forces.material().modulusGpa().to();
    json.set("leastPull", way(forces.leastFriction(), soft));
    json.set("mostPull", way(forces.mostFriction(), 1));
    return json;
  }

  /** Pairs of travel [mm] and pull [N], by a share of the greatest modulus. */
  private static ArrayNode way(Withdrawal way, double share) {
    ArrayNode pairs = Json.array();
    int last = way.steps().size() - 1;
    for (int i = 0; i <= last; i++) {
      if (i % EVERY == 0 || i == last) {
        Withdrawal.Step step = way.steps().get(i);
        ObjectNode pair = Json.object();
        Json.put(pair, "mm", step.travelMm());
        Json.put(pair, "n", share * step.pullN());
        pairs.add(Json.array().add(pair.get("mm")).add(pair.get("n")));
      }
    }
    return pairs;
  }

  static ObjectNode retention(Retention retention) {
    ObjectNode json = Json.object();
    ArrayNode shares = json.putArray("shares");
    for (Retention.Share share : retention.shares()) {
      ObjectNode one = shares.addObject();
      one.put("tooth", share.tooth().fdi());
      one.put("side", AbutmentsJson.word(share.abutment().side()));
      one.put("family", share.family());
      one.set("pullN", range(share.pullN()));
      one.put("credited", share.credited());
    }
    json.set("sumN", RulesJson.range(retention.sumN()));
    ArrayNode findings = json.putArray("findings");
    retention.findings().forEach(f -> findings.add(RulesJson.finding(f)));
    json.put(
        "note",
        "A sum for a pull straight along the path; at a free end the moment about the axis of"
            + " rotation counts too. Published forces of like clasps spread twentyfold.");
    return json;
  }

  private static JsonNode range(Optional<Range> range) {
    return Json.orNull(range.map(RulesJson::range).orElse(null));
  }

  private static void number(ObjectNode json, String name, OptionalDouble value) {
    Json.put(json, name, value.orElse(Double.NaN));
  }
}
