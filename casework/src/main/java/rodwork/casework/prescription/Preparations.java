package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import rodwork.design.abutment.Abutment;
import rodwork.design.abutment.GuidingPlane;
import rodwork.design.clasp.Judgement;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;
import rodwork.rules.Threshold;
import rodwork.survey.plane.PlaneReading;

/**
 * What is to be done in the mouth before the final impression, in working order (handbook 9.2):
 * guiding planes, lowered survey lines, then undercuts that are deepened.
 */
final class Preparations {
  private Preparations() {}

  static ArrayNode of(List<Abutment> abutments, Plan plan, Threshold planeEnamel) {
    ArrayNode json = JsonNodeFactory.instance.arrayNode();
    for (Abutment abutment : abutments) {
      wantedPlane(abutment)
          .filter(plane -> plane.greatestMm() <= planeEnamel.value())
          .ifPresent(plane -> json.add(plane(abutment, plane)));
    }
    for (boolean deepening : List.of(false, true)) {
      for (Part.Clasp clasp : plan.clasps()) {
        for (Judgement.Preparation preparation : clasp.judgement().preparations()) {
          if (preparation.what().startsWith("deepen") == deepening) {
            ObjectNode one = json.addObject();
            one.put("tooth", clasp.tooth().fdi());
            one.put("what", preparation.what());
            Figures.put(one, "amountMm", preparation.amountMm(), Figures.MM);
          }
        }
      }
    }
    return json;
  }

  /** The plane to cut next to the space, where none stands there that is high enough. */
  static Optional<PlaneReading> wantedPlane(Abutment abutment) {
    return abutment
        .proximalPlane()
        .filter(
            plane ->
                plane
                    .there()
                    .filter(there -> there.heightMm() >= plane.wantedHeight().value())
                    .isEmpty())
        .flatMap(GuidingPlane::couldBe);
  }

  private static ObjectNode plane(Abutment abutment, PlaneReading plane) {
    ObjectNode one = JsonNodeFactory.instance.objectNode();
    one.put("tooth", abutment.tooth().number().fdi());
    one.put(
        "what",
        "guiding plane on the "
            + PrescriptionContent.word(abutment.side())
            + " surface, parallel to the path; greatest enamel taken");
    Figures.put(one, "amountMm", plane.greatestMm(), Figures.MM);
    Figures.put(one, "heightMm", plane.heightMm(), Figures.MM);
    return one;
  }
}
