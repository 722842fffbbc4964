package rodwork.demo;

import java.util.List;
import rodwork.demo.Table.Line;
import rodwork.geometry.solid.Blend;

/**
 * A premolar: a facial cusp with a ridge down the facial side, a lingual cusp, a central groove.
 */
final class Premolar extends Crown {
  private final Table table;
  private final double shoulder;

  private Premolar(
      CrownSize s,
      Table table,
      Curve mesial,
      Curve distal,
      Curve facial,
      Curve lingual,
      double shoulder) {
    super(s, mesial, distal, facial, lingual, 0.12, 0.75);
    this.table = table;
    this.shoulder = shoulder;
  }

  /** An upper first premolar: two cusps of nearly the same height. */
  static Premolar upperFirst(CrownSize s, double facialBulge, double lingualBulge) {
    double h = s.length();
    double half = s.md() / 2;
    double row = 0.3 * s.bl();
    double marginal = h - 1.75;
    Table table =
        new Table(
            List.of(
                new Cusp(-0.15, row, h + 0.03, 0.62, 0.36, 0),
                new Cusp(0.45, -row, h - 0.95, 0.55, 0.40, 0)),
            List.of(
                new Line(half - 1.1, -row + 0.9, half - 1.1, row - 1.1, marginal, 0.6),
                new Line(-half + 1.1, -row + 0.9, -half + 1.1, row - 1.1, marginal, 0.6)),
            List.of(
                new Line(-half + 1.7, 0, half - 1.7, 0, 0.3, 0),
                new Line(half - 1.7, 0, half - 0.3, 0, 0.25, 0),
                new Line(half - 1.7, 0, half - 1.3, 1.1, 0.16, 0),
                new Line(half - 1.7, 0, half - 1.3, -1.1, 0.16, 0),
                new Line(-half + 1.7, 0, -half + 1.3, 1.1, 0.16, 0),
                new Line(-half + 1.7, 0, -half + 1.3, -1.1, 0.16, 0)),
            h - 3.2);
    return new Premolar(
        s,
        table,
        side(s, 0.66, 0.72),
        side(s, 0.62, 0.72),
        across(s, facialBulge, 0.28, row + 0.55),
        across(s, lingualBulge, 0.45, row + 0.5),
        0);
  }

  /**
   * A lower first premolar: a large facial cusp over the root, a small lingual one.
   *
   * @param shoulder how far the mesiofacial line angle stands out besides [mm]
   */
  static Premolar lowerFirst(
      CrownSize s, double facialBulge, double facialContour, double shoulder) {
    double h = s.length();
    double half = s.md() / 2;
    double marginal = h - 1.9;
    Table table =
        new Table(
            List.of(
                new Cusp(0.1, 1.1, h + 0.03, 0.75, 0.45, 0),
                new Cusp(-0.2, -2.2, h - 1.3, 0.65, 0.38, 0)),
            List.of(
                new Line(half - 1.0, -1.7, half - 0.9, 0.9, marginal - 0.2, 0.7),
                new Line(-half + 1.0, -1.7, -half + 0.9, 0.9, marginal, 0.7)),
            List.of(
                new Line(0.0, -1.1, half - 1.6, -0.6, 0.42, 0),
                new Line(0.0, -1.1, -half + 1.6, -0.6, 0.42, 0),
                new Line(half - 1.6, -0.5, half - 1.3, -2.6, 0.16, 0),
                new Line(half - 1.6, -0.5, half - 1.4, 0.5, 0.16, 0),
                new Line(-half + 1.6, -0.5, -half + 1.4, 0.5, 0.16, 0)),
            h - 3.3);
    return new Premolar(
        s,
        table,
        side(s, 0.66, 0.72),
        side(s, 0.64, 0.72),
        across(s, facialBulge, facialContour, 1.9),
        across(s, s.bl() - s.blNeck() - Math.min(facialBulge, 0.5), 0.5, 3.15),
        shoulder);
  }

  private static Curve across(CrownSize s, double bulge, double contour, double atTip) {
    return Curve.through(
        -ROOT_MM,
        0.36 * s.blNeck(),
        0,
        s.bl() / 2 - bulge,
        contour * s.length(),
        s.bl() / 2,
        0.5 * (1 + contour) * s.length(),
        0.6 * s.bl() / 2 + 0.4 * atTip,
        s.length(),
        atTip);
  }

  @Override
  double top(double m, double f) {
    return table.at(m, f);
  }

  @Override
  double relief(double m, double f, double z) {
    double u = m / (0.25 * size.md());
    double lobe = Math.exp(-u * u) - 0.45;
    double out = 0;
    if (shoulder > 0 && f > 0) {
      double v = (m - 0.3 * size.md()) / 1.3;
      double w = (z - 0.42 * size.length()) / 1.7;
      out = shoulder * Math.exp(-v * v - w * w);
    }
    return out + 0.22 * lobe * Blend.step(0.25 * size.length(), 0.75 * size.length(), z);
  }
}
