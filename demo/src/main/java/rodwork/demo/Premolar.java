package rodwork.demo;

import java.util.List;
import rodwork.demo.Table.Line;
import rodwork.geometry.solid.Blend;

/**
 * A premolar: a facial cusp with a ridge down the facial side, a lingual cusp, a central groove.
 */
final class Premolar extends Crown {
  private final Table table;

  private Premolar(
      CrownSize s, Table table, Curve mesial, Curve distal, Curve facial, Curve lingual) {
    super(s, mesial, distal, facial, lingual, 0.12, 0.6);
    this.table = table;
  }

  /** An upper first premolar: two cusps of nearly the same height. */
  static Premolar upperFirst(CrownSize s, double facialBulge, double lingualBulge) {
    double h = s.length();
    double half = s.md() / 2;
    double row = 0.3 * s.bl();
    double marginal = h - 1.5;
    Table table =
        new Table(
            List.of(
                new Cusp(-0.15, row, h + 0.25, 0.62, 0.42, 0),
                new Cusp(0.45, -row, h - 0.75, 0.55, 0.40, 0)),
            List.of(
                new Line(half - 1.0, -row + 0.7, half - 1.0, row - 0.6, marginal, 0.7),
                new Line(-half + 1.0, -row + 0.7, -half + 1.0, row - 0.6, marginal, 0.7)),
            List.of(
                new Line(-half + 1.7, 0, half - 1.7, 0, 0.4, 0),
                new Line(half - 1.7, 0, half - 0.3, 0, 0.25, 0),
                new Line(half - 1.7, 0, half - 1.3, 1.1, 0.3, 0),
                new Line(half - 1.7, 0, half - 1.3, -1.1, 0.3, 0),
                new Line(-half + 1.7, 0, -half + 1.3, 1.1, 0.3, 0),
                new Line(-half + 1.7, 0, -half + 1.3, -1.1, 0.3, 0)),
            h - 3.2);
    return new Premolar(
        s,
        table,
        side(s, 0.66, 0.8),
        side(s, 0.62, 0.8),
        across(s, facialBulge, 0.28, row + 0.55),
        across(s, lingualBulge, 0.45, row + 0.5));
  }

  /** A lower first premolar: a large facial cusp over the root, a small lingual one. */
  static Premolar lowerFirst(CrownSize s, double facialBulge, double facialContour) {
    double h = s.length();
    double half = s.md() / 2;
    double marginal = h - 1.9;
    Table table =
        new Table(
            List.of(
                new Cusp(0.1, 1.1, h + 0.25, 0.62, 0.45, 0),
                new Cusp(-0.2, -2.3, h - 2.0, 0.35, 0.30, 0)),
            List.of(
                new Line(half - 1.0, -1.7, half - 0.9, 0.9, marginal - 0.2, 0.7),
                new Line(-half + 1.0, -1.7, -half + 0.9, 0.9, marginal, 0.7)),
            List.of(
                new Line(0.3, -1.15, half - 1.6, -0.5, 0.3, 0),
                new Line(-0.3, -1.15, -half + 1.6, -0.5, 0.3, 0),
                new Line(half - 1.6, -0.5, half - 1.3, -2.6, 0.25, 0),
                new Line(half - 1.6, -0.5, half - 1.4, 0.5, 0.25, 0),
                new Line(-half + 1.6, -0.5, -half + 1.4, 0.5, 0.25, 0)),
            h - 3.3);
    return new Premolar(
        s,
        table,
        side(s, 0.66, 0.8),
        side(s, 0.64, 0.8),
        across(s, facialBulge, facialContour, 1.9),
        across(s, s.bl() - s.blNeck() - Math.min(facialBulge, 0.5), 0.5, 2.75));
  }

  private static Curve across(CrownSize s, double bulge, double contour, double atTip) {
    return Curve.through(
        -ROOT_MM,
        0.44 * s.blNeck(),
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
    return 0.22 * lobe * Blend.step(0.25 * size.length(), 0.75 * size.length(), z);
  }
}
