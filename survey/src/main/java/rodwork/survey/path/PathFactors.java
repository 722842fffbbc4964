package rodwork.survey.path;

import rodwork.geometry.Vec3;
import rodwork.survey.Tilt;

/**
 * What one tilt offers, factor by factor.
 *
 * @param tilt against the reference orientation
 * @param axis the withdrawal axis [unit vector, scan frame]
 * @param guiding guiding planes
 * @param retention undercuts that hold
 * @param interference undercuts in the way
 * @param appearance what shows
 * @param travel the way out
 * @param tiltWorth {@code 1 − (total tilt/cone)²}, at least 0: a few degrees are usual and cost
 *     little
 * @param worth weighted mean of the worths [0 to 1]
 */
public record PathFactors(
    Tilt tilt,
    Vec3 axis,
    Guiding guiding,
    Retention retention,
    Interference interference,
    Appearance appearance,
    Travel travel,
    double tiltWorth,
    double worth) {

  /** What a tilt is judged by. */
  public enum Factor {
    GUIDING("guiding planes", "mm"),
    RETENTION("retention", "mm"),
    INTERFERENCE("interference", "mm"),
    APPEARANCE("appearance", "mm"),
    TILT("tilt", "°");

    private final String word;
    private final String unit;

    Factor(String word, String unit) {
      this.word = word;
      this.unit = unit;
    }

    public String word() {
      return word;
    }

    /** Unit of {@link PathFactors#figure}. */
    public String unit() {
      return unit;
    }
  }

  static PathFactors of(
      Tilt tilt,
      Vec3 axis,
      Guiding guiding,
      Retention retention,
      Interference interference,
      Appearance appearance,
      Travel travel,
      PathRules rules) {
    double share = tilt.totalDeg() / rules.cone().value();
    double tiltWorth = Math.max(0, 1 - share * share);
    double[] weight = {
      rules.guidingWeight().value(),
      rules.retentionWeight().value(),
      rules.interferenceWeight().value(),
      rules.appearanceWeight().value(),
      rules.tiltWeight().value()
    };
    double[] worth = {
      guiding.worth(), retention.worth(), interference.worth(), appearance.worth(), tiltWorth
    };
    double sum = 0;
    double all = 0;
    for (int i = 0; i < weight.length; i++) {
      sum += weight[i] * worth[i];
      all += weight[i];
    }
    return new PathFactors(
        tilt,
        axis,
        guiding,
        retention,
        interference,
        appearance,
        travel,
        tiltWorth,
        all > 0 ? sum / all : 0);
  }

  /** The worth of one factor [0 to 1]. */
  public double worth(Factor factor) {
    return switch (factor) {
      case GUIDING -> guiding.worth();
      case RETENTION -> retention.worth();
      case INTERFERENCE -> interference.worth();
      case APPEARANCE -> appearance.worth();
      case TILT -> tiltWorth;
    };
  }

  /** What a factor measures, in its own unit; less is better. */
  public double figure(Factor factor) {
    return switch (factor) {
      case GUIDING -> guiding.enamelMm();
      case RETENTION -> retention.shortMm();
      case INTERFERENCE -> interference.meanMm();
      case APPEARANCE -> appearance.showsMm();
      case TILT -> tilt.totalDeg();
    };
  }
}
