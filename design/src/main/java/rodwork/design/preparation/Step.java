package rodwork.design.preparation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.cut.PreparedCast;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;

/**
 * One thing to do to a tooth.
 *
 * @param number from 1, in working order
 * @param kind what kind of work
 * @param tooth which
 * @param surface of it
 * @param what for a person
 * @param place on the cast, scan frame [mm]
 * @param amountMm greatest depth of the cut, measured on the triangles; NaN where nothing is cut
 * @param heightMm height of a wall, or length of a seat or depression; NaN for none
 * @param volumeMm3 taken; NaN where nothing is cut
 * @param findings each limit that it was held against
 * @param cautions what to mind, a sentence each
 * @param cut its shape; empty where nothing is cut
 * @param section of the crown before and after; empty where nothing is cut
 */
public record Step(
    int number,
    Kind kind,
    ToothNumber tooth,
    Surface surface,
    String what,
    Vec3 place,
    double amountMm,
    double heightMm,
    double volumeMm3,
    List<Finding> findings,
    List<String> cautions,
    Optional<PreparedCast.Applied> cut,
    Optional<PreparedCast.Before> section) {

  /** In working order, as taught: pdfcoffee, mcq; quizgecko. */
  public enum Kind {
    /** Decided first: its contours are made, not cut. */
    SURVEYED_CROWN("surveyed crown"),
    GUIDING_PLANE("guiding plane"),
    SURVEY_LINE("survey line lowered"),
    UNDERCUT("undercut deepened"),
    REST_SEAT("rest seat"),
    EMBRASURE("embrasure opened");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public Step {
    findings = List.copyOf(findings);
    cautions = List.copyOf(cautions);
  }

  /** With one more thing to mind. */
  Step minding(String caution) {
    List<String> more = new ArrayList<>(cautions);
    more.add(caution);
    return new Step(
        number, kind, tooth, surface, what, place, amountMm, heightMm, volumeMm3, findings, more,
        cut, section);
  }

  Step numbered(int other) {
    return new Step(
        other, kind, tooth, surface, what, place, amountMm, heightMm, volumeMm3, findings, cautions,
        cut, section);
  }
}
