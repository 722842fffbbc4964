package rodwork.design.arm;

/**
 * A section of an arm, its flat (or nearest) side on the tooth.
 *
 * <p>Second moments are about axes through the centroid. "Away" is bending that carries the tip
 * away from the tooth, "sideways" bending along the tooth's surface.
 */
public sealed interface Section {
  /** Round wire. */
  record Round(double diameterMm) implements Section {
    public Round {
      positive(diameterMm);
    }

    @Override
    public double widthMm() {
      return diameterMm;
    }

    @Override
    public double thicknessMm() {
      return diameterMm;
    }

    @Override
    public double areaMm2() {
      return Math.PI * diameterMm * diameterMm / 4;
    }

    @Override
    public double awayMm4() {
      return Math.PI * Math.pow(diameterMm, 4) / 64;
    }

    @Override
    public double sidewaysMm4() {
      return awayMm4();
    }

    @Override
    public double torsionMm4() {
      return 2 * awayMm4();
    }

    @Override
    public double centroidMm() {
      return diameterMm / 2;
    }

    @Override
    public double bendingMpa(double away, double sideways) {
      return Math.hypot(away, sideways) * diameterMm / 2 / awayMm4();
    }

    @Override
    public double shearMpa(double twist) {
      return Math.abs(twist) * diameterMm / 2 / torsionMm4();
    }
  }

  /**
   * Half-round: half an ellipse with its flat side on the tooth; a half circle where the width is
   * twice the thickness. Figures of textbooks for the half circle of radius r: I = 0.10976 r⁴ away,
   * 0.3927 r⁴ sideways, farthest fibre 0.5756 r.
   */
  record HalfRound(double widthMm, double thicknessMm) implements Section {
    /** How far the centroid of half an ellipse lies from its flat, in thicknesses: 4/(3π). */
    private static final double CENTROID = 4 / (3 * Math.PI);

    private static final double AWAY = Math.PI / 8 - 8 / (9 * Math.PI);

    /**
     * Saint-Venant's A⁴/(40·Ip) times this is exact for the half circle (0.2976 r⁴, finite
     * differences on Poisson's equation, 400 cells across) and within 1.6 % for thicknesses of 0.6
     * to 1.2 half widths.
     */
    private static final double TORSION = 0.9823;

    /**
     * The greatest shear of twist, at the middle of the flat, is T·t/J times this; 0.80 to 0.94
     * over the same range of shapes.
     */
    private static final double SHEAR = 0.85;

    private static final int ARC_POINTS = 24;

    public HalfRound {
      positive(widthMm);
      positive(thicknessMm);
    }

    @Override
    public double areaMm2() {
      return Math.PI * widthMm / 2 * thicknessMm / 2;
    }

    @Override
    public double awayMm4() {
      return AWAY * widthMm / 2 * Math.pow(thicknessMm, 3);
    }

    @Override
    public double sidewaysMm4() {
      return Math.PI / 8 * Math.pow(widthMm / 2, 3) * thicknessMm;
    }

    @Override
    public double torsionMm4() {
      return TORSION * Math.pow(areaMm2(), 4) / (40 * (awayMm4() + sidewaysMm4()));
    }

    @Override
    public double centroidMm() {
      return CENTROID * thicknessMm;
    }

    @Override
    public double bendingMpa(double away, double sideways) {
      double perOut = away / awayMm4();
      double perSide = sideways / sidewaysMm4();
      double most = 0;
      for (int i = 0; i <= ARC_POINTS; i++) {
        double angle = Math.PI * i / ARC_POINTS;
        double side = widthMm / 2 * Math.cos(angle);
        double out = thicknessMm * Math.sin(angle) - centroidMm();
        most = Math.max(most, Math.abs(perOut * out + perSide * side));
      }
      return most;
    }

    @Override
    public double shearMpa(double twist) {
      return SHEAR * Math.abs(twist) * thicknessMm / torsionMm4();
    }
  }

  /** Along the tooth's surface, across the arm [mm]. */
  double widthMm();

  /** Away from the tooth [mm]. */
  double thicknessMm();

  double areaMm2();

  /** Second moment for bending away from the tooth [mm⁴]. */
  double awayMm4();

  /** Second moment for bending along the tooth [mm⁴]. */
  double sidewaysMm4();

  /** Torsion constant [mm⁴]. */
  double torsionMm4();

  /** How far the centroid lies from the tooth [mm]. */
  double centroidMm();

  /** Greatest bending stress over the section [MPa] for two moments [N·mm]. */
  double bendingMpa(double away, double sideways);

  /** Greatest shear stress of a twisting moment [N·mm] [MPa]. */
  double shearMpa(double twist);

  /**
   * The section a share of the way from this to another of the same shape, both dimensions growing
   * or shrinking evenly.
   */
  default Section towards(Section other, double share) {
    if (this instanceof Round a && other instanceof Round b) {
      return new Round(mix(a.diameterMm, b.diameterMm, share));
    }
    if (this instanceof HalfRound a && other instanceof HalfRound b) {
      return new HalfRound(
          mix(a.widthMm, b.widthMm, share), mix(a.thicknessMm, b.thicknessMm, share));
    }
    throw new IllegalArgumentException("an arm does not change from " + this + " to " + other);
  }

  private static double mix(double a, double b, double share) {
    return a + share * (b - a);
  }

  private static void positive(double mm) {
    if (!(mm > 0) || Double.isInfinite(mm)) {
      throw new IllegalArgumentException("a dimension of a section: " + mm + " mm");
    }
  }
}
