package rodwork.app.operation;

import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.occlusion.OpposingRoom;
import rodwork.app.AppRefusal;
import rodwork.casework.rulebook.Rulebook;
import rodwork.design.abutment.Abutment;
import rodwork.design.abutment.Abutments;
import rodwork.design.abutment.Answers;
import rodwork.design.abutment.Retention;
import rodwork.design.course.ArmShape;
import rodwork.geometry.Watch;

/** Surveys a cast whose teeth are known at a path, and judges its abutments. */
public final class JudgeAbutments {
  private JudgeAbutments() {}

  /**
   * What was asked for.
   *
   * @param path where
   * @param teeth to judge; empty: the likely abutments
   * @param chart what a person says of the teeth; null: what was said when they were found
   * @param answers what a person says of facts
   * @param arms what a person made of retentive arms
   * @param opposing the scan of the other jaw over this cast; null: none
   */
  public record Wanted(
      WantedPath path,
      SortedSet<ToothNumber> teeth,
      @Nullable Chart chart,
      Answers answers,
      Map<Abutments.ArmKey, ArmShape> arms,
      @Nullable OpposingScan opposing) {
    /** With arms as they are laid out, and no opposing scan. */
    public Wanted(
        WantedPath path, SortedSet<ToothNumber> teeth, @Nullable Chart chart, Answers answers) {
      this(path, teeth, chart, answers, Map.of(), null);
    }

    /** With the scan of the other jaw; null: none. */
    public Wanted with(@Nullable OpposingScan other) {
      return new Wanted(path, teeth, chart, answers, arms, other);
    }
  }

  /**
   * What was found.
   *
   * @param teeth the cast with its teeth
   * @param wanted what was asked for
   * @param surveyed at the path
   * @param rulebook that was gone by
   * @param opposing the room to the other jaw
   * @param abutments from the patient's right to left
   * @param retention of the clasps that come first
   */
  public record Judged(
      CastTeeth teeth,
      Wanted wanted,
      SurveyedCast surveyed,
      Rulebook rulebook,
      OpposingRoom opposing,
      List<Abutment> abutments,
      Retention retention) {}

  /**
   * Judges.
   *
   * @throws rodwork.geometry.Refusal if the path cannot be found on this cast, or a tooth that was
   *     asked for is not on it
   * @throws java.util.concurrent.CancellationException when the watch says so
   */
  public static Judged of(CastTeeth teeth, Wanted wanted, Rulebook book, Watch watch) {
    Dentition dentition = teeth.dentition();
    if (wanted.chart != null) {
      dentition = dentition.withChart(wanted.chart);
    }
    for (ToothNumber tooth : wanted.teeth) {
      if (dentition.tooth(tooth).isEmpty()) {
        throw AppRefusal.TOOTH_NOT_FOUND.with(tooth);
      }
      if (dentition.isImplant(tooth)) {
        throw AppRefusal.ABUTMENT_IS_IMPLANT.with(tooth);
      }
    }
    OpenedCast cast = teeth.jawed().by(book);
    watch.progress("surveying", 0);
    SurveyedCast surveyed =
        RunSurvey.of(cast, wanted.path, book.abutments().clasps().gauges(), watch);
    watch.progress("judging abutments", 0);
    OpposingRoom opposing =
        wanted.opposing == null
            ? OpposingRoom.NOT_SCANNED
            : wanted.opposing.room(book.survey().scanAccuracy().value());
    List<Abutment> abutments =
        Abutments.of(
            teeth.arch(),
            surveyed.survey(),
            dentition,
            wanted.teeth,
            book.abutments(),
            wanted.answers,
            wanted.arms,
            opposing,
            watch);
    return new Judged(
        teeth, wanted, surveyed, book, opposing, abutments, Retention.of(abutments, book.arms()));
  }
}
