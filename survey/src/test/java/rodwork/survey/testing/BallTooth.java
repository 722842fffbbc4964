package rodwork.survey.testing;

import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * A ball that stands {@link #RISE} over a level gum, cut off by it, as tooth 44 of a lower arch:
 * its undercut at a height is a closed form.
 */
public final class BallTooth {
  public static final double RADIUS = 4;
  public static final double RISE = 2.5;
  private static final int ROUND = 240;
  private static final int ROWS = 160;
  private static final int GUM_ROWS = 40;

  private BallTooth() {}

  public static Dentition dentition(Arch arch) {
    int[] labels = new int[arch.mesh().triangleCount()];
    for (int t = 0; t < labels.length; t++) {
      labels[t] = t < 2 * ROUND * ROWS ? 44 : 0;
    }
    return Dentition.of(arch, ToothLabels.of(labels), Chart.blank(Jaw.LOWER), Watch.NONE);
  }

  /** The same ball with its margin cut off aslant: higher by so much a millimetre along x. */
  public static Dentition dentitionCutAslant(Arch arch, double slope) {
    int[] labels = new int[arch.mesh().triangleCount()];
    for (int t = 0; t < labels.length; t++) {
      Vec3 middle = arch.mesh().pointOn(t, 1 / 3.0, 1 / 3.0);
      boolean crown = t < 2 * ROUND * ROWS && middle.z() > RADIUS * slope + slope * middle.x();
      labels[t] = crown ? 44 : 0;
    }
    return Dentition.of(arch, ToothLabels.of(labels), Chart.blank(Jaw.LOWER), Watch.NONE);
  }

  public static Arch arch() {
    int rows = ROWS + GUM_ROWS;
    double[] xyz = new double[3 * (rows + 1) * ROUND];
    int[] corners = new int[6 * rows * ROUND];
    double foot = Math.PI - Math.acos(RISE / RADIUS);
    int c = 0;
    for (int r = 0; r <= rows; r++) {
      double angle = foot * Math.min(r, ROWS) / ROWS;
      double rho = RADIUS * Math.sin(angle) + Math.max(0, r - ROWS) * 0.25;
      double z = r > ROWS ? 0 : RISE + RADIUS * Math.cos(angle);
      for (int k = 0; k < ROUND; k++) {
        double turn = 2 * Math.PI * k / ROUND;
        int v = r * ROUND + k;
        xyz[3 * v] = rho * Math.cos(turn);
        xyz[3 * v + 1] = rho * Math.sin(turn);
        xyz[3 * v + 2] = r == ROWS ? 0 : z;
        if (r < rows) {
          int right = r * ROUND + (k + 1) % ROUND;
          for (int corner : new int[] {v, v + ROUND, right + ROUND, v, right + ROUND, right}) {
            corners[c++] = corner < ROUND ? 0 : corner; // the pole is one vertex
          }
        }
      }
    }
    TriangleMesh mesh = TriangleMesh.of(xyz, corners);
    return new Arch(
        MeshTopology.of(mesh),
        AnatomicSurface.whole(mesh),
        new ArchFrame(new Vec3(-20, -10, 0), Vec3.Y, Vec3.Z, Jaw.LOWER, 0, 0));
  }
}
