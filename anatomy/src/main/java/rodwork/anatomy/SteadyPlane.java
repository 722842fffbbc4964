package rodwork.anatomy;

import java.util.ArrayList;
import java.util.List;
import rodwork.anatomy.ArchTops.Top;
import rodwork.geometry.Vec3;

/**
 * The occlusal plane that hangs least on any one tooth, with its ±.
 *
 * <p>A narrow scale of the weights leaves out ridges and teeth out of line, but in a deep curve of
 * Spee it settles on one level of two; a wide one averages over both. Each scale is tried with one
 * stretch of the arch left out after the other, and the steadiest is kept.
 *
 * @param uncertaintyDeg twice the jackknife error, and how far the other scales disagree, together
 *     [± degrees]
 */
record SteadyPlane(OcclusalPlane plane, double uncertaintyDeg) {
  private static final double[] SCALES_MM = {3, 4, 5};

  static SteadyPlane of(OcclusalPlane near, ArchBand band) {
    int[] stretch = near.tops().stream().mapToInt(top -> band.stretch(top.point())).toArray();
    List<OcclusalPlane> planes = new ArrayList<>();
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (double scale : SCALES_MM) {
      OcclusalPlane plane = OcclusalPlane.fit(near.tops(), near.up(), near.point(), scale);
      double error = plane.support() < 3 ? 90 : jackknife(plane, stretch, scale);
      // A wider scale must be clearly steadier: it lets ridges have their say.
      if (error < 0.8 * least) {
        least = error;
        best = planes.size();
      }
      planes.add(plane);
    }
    OcclusalPlane kept = planes.get(best);
    double disagreement = 0;
    for (OcclusalPlane plane : planes) {
      disagreement = Math.max(disagreement, plane.up().angleDegTo(kept.up()));
    }
    return new SteadyPlane(kept, Math.hypot(2 * least, disagreement));
  }

  private static double jackknife(OcclusalPlane plane, int[] stretch, double scale) {
    List<Vec3> ups = new ArrayList<>();
    for (int s = 0; s < ArchBand.STRETCHES; s++) {
      List<Top> kept = new ArrayList<>();
      for (int i = 0; i < stretch.length; i++) {
        if (stretch[i] != s) {
          kept.add(plane.tops().get(i));
        }
      }
      if (kept.size() < stretch.length) {
        OcclusalPlane without = OcclusalPlane.fit(kept, plane.up(), plane.point(), scale);
        if (without.support() < 3) {
          return 90;
        }
        ups.add(without.up());
      }
    }
    return Jackknife.degrees(ups);
  }
}
