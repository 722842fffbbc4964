package rodwork.demo;

import java.util.List;
import rodwork.geometry.Vec3;
import rodwork.geometry.solid.Blend;

/**
 * The ridge with its gum: two walls and a crest that follow the necks of the teeth.
 *
 * <p>All is told along the arch (s) and across it (t, outwards). Next to teeth the crest meets each
 * crown at its margin and rises to a papilla towards each contact; over a space it is a low rounded
 * ridge. The walls fall to the vestibule and to the tongue or the palate, with a swelling over each
 * root.
 */
final class Gum {
  private static final double STEP = 0.1;
  private static final double REACH = 75;
  private static final int COUNT = (int) (2 * REACH / STEP) + 2;

  /** How thick the gum's edge stands over a neck [mm]. */
  private static final double COLLAR_MM = 0.55;

  private final ArchCurve curve;
  private final GumShape shape;
  private final float[] facialT = new float[COUNT];
  private final float[] lingualT = new float[COUNT];
  private final float[] facialZ = new float[COUNT];
  private final float[] lingualZ = new float[COUNT];
  private final float[] papilla = new float[COUNT];
  private final float[] bare = new float[COUNT];
  private final float[] root = new float[COUNT];
  private final float[] hollow = new float[COUNT];
  private final float[] frenum = new float[COUNT];

  Gum(ArchLayout layout, GumShape shape) {
    this.curve = layout.curve();
    this.shape = shape;
    Necks necks = new Necks(layout, shape);
    List<Tooth> teeth = layout.teeth();
    for (int i = 0; i < COUNT; i++) {
      double s = i * STEP - REACH;
      facialT[i] = (float) necks.facialT(s);
      lingualT[i] = (float) necks.lingualT(s);
      facialZ[i] = (float) necks.facialZ(s);
      lingualZ[i] = (float) necks.lingualZ(s);
      papilla[i] = (float) necks.papilla(s);
      bare[i] = (float) necks.bare(s);
      double swelling = 0;
      double deep = 0;
      for (Tooth tooth : teeth) {
        double u = (s - tooth.s()) / (0.34 * tooth.crown().size.mdNeck());
        swelling += shape.rootSwelling(tooth.fdi()) * Math.exp(-u * u);
        double v = (s - tooth.s()) / (1.3 * tooth.crown().size.md());
        deep += shape.hollow(tooth.fdi()) * Math.exp(-v * v);
      }
      root[i] = (float) swelling;
      hollow[i] = (float) deep;
      double fold = 0;
      for (double place : shape.frena()) {
        double u = (s - place) / 0.7;
        fold += Math.exp(-u * u);
      }
      frenum[i] = (float) fold;
    }
  }

  /** Negative inside the ridge, the vestibule's floor included. */
  double at(double s, double t, double z) {
    double place = Math.clamp((s + REACH) / STEP, 0.0, COUNT - 2.0);
    int i = (int) place;
    double share = place - i;
    double fz = mix(facialZ, i, share);
    double lz = mix(lingualZ, i, share);
    double ft = mix(facialT, i, share);
    double lt = mix(lingualT, i, share);
    double e = mix(bare, i, share);
    double below = fz - z;
    double fall = shape.facialWall().at(below);
    double inVestibule = Blend.step(2, 9, below);
    double swell =
        mix(root, i, share) * Blend.step(-0.5, 3, below) * (1 - Blend.step(5.5, 11, below));
    double dip = mix(hollow, i, share) * Blend.step(0.4, 6.5, below);
    double fold = 2.2 * mix(frenum, i, share) * inVestibule;
    double wallF = ft + COLLAR_MM + (1 - 0.3 * e) * fall + swell - dip;
    double wallL = lt - COLLAR_MM - shape.lingualWall().at(lz - z);
    double w = Math.clamp((t - lt) / (ft - lt), 0.0, 1.0);
    double centre = 4 * w * (1 - w);
    double crestAtTeeth = lz + w * (fz - lz) + mix(papilla, i, share) * (0.62 + 0.38 * centre);
    double across = t - (ft + lt) / 2;
    double crestBare =
        lz + w * (fz - lz) + 1.2 - 0.10 * across * across / (1 + 0.04 * across * across);
    double crest = crestAtTeeth + e * (crestBare - crestAtTeeth);
    double walls = Blend.intersection(t - wallF - fold, wallL - t, 1);
    double ridge = Blend.intersection(walls, 0.8 * (z - crest), 1.5 + 2.8 * e);
    if (t < 0) {
      return ridge;
    }
    double out = t - wallF;
    double land =
        shape.vestibuleZ().at(Math.abs(s))
            + 2.0 * Blend.step(1.6, 4.2, out)
            - 0.25 * (1 - Blend.step(0, 2.0, Math.abs(out - 1.8)));
    return Blend.union(ridge, 0.8 * (z - land), 2.0);
  }

  /** Furthest place outwards of the land at arc length {@code s} [mm across the arch]. */
  double landEnd(double s) {
    int i = (int) Math.clamp((s + REACH) / STEP, 0.0, COUNT - 2.0);
    return facialT[i]
        + COLLAR_MM
        + shape.facialWall().at(facialZ[i] - shape.vestibuleZ().at(Math.abs(s)))
        + 3.8;
  }

  /** Place of the lingual necks at arc length {@code s} [mm across the arch]. */
  double lingualT(double s) {
    double place = Math.clamp((s + REACH) / STEP, 0.0, COUNT - 2.0);
    return mix(lingualT, (int) place, place - (int) place);
  }

  ArchCurve curve() {
    return curve;
  }

  Vec3 landPoint(double s) {
    return curve.point(s, landEnd(s), 0);
  }

  private static double mix(float[] table, int i, double share) {
    return table[i] + share * (table[i + 1] - table[i]);
  }
}
