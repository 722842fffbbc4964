package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.kennedy.KennedyFinding;
import rodwork.casework.export.PathFrame;
import rodwork.design.abutment.Abutment;
import rodwork.design.plan.Plan;
import rodwork.design.plan.PlanRules;
import rodwork.design.preparation.MouthPreparation;
import rodwork.rules.Threshold;
import rodwork.survey.Tilt;
import rodwork.survey.tripod.MarkBearings;
import rodwork.survey.tripod.Tripod;

/**
 * What is asked of the laboratory, put together from what was measured and said.
 *
 * @param caseCode stands for the patient
 * @param date of writing
 * @param order what the prescriber wrote
 * @param scan name of the scan file
 * @param scanHash its SHA-256, 64 hexadecimal digits
 * @param rulebook title of the rulebook gone by
 * @param rulebookHash its SHA-256
 * @param notes what the survey says of the scan: too coarse, a frame not surely known
 * @param frame of the arch
 * @param chart what was said of the mouth
 * @param dentition the teeth found
 * @param kennedy the class
 * @param tilt at the path
 * @param path frame in which the cast stands at its path
 * @param tripod marks of the path; null where the cast has no places for them
 * @param bearings how each mark is set with dividers; none without marks
 * @param tripodErrorDeg how far the path may be off when it is found again by the marks, 95 times
 *     in 100, with {@code pickingMm} of error a mark
 * @param pickingMm see there
 * @param abutments judged at the path
 * @param plan made from them
 * @param preparation of the mouth for it
 * @param rules that the pages tell
 */
public record PrescriptionContent(
    String caseCode,
    LocalDate date,
    Order order,
    String scan,
    String scanHash,
    String rulebook,
    String rulebookHash,
    List<String> notes,
    ArchFrame frame,
    Chart chart,
    Dentition dentition,
    KennedyFinding kennedy,
    Tilt tilt,
    PathFrame path,
    @Nullable Tripod tripod,
    List<Optional<MarkBearings>> bearings,
    double tripodErrorDeg,
    double pickingMm,
    List<Abutment> abutments,
    Plan plan,
    MouthPreparation preparation,
    Rules rules) {

  /**
   * Rules that are told on paper.
   *
   * @param plan sizes and limits of parts
   * @param laboratory sizes asked of the laboratory
   * @param barArmRelief relief under approach arms
   * @param tiltWarn from where a total tilt is not usual
   * @param tiltLimit over which the patient may be unable to seat the denture
   */
  public record Rules(
      PlanRules plan,
      LaboratoryRules laboratory,
      Threshold barArmRelief,
      Threshold tiltWarn,
      Threshold tiltLimit) {}

  public PrescriptionContent {
    bearings = List.copyOf(bearings);
    abutments = List.copyOf(abutments);
  }

  /** The content as JSON: docs/schema/prescription.schema.json, member {@code content}. */
  public ObjectNode json() {
    return json(Notation.FDI);
  }

  /** The same for a reader of another notation; teeth are texts then. */
  ObjectNode json(Notation notation) {
    Numbers numbers = new Numbers(notation);
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("case", caseCode);
    json.put("date", date.toString());
    json.put("jaw", frame.jaw() == Jaw.UPPER ? "upper" : "lower");
    ObjectNode texts = json.putObject("order");
    for (Order.Field field : Order.Field.values()) {
      texts.put(field.key(), order.text(field));
    }
    ArrayNode stages = json.putArray("stages");
    for (Stage.Asked one : Stage.of(plan, order)) {
      stages
          .addObject()
          .put("stage", one.stage().words())
          .put("asked", one.asked())
          .put("proposed", one.proposed())
          .put("because", one.because());
    }
    ObjectNode cast = json.putObject("scan");
    cast.put("file", scan);
    cast.put("sha256", scanHash);
    ObjectNode book = json.putObject("rulebook");
    book.put("title", rulebook);
    book.put("sha256", rulebookHash);
    json.set("teeth", teethJson(numbers));
    ObjectNode allergies = json.putObject("allergies");
    allergies.put("asked", word(chart.allergiesAsked()));
    chart.allergies().forEach(allergies.putArray("known")::add);
    json.set("path", pathJson(numbers));
    json.set("abutments", AbutmentRow.all(plan, abutments, numbers));
    PlanRows.major(plan, rules.plan(), rules.laboratory())
        .ifPresentOrElse(
            major -> json.set("majorConnector", major), () -> json.putNull("majorConnector"));
    json.set("minorConnectors", PlanRows.minor(plan, numbers));
    json.set("bases", PlanRows.bases(plan, numbers));
    json.set("support", PlanRows.support(plan, numbers));
    json.set("asked", asked());
    json.set("blockOut", BlockOut.of(plan, rules.laboratory(), rules.barArmRelief(), numbers));
    json.set("preparation", Preparations.of(preparation, numbers));
    json.set("surveyedCrowns", Preparations.crowns(preparation, numbers));
    json.set("findings", PlanRows.findings(plan, preparation, numbers));
    ArrayNode open = json.putArray("open");
    OpenPoints.of(this, numbers).forEach(open::add);
    ArrayNode cautions = json.putArray("cautions");
    Cautions.ALL.forEach(cautions::add);
    return json;
  }

  /** Sizes that follow from no measurement. */
  private ObjectNode asked() {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    Figures.put(json, "minorThicknessMm", rules.laboratory().minorThickness().value(), Figures.MM);
    Figures.put(json, "restThicknessMm", rules.laboratory().restThickness().value(), Figures.MM);
    Figures.put(
        json,
        "borderFromMarginsMm",
        (frame.jaw() == Jaw.UPPER ? rules.plan().upper().border() : rules.plan().lower().border())
            .value(),
        Figures.MM);
    return json;
  }

  private ObjectNode teethJson(Numbers numbers) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.set("present", numbers.all(dentition.standing()));
    ArrayNode missing = json.putArray("missing");
    ArrayNode replaced = json.putArray("replaced");
    ArrayNode undecided = json.putArray("replacementNotSaid");
    ToothNumber.allOf(chart.jaw())
        .filter(tooth -> !dentition.standing().contains(tooth))
        .forEach(
            tooth -> {
              numbers.add(missing, tooth);
              ToothEntry entry = chart.tooth(tooth);
              if (plan.replaced().contains(tooth)) {
                numbers.add(replaced, tooth);
              }
              if (entry.replace() == Answer.NOT_KNOWN && !tooth.isThirdMolar()) {
                numbers.add(undecided, tooth);
              }
            });
    json.put("class", kennedy.title());
    ArrayNode because = json.putArray("because");
    kennedy.reasons().forEach(reason -> because.add(numbers.in(reason.text())));
    return json;
  }

  private ObjectNode pathJson(Numbers numbers) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    Figures.put(json, "anteriorTiltDeg", tilt.anteriorDeg(), Figures.DEG);
    Figures.put(json, "rightTiltDeg", tilt.rightDeg(), Figures.DEG);
    Figures.put(json, "totalTiltDeg", tilt.totalDeg(), Figures.DEG);
    Figures.put(json, "referenceUncertaintyDeg", frame.upUncertaintyDeg(), Figures.DEG);
    json.set("axisInScan", Figures.triple(path.axis(), Figures.DIRECTION));
    ArrayNode matrix = json.putArray("scanToPath");
    double[] m = path.rowMajor();
    for (int row = 0; row < 4; row++) {
      ArrayNode one = matrix.addArray();
      for (int k = 0; k < 4; k++) {
        one.add(Figures.rounded(m[4 * row + k], k < 3 ? Figures.DIRECTION : 4));
      }
    }
    if (tripod == null) {
      json.putNull("tripod");
      return json;
    }
    ObjectNode marks = json.putObject("tripod");
    ArrayNode points = marks.putArray("marksInScan");
    tripod.marks().forEach(mark -> points.add(Figures.triple(mark.point(), Figures.MM)));
    ArrayNode distances = marks.putArray("distancesMm");
    for (double d : tripod.distancesMm()) {
      distances.add(Figures.rounded(d, Figures.MM));
    }
    ArrayNode seen = marks.putArray("landmarks");
    for (Optional<MarkBearings> mark : bearings) {
      ArrayNode two = seen.addArray();
      for (MarkBearings.Bearing one : mark.map(MarkBearings::both).orElse(List.of())) {
        ObjectNode landmark = two.addObject().put("name", numbers.in(one.landmark().wording()));
        Figures.put(landmark, "distanceMm", one.distanceMm(), Figures.DIVIDERS);
      }
    }
    Figures.put(marks, "pickingErrorMm", pickingMm, Figures.MM);
    Figures.put(marks, "axisErrorDeg", tripodErrorDeg, 2);
    return json;
  }

  static String word(Enum<?> kind) {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
