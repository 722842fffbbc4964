package rodwork.survey;

import static rodwork.rules.Threshold.own;
import static rodwork.rules.Threshold.practice;
import static rodwork.rules.Threshold.taught;

import java.util.List;
import rodwork.rules.Standing;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * Every number that a survey rests on, each with its unit and source: the one place to change them.
 *
 * @param cap largest undercut depth told apart
 * @param shankRadius radius of the gauge's shank
 * @param shankReach how near to the free line a shank must come to count as reaching it
 * @param scanAccuracy declared accuracy of the scan
 * @param fits how far from its gauge a depth may be and still fit it
 * @param shallow depth below which an undercut holds nothing
 * @param lineTolerance depth up to which the upper side of a survey line counts as free
 * @param lineLength shortest piece of survey line shown
 * @param lineGap longest gap in a survey line that is closed
 * @param bandAngle how near to parallel a surface must be to be a band instead of a line
 * @param bandHeight height over which it must be
 * @param normalScale scale over which surface normals are averaged
 * @param angleReach half length of the chord over which the angle of gingival convergence is taken
 * @param tiltNote total tilt from which a note is given
 * @param tiltWarn total tilt from which a warning is given
 * @param tiltLimit total tilt that is refused unless overridden
 */
public record SurveyRules(
    Threshold cap,
    Threshold shankRadius,
    Threshold shankReach,
    Threshold scanAccuracy,
    Threshold fits,
    Threshold shallow,
    Threshold lineTolerance,
    Threshold lineLength,
    Threshold lineGap,
    Threshold bandAngle,
    Threshold bandHeight,
    Threshold normalScale,
    Threshold angleReach,
    Threshold tiltNote,
    Threshold tiltWarn,
    Threshold tiltLimit) {

  private static final String SCANNERS =
      "rounded up from trueness and precision of seven laboratory scanners on natural-tooth jaws, 11 to"
          + " 25 µm and 2 to 18 µm (PMC10812911)";
  private static final String TILT =
      "final tilt rarely more than 10 to 15 degrees: taught principle of surveying";

  /** The values Rodwork ships with. */
  public static final SurveyRules SHIPPED =
      new SurveyRules(
          own("undercut-cap", 4, "mm", "five times the largest gauge; deeper is never used"),
          practice(
              "gauge-shank-radius", 0.5, "mm", "an undercut gauge's shank is about 1 mm thick"),
          own("gauge-shank-reach", 0.05, "mm", "a fifth of the smallest gauge"),
          new Threshold("scan-accuracy", 0.03, "mm", SCANNERS, Standing.PUBLISHED),
          own("gauge-fits", 0.03, "mm", "the accuracy of a scan; closer cannot be told"),
          own("shallow-undercut", 0.05, "mm", "a fifth of the smallest gauge"),
          own("line-upper-depth", 0.02, "mm", "below the accuracy of a scan"),
          own("line-shortest", 1.0, "mm", "shorter pieces are roughness of the scan"),
          own("line-gap", 0.5, "mm", "a lead on its side bridges this much roughness"),
          own(
              "band-angle",
              1.5,
              "degrees",
              "half the angle accepted for a guiding plane: at 3 degrees every crown rounder than a"
                  + " radius of 2.9 mm would be a band"),
          own("band-height", 0.3, "mm", "below it a line can be placed to the width of a lead"),
          own("normal-scale", 0.25, "mm", "keeps 10 µm of roughness from moving a survey line"),
          own("convergence-reach", 0.5, "mm", "longer than roughness, shorter than a clasp tip"),
          practice("tilt-note", 5, "degrees", "a tilt of more than a few degrees is unusual"),
          taught("tilt-warn", 10, "degrees", TILT),
          taught("tilt-limit", 15, "degrees", TILT));

  /** The values of a rulebook. */
  public static SurveyRules from(Thresholds book) {
    return new SurveyRules(
        book.get("undercut-cap", "mm"),
        book.get("gauge-shank-radius", "mm"),
        book.get("gauge-shank-reach", "mm"),
        book.get("scan-accuracy", "mm"),
        book.get("gauge-fits", "mm"),
        book.get("shallow-undercut", "mm"),
        book.get("line-upper-depth", "mm"),
        book.get("line-shortest", "mm"),
        book.get("line-gap", "mm"),
        book.get("band-angle", "degrees"),
        book.get("band-height", "mm"),
        book.get("normal-scale", "mm"),
        book.get("convergence-reach", "mm"),
        book.get("tilt-note", "degrees"),
        book.get("tilt-warn", "degrees"),
        book.get("tilt-limit", "degrees"));
  }

  /** All of them, for listing. */
  public List<Threshold> all() {
    return List.of(
        cap,
        shankRadius,
        shankReach,
        scanAccuracy,
        fits,
        shallow,
        lineTolerance,
        lineLength,
        lineGap,
        bandAngle,
        bandHeight,
        normalScale,
        angleReach,
        tiltNote,
        tiltWarn,
        tiltLimit);
  }
}
