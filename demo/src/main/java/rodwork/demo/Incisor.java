package rodwork.demo;

import static rodwork.demo.Crown.ROOT_MM;

/** An incisor: a wedge with a cingulum, a lingual fossa between two ridges, and an incisal edge. */
final class Incisor extends Crown {
  private static final double EDGE_HALF_MM = 0.55;

  private final double mesialCorner;
  private final double distalCorner;
  private final double fossa;

  private Incisor(CrownSize s, double bulge, double distalRounding, double fossa) {
    super(
        s,
        side(s, 0.80, 0.97),
        side(s, 0.72, 0.97 - distalRounding),
        Curve.through(
            -ROOT_MM,
            0.36 * s.blNeck(),
            0,
            s.bl() / 2 - bulge,
            0.18 * s.length(),
            s.bl() / 2,
            0.6 * s.length(),
            0.27 * s.bl() + 0.25,
            s.length(),
            EDGE_HALF_MM),
        Curve.through(
            -ROOT_MM,
            0.36 * s.blNeck(),
            0,
            s.blNeck() - s.bl() / 2 + bulge,
            0.17 * s.length(),
            s.bl() / 2,
            0.55 * s.length(),
            0.19 * s.bl() + 0.2,
            0.8 * s.length(),
            EDGE_HALF_MM + 0.2,
            s.length(),
            EDGE_HALF_MM),
        0.3,
        0.5);
    this.mesialCorner = 0.25;
    this.distalCorner = 0.3 + 4 * distalRounding;
    this.fossa = fossa;
  }

  /** An upper incisor: a clear fossa, a rounded distal corner. */
  static Incisor upper(CrownSize size, double distalRounding) {
    return new Incisor(size, 0.5, distalRounding, 0.55);
  }

  /** A lower incisor: narrow, nearly even on both sides, shallow fossa. */
  static Incisor lower(CrownSize size, double distalRounding) {
    return new Incisor(size, 0.4, distalRounding, 0.3);
  }

  @Override
  double top(double m, double f) {
    double u = m / (size.md() / 2);
    double u2 = u * u;
    return size.length() + 0.03 - (m > 0 ? mesialCorner : distalCorner) * u2 * u2 - 0.1 * u2;
  }

  @Override
  double relief(double m, double f, double z) {
    double u = m / (size.md() / 2);
    double u2 = u * u;
    if (f > 0) {
      return 0;
    }
    // The fossa lies between the marginal ridges and below the edge.
    double along = z / size.length();
    double deep = Math.exp(-18 * (along - 0.62) * (along - 0.62));
    return fossa * deep * (Math.min(2.2 * u2, 1.2) - 0.6);
  }
}
