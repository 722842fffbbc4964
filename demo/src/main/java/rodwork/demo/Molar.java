package rodwork.demo;

import java.util.List;
import rodwork.demo.Table.Line;
import rodwork.geometry.solid.Blend;

/** A molar: four cusps, marginal ridges, fossae and fissures, grooves over both long sides. */
final class Molar extends Crown {
  private final Table table;
  private final double facialGroove;
  private final double lingualGroove;

  private Molar(
      CrownSize s,
      Table table,
      double facialGroove,
      double lingualGroove,
      Curve facial,
      Curve lingual,
      double lingualTaper) {
    super(s, side(s, 0.68, 0.84), side(s, 0.62, 0.84), facial, lingual, lingualTaper, 0.7);
    this.table = table;
    this.facialGroove = facialGroove;
    this.lingualGroove = lingualGroove;
  }

  /**
   * An upper molar: the oblique ridge runs from the mesiolingual to the distofacial cusp.
   *
   * @param distolingual how much smaller than on a first molar the distolingual cusp is [mm]
   */
  static Molar upper(CrownSize s, double facialBulge, double facialContour, double distolingual) {
    double h = s.length();
    double half = s.md() / 2;
    double row = 0.28 * s.bl();
    double marginal = h - 1.3;
    Table table =
        new Table(
            List.of(
                new Cusp(0.24 * s.md(), row, h + 0.05, 0.58, 0.34, 0.15),
                new Cusp(-0.22 * s.md(), row - 0.1, h - 0.05, 0.50, 0.34, 0.55),
                new Cusp(0.15 * s.md(), -row - 0.05, h - 0.05, 0.48, 0.34, -0.6),
                new Cusp(
                    -0.29 * s.md() + 0.25 * distolingual,
                    -row - 0.1,
                    h - 0.45 - 0.5 * distolingual,
                    0.5,
                    0.5,
                    0)),
            List.of(
                new Line(half - 1.1, -row + 0.9, half - 1.1, row - 0.7, marginal, 0.7),
                new Line(-half + 1.0, -row + 0.7, -half + 1.0, row - 0.9, marginal - 0.1, 0.7)),
            List.of(
                new Line(half - 2.0, 0.2, 0.1, 0.5, 0.32, 0),
                new Line(0.1, 0.5, 0.0, row + 0.9, 0.25, 0),
                new Line(half - 2.0, 0.2, half - 1.5, 1.5, 0.18, 0),
                new Line(half - 2.0, 0.2, half - 1.5, -1.2, 0.18, 0),
                new Line(-half + 2.0, -0.3, -0.9, -row + 0.3, 0.32, 0),
                new Line(-0.9, -row + 0.3, -1.1, -row - 1.2, 0.25, 0),
                new Line(-half + 2.0, -0.3, -half + 1.6, 1.0, 0.18, 0)),
            h - 2.9);
    return new Molar(
        s,
        table,
        0.02 * s.md(),
        -0.1 * s.md(),
        across(s, facialBulge, facialContour, row + 0.75),
        across(s, s.bl() - s.blNeck() - facialBulge, 0.42, row + 1.0),
        0.06);
  }

  /** A lower second molar: four cusps about a cross of grooves. */
  static Molar lowerSecond(CrownSize s, double facialBulge) {
    double h = s.length();
    double half = s.md() / 2;
    double row = 0.27 * s.bl();
    double marginal = h - 1.3;
    Table table =
        new Table(
            List.of(
                new Cusp(0.22 * s.md(), row, h - 0.1, 0.52, 0.34, 0.2),
                new Cusp(-0.22 * s.md(), row - 0.1, h - 0.2, 0.52, 0.34, -0.2),
                new Cusp(0.21 * s.md(), -row - 0.1, h + 0.02, 0.56, 0.34, 0.2),
                new Cusp(-0.21 * s.md(), -row, h - 0.1, 0.56, 0.34, -0.2)),
            List.of(
                new Line(half - 1.1, -row + 0.9, half - 1.1, row - 0.7, marginal, 0.7),
                new Line(-half + 1.1, -row + 0.9, -half + 1.1, row - 0.7, marginal - 0.1, 0.7)),
            List.of(
                new Line(half - 2.0, 0.1, -half + 2.0, 0.0, 0.32, 0),
                new Line(0.0, 0.0, 0.0, row + 0.8, 0.25, 0),
                new Line(0.0, 0.0, 0.0, -row - 0.8, 0.25, 0),
                new Line(half - 2.0, 0.1, half - 1.6, 1.3, 0.18, 0),
                new Line(half - 2.0, 0.1, half - 1.6, -1.2, 0.18, 0),
                new Line(-half + 2.0, 0.0, -half + 1.6, 1.2, 0.18, 0),
                new Line(-half + 2.0, 0.0, -half + 1.6, -1.2, 0.18, 0)),
            h - 2.8);
    return new Molar(
        s,
        table,
        0,
        0,
        across(s, facialBulge, 0.25, row + 0.8),
        across(s, s.bl() - s.blNeck() - facialBulge, 0.5, row + 1.0),
        0.06);
  }

  private static Curve across(CrownSize s, double bulge, double contour, double atTip) {
    return Curve.through(
        -ROOT_MM,
        0.38 * s.blNeck(),
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
    double u = (m - (f > 0 ? facialGroove : lingualGroove)) / (0.09 * size.md());
    double deep = f > 0 ? 0.6 : 0.4;
    return -deep * Math.exp(-u * u) * Blend.step(0.3 * size.length(), 0.8 * size.length(), z);
  }
}
