package rodwork.app.operation;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.casework.export.PathFrame;
import rodwork.casework.prescription.Order;
import rodwork.casework.prescription.Prescription;
import rodwork.casework.prescription.PrescriptionContent;
import rodwork.casework.rulebook.Rulebook;
import rodwork.design.plan.Choices;
import rodwork.design.plan.Plan;
import rodwork.geometry.Refusal;
import rodwork.geometry.Watch;
import rodwork.survey.tripod.MarkBearings;
import rodwork.survey.tripod.Tripod;
import rodwork.survey.tripod.TripodPlaces;

/** From a cast with its teeth and a path to a prescription. */
public final class WritePrescription {
  private WritePrescription() {}

  /**
   * What is to be written, beside what the cast tells.
   *
   * @param caseCode stands for the patient
   * @param date of writing
   * @param order what the prescriber wrote
   * @param scan name of the scan file
   * @param scanHash its SHA-256, 64 hexadecimal digits
   * @param before the revision before; null: this is the first
   */
  public record Ask(
      String caseCode,
      LocalDate date,
      Order order,
      String scan,
      String scanHash,
      @Nullable Prescription before) {}

  /**
   * What was written.
   *
   * @param planned survey, abutments and plan that it rests on
   * @param frame in which the cast stands at its path
   * @param content what the prescription says
   * @param prescription the prescription
   * @param tripod marks of the path; null where the cast has no places for them
   * @param bearings how each mark is set with dividers; none without marks
   */
  public record Written(
      MakePlan.Planned planned,
      PathFrame frame,
      PrescriptionContent content,
      Prescription prescription,
      @Nullable Tripod tripod,
      List<Optional<MarkBearings>> bearings) {
    public Written {
      bearings = List.copyOf(bearings);
    }

    public JudgeAbutments.Judged judged() {
      return planned.judged();
    }
  }

  /**
   * Surveys, judges, plans, writes.
   *
   * @param wanted path, answers, arms and opposing scan; the chart is that of the teeth
   */
  public static Written of(
      CastTeeth teeth,
      JudgeAbutments.Wanted wanted,
      Choices choices,
      Rulebook book,
      Ask ask,
      Watch watch) {
    MakePlan.Planned planned = MakePlan.of(teeth, wanted, choices, book, watch);
    JudgeAbutments.Judged judged = planned.judged();
    WantedPath.Resolved at = judged.surveyed().path();
    ArchFrame arch = teeth.arch().frame();
    PathFrame frame = PathFrame.of(arch.origin(), arch.y(), at.axis());
    Tripod tripod = tripod(judged, planned.plan(), book, watch);
    List<Optional<MarkBearings>> bearings =
        tripod == null
            ? List.of()
            : ProposeTripod.bearings(
                judged.surveyed().cast(), tripod, teeth.dentition(), book.tripod());
    double picking = book.tripod().picking().value();
    PrescriptionContent content =
        new PrescriptionContent(
            ask.caseCode(),
            ask.date(),
            ask.order(),
            ask.scan(),
            ask.scanHash(),
            book.title(),
            book.hash(),
            judged.surveyed().notes(),
            arch,
            teeth.dentition().chart(),
            teeth.dentition(),
            teeth.dentition().kennedy(),
            Objects.requireNonNull(at.tilt(), "teeth are known, so frame and jaw are"),
            frame,
            tripod,
            bearings,
            tripod == null ? Double.NaN : tripod.axisErrorDeg(picking),
            picking,
            judged.abutments(),
            planned.plan(),
            planned.preparation(),
            new PrescriptionContent.Rules(
                book.plan(),
                book.laboratory(),
                book.abutmentLimits().barRelief(),
                book.survey().tiltWarn(),
                book.survey().tiltLimit()));
    Prescription prescription =
        ask.before() == null
            ? Prescription.first(content)
            : Prescription.after(ask.before(), content);
    return new Written(planned, frame, content, prescription, tripod, bearings);
  }

  /** The marks, or null where this cast has no places for them: that is said on paper. */
  private static @Nullable Tripod tripod(
      JudgeAbutments.Judged judged, Plan plan, Rulebook book, Watch watch) {
    watch.progress("looking for tripod marks", 0);
    OpenedCast cast = judged.surveyed().cast();
    Set<ToothNumber> prepared = new TreeSet<>();
    plan.rests().forEach(rest -> prepared.add(rest.tooth()));
    plan.plates().forEach(plate -> prepared.add(plate.tooth()));
    plan.clasps().forEach(clasp -> prepared.add(clasp.tooth()));
    plan.indirectRetainers().forEach(retainer -> prepared.add(retainer.rest().tooth()));
    try {
      return ProposeTripod.of(
          cast,
          new TripodPlaces(cast.surveyor(), judged.surveyed().survey(), book.tripod()),
          judged.teeth().dentition(),
          prepared,
          watch);
    } catch (Refusal _) {
      return null;
    }
  }
}
