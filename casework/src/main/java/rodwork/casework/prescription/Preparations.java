package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import rodwork.design.plan.Part;
import rodwork.design.preparation.CrownOrder;
import rodwork.design.preparation.MouthPreparation;
import rodwork.design.preparation.Step;
import rodwork.rules.Finding;

/** What is to be done in the mouth before the final impression, in working order. */
final class Preparations {
  private Preparations() {}

  static ObjectNode of(MouthPreparation preparation, Numbers numbers) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    ArrayNode steps = json.putArray("steps");
    preparation.steps().forEach(step -> steps.add(step(step, numbers)));
    ArrayNode refused = json.putArray("notPrescribed");
    for (MouthPreparation.Refused r : preparation.refused()) {
      ObjectNode one = refused.addObject();
      numbers.put(one, "tooth", r.tooth());
      one.put("kind", r.kind().words()).put("why", r.why());
    }
    ArrayNode general = json.putArray("general");
    preparation.general().forEach(general::add);
    return json;
  }

  /** Surveyed crowns, each an order of its own. */
  static ArrayNode crowns(MouthPreparation preparation, Numbers numbers) {
    ArrayNode json = JsonNodeFactory.instance.arrayNode();
    for (CrownOrder crown : preparation.crowns()) {
      ObjectNode one = json.addObject();
      numbers.put(one, "tooth", crown.tooth());
      one.put("decided", crown.decided());
      ArrayNode because = one.putArray("because");
      crown.because().forEach(because::add);
      ArrayNode planes = one.putArray("planes");
      for (CrownOrder.Plane plane : crown.planes()) {
        Figures.put(
            planes.addObject().put("surface", PrescriptionContent.word(plane.surface())),
            "heightMm",
            plane.heightMm(),
            Figures.MM);
      }
      ArrayNode rests = one.putArray("rests");
      for (Part.Rest rest : crown.rests()) {
        ObjectNode seat = rests.addObject();
        seat.put("kind", rest.kind().words());
        seat.put("side", PrescriptionContent.word(rest.side()));
        Figures.put(seat, "lengthMm", rest.lengthMm(), Figures.MM);
        Figures.put(seat, "widthMm", rest.widthMm(), Figures.MM);
        Figures.put(seat, "seatDepthMm", rest.depthMm(), Figures.MM);
      }
      crown
          .undercut()
          .ifPresentOrElse(
              u -> {
                ObjectNode undercut = one.putObject("undercut");
                undercut.put("place", u.place());
                undercut.put("clasp", u.family());
                Figures.put(undercut, "gaugeMm", u.gaugeMm(), Figures.MM);
                Figures.put(undercut, "fromMarginMm", u.fromMarginMm(), Figures.MM);
              },
              () -> one.putNull("undercut"));
    }
    return json;
  }

  private static ObjectNode step(Step step, Numbers numbers) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("number", step.number());
    numbers.put(json, "tooth", step.tooth());
    json.put("kind", step.kind().words());
    json.put("surface", PrescriptionContent.word(step.surface()));
    json.put("what", step.what());
    Figures.put(json, "amountMm", step.amountMm(), Figures.MM);
    Figures.put(json, "heightMm", step.heightMm(), Figures.MM);
    ArrayNode limits = json.putArray("limits");
    for (Finding f : step.findings()) {
      limits
          .addObject()
          .put("rule", f.rule())
          .put("what", f.what())
          .put("reading", f.reading().words())
          .put("limit", f.limit().words())
          .put("verdict", f.verdict().words())
          .put("standing", f.standing().words())
          .put("source", f.source());
    }
    ArrayNode cautions = json.putArray("cautions");
    step.cautions().forEach(cautions::add);
    return json;
  }
}
