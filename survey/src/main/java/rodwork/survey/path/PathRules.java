package rodwork.survey.path;

import static rodwork.rules.Threshold.own;
import static rodwork.rules.Threshold.practice;
import static rodwork.rules.Threshold.taught;

import java.util.List;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * Every number that the choice of a path rests on. The weights follow the trade's order of the four
 * factors: guiding planes, retentive areas, interference, appearance (McCracken's Removable Partial
 * Prosthodontics, chapter 11); their sizes are our own choice.
 *
 * @param cone widest total tilt tried
 * @param step distance between neighbouring tilts
 * @param guidingWeight weight of guiding planes
 * @param retentionWeight weight of retention
 * @param interferenceWeight weight of interference
 * @param appearanceWeight weight of appearance
 * @param tiltWeight weight of the tilt itself
 * @param enamel enamel at which a guiding plane is worth half
 * @param gauge undercut that an abutment should offer
 * @param holdsAtReference undercut at the reference orientation below which none is credited
 * @param interference mean undercut depth at which a zone is worth half
 * @param deadSpace dead space beside a front tooth that is worth nothing
 * @param reciprocal weight of a lingual reciprocal surface beside a proximal one
 * @param fromMargin how far off the gingival margin a terminal lies at least
 * @param lengthStep step below which two depths are alike
 * @param areaStep step below which two areas are alike
 * @param angleStep step below which two tilts are alike
 * @param zones where rigid parts will pass
 * @param lastShown place in its quadrant of the last tooth that shows where the chart does not say
 */
public record PathRules(
    Threshold cone,
    Threshold step,
    Threshold guidingWeight,
    Threshold retentionWeight,
    Threshold interferenceWeight,
    Threshold appearanceWeight,
    Threshold tiltWeight,
    Threshold enamel,
    Threshold gauge,
    Threshold holdsAtReference,
    Threshold interference,
    Threshold deadSpace,
    Threshold reciprocal,
    Threshold fromMargin,
    Threshold lengthStep,
    Threshold areaStep,
    Threshold angleStep,
    Zones zones,
    Threshold lastShown) {

  /**
   * Where rigid parts will pass before there is a plan; but for two, the limits of the parts
   * themselves.
   *
   * @param baseAcross how far a base covers both flanks of a ridge, sideways
   * @param baseDown how far down it does
   * @param lingualFrom the strip of a lingual bar begins this far below the margins
   * @param lingualTo and ends this far below them
   * @param palateFrom palatal connectors stay this far from the margins
   * @param palateTo and are looked for this far from them
   * @param facialFrom where a bar arm crosses the gum below an abutment
   * @param facialTo to here
   */
  public record Zones(
      Threshold baseAcross,
      Threshold baseDown,
      Threshold lingualFrom,
      Threshold lingualTo,
      Threshold palateFrom,
      Threshold palateTo,
      Threshold facialFrom,
      Threshold facialTo) {
    static Zones from(Thresholds book) {
      return new Zones(
          book.get("base-border-from-crest", "mm"),
          book.get("path-base-down", "mm"),
          book.get("lower-border-from-margin", "mm"),
          book.get("lingual-bar-room-least", "mm"),
          book.get("upper-border-from-margin", "mm"),
          book.get("path-palate-to", "mm"),
          book.get("stand-off-near", "mm"),
          book.get("stand-off-far", "mm"));
    }
  }

  private static final String ORDER =
      "order of the factors: McCracken's Removable Partial Prosthodontics, ch. 11; size: own choice";

  /** The values Rodwork ships with. */
  public static final PathRules SHIPPED =
      new PathRules(
          taught(
              "path-cone",
              15,
              "degrees",
              "final tilt rarely more than 10 to 15 degrees: taught principle of surveying"),
          own("path-step", 0.8, "degrees", "1,100 tilts within 15 degrees"),
          own("path-weight-guiding", 0.35, "1", ORDER),
          own("path-weight-retention", 0.25, "1", ORDER),
          own("path-weight-interference", 0.18, "1", ORDER),
          own("path-weight-appearance", 0.10, "1", ORDER),
          own(
              "path-weight-tilt",
              0.08,
              "1",
              "a path near the occlusal normal is easier to use; the trade's order names no tilt, so"
                  + " it comes last"),
          own(
              "path-enamel",
              0.5,
              "mm",
              "about half of the enamel of a proximal surface; from memory"),
          practice(
              "path-gauge",
              0.25,
              "mm",
              "cast circumferential clasps and bars take the smallest gauge"),
          own("path-holds-at-reference", 0.05, "mm", "a fifth of the smallest gauge"),
          own("path-interference", 0.5, "mm", "twice the smallest gauge, all over a zone"),
          own("path-dead-space", 1.0, "mm", "seen from talking distance"),
          own("path-reciprocal", 0.3, "1", "it guides one arm, a proximal plane the whole denture"),
          taught(
              "path-terminal-from-margin",
              1,
              "mm",
              "1 mm or more clear of the free gingival margin: McCracken, Stewart"),
          own("path-step-length", 0.05, "mm", "a fifth of the smallest gauge"),
          own("path-step-area", 0.5, "mm²", "a contact of 0.7 by 0.7 mm"),
          own("path-step-angle", 1, "degrees", "what a hand sets on a surveying table"),
          new Zones(
              own("base-border-from-crest", 8, "mm", "as bases are drawn"),
              own("path-base-down", 8, "mm", "as far down as sideways"),
              own("lower-border-from-margin", 3, "mm", "as lower connectors are drawn"),
              own("lingual-bar-room-least", 8, "mm", "as lower connectors are drawn"),
              own("upper-border-from-margin", 6, "mm", "as upper connectors are drawn"),
              own("path-palate-to", 25, "mm", "more than half of a palate's width"),
              own("stand-off-near", 3, "mm", "as bars are judged"),
              own("stand-off-far", 6, "mm", "as bars are judged")),
          practice("path-last-shown", 4, "count", "front teeth and first premolars show"));

  /** The values of a rulebook. */
  public static PathRules from(Thresholds book) {
    return new PathRules(
        book.get("path-cone", "degrees"),
        book.get("path-step", "degrees"),
        book.get("path-weight-guiding", "1"),
        book.get("path-weight-retention", "1"),
        book.get("path-weight-interference", "1"),
        book.get("path-weight-appearance", "1"),
        book.get("path-weight-tilt", "1"),
        book.get("path-enamel", "mm"),
        book.get("path-gauge", "mm"),
        book.get("path-holds-at-reference", "mm"),
        book.get("path-interference", "mm"),
        book.get("path-dead-space", "mm"),
        book.get("path-reciprocal", "1"),
        book.get("path-terminal-from-margin", "mm"),
        book.get("path-step-length", "mm"),
        book.get("path-step-area", "mm²"),
        book.get("path-step-angle", "degrees"),
        Zones.from(book),
        book.get("path-last-shown", "count"));
  }

  /** All of them, for listing. */
  public List<Threshold> all() {
    return List.of(
        cone,
        step,
        guidingWeight,
        retentionWeight,
        interferenceWeight,
        appearanceWeight,
        tiltWeight,
        enamel,
        gauge,
        holdsAtReference,
        interference,
        deadSpace,
        reciprocal,
        fromMargin,
        lengthStep,
        areaStep,
        angleStep,
        zones.baseDown,
        zones.palateTo,
        lastShown);
  }
}
