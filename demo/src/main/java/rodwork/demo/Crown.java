package rodwork.demo;

import rodwork.geometry.solid.Blend;

/**
 * The form of a crown in its own frame: m to mesial, f to facial, z along the tooth axis to
 * occlusal, from the margin at the middle of the facial side [mm].
 *
 * <p>A crown is a column whose sections are rounded boxes, cut by an occlusal surface. Four
 * outlines give the half widths of the sections at each height; they carry the neck, the height of
 * contour, the contact areas. Below the margin the column goes on as a root.
 */
abstract class Crown {
  /** How far the root goes on below the margin [mm]. */
  static final double ROOT_MM = 2.5;

  private static final double CONTACT_FOOT = 0.75;

  /** Usual height of the contact [share of the crown's length]. */
  private static final double CONTACT_SHARE = 0.68;

  final CrownSize size;
  private final Curve mesial;
  private final Curve distal;
  private final Curve facial;
  private final Curve lingual;
  private final double lingualTaper;
  private final double rim;

  /**
   * A crown of four outlines.
   *
   * @param lingualTaper how much narrower than at its middle the crown is at its lingual end
   *     [share]
   * @param rim how far the edge between column and occlusal surface is rounded [mm]
   */
  Crown(
      CrownSize size,
      Curve mesial,
      Curve distal,
      Curve facial,
      Curve lingual,
      double lingualTaper,
      double rim) {
    this.size = size;
    this.mesial = mesial;
    this.distal = distal;
    this.facial = facial;
    this.lingual = lingual;
    this.lingualTaper = lingualTaper;
    this.rim = rim;
  }

  /**
   * Half widths of a mesial or distal side: from the neck out to the contact area, which is broad,
   * and in again.
   *
   * @param contact height of the greatest width [share of the crown's length]
   * @param corner half width left at the height of the tip [share of the greatest]
   */
  static Curve side(CrownSize s, double contact, double corner) {
    double neck = s.mdNeck() / 2;
    double flare = (s.md() - s.mdNeck()) / 2;
    double height = contact * s.length();
    return Curve.through(
        -ROOT_MM,
        0.75 * neck,
        0,
        neck,
        0.4 * height,
        neck + 0.52 * flare,
        CONTACT_FOOT * height,
        neck + 0.94 * flare,
        height,
        neck + flare,
        s.length(),
        corner * s.md() / 2);
  }

  /** Where the contact area begins [mm above the margin]: no papilla need rise higher. */
  final double contactFoot() {
    return CONTACT_FOOT * CONTACT_SHARE * size.length();
  }

  /** Height of the occlusal surface [mm], before its edge is rounded. */
  abstract double top(double m, double f);

  /** What is added to the half width on the facial (f above 0) or lingual side [mm]. */
  double relief(double m, double f, double z) {
    return 0;
  }

  final double facialHalf(double z) {
    return facial.at(z);
  }

  final double lingualHalf(double z) {
    return lingual.at(z);
  }

  /** Negative inside the crown and its root; about the distance near the surface [mm]. */
  final double at(double m, double f, double z) {
    double column = column(m, f, z);
    double body = column;
    if (z > 0.25 * size.length()) {
      body = Blend.intersection(column, 0.85 * (z - top(m, f)), rim);
    }
    return Math.max(body, -ROOT_MM - z);
  }

  private double column(double m, double f, double z) {
    double a = m > 0 ? mesial.at(z) : distal.at(z);
    double b = f > 0 ? facial.at(z) : lingual.at(z);
    b += relief(m, f, z);
    double v = Math.abs(f) / b;
    if (f < 0) {
      a *= 1 - lingualTaper * Math.min(v * v, 1.5);
    }
    double u = Math.abs(m) / a;
    // |u|^p + |v|^p = 1 with p = 2.5, divided by the length of its gradient.
    double u15 = u * Math.sqrt(u);
    double v15 = v * Math.sqrt(v);
    double gu = 2.5 * u15 / a;
    double gv = 2.5 * v15 / b;
    double slope = Math.sqrt(gu * gu + gv * gv);
    return (u15 * u + v15 * v - 1) / Math.max(slope, 1 / Math.max(a, b));
  }
}
