package rodwork.anatomy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.FrameFinding.Cue;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;

/**
 * Finds the arch frame of a cast in any pose from its shape alone, or says why it cannot.
 *
 * <p>Up is the normal of the {@link OcclusalPlane}, sought from the guesses of {@link UpSearch};
 * the front is the axis of the {@link ArchCurve} through the surface close under that plane. Each ±
 * is twice the standard error that leaving out one stretch of the arch after the other gives (the
 * jackknife), together with how much the answer depends on how it is asked. Right and left follow
 * from the jaw, which no shape tells surely.
 *
 * <p>Deterministic: nothing is drawn at random, and the answer turns with the cast.
 */
public final class ArchFrameFinder {
  /** A frame less sure than this is refused [± degrees]. */
  public static final double UP_LIMIT_DEG = 15;

  public static final double FRONT_LIMIT_DEG = 20;

  private static final double HINT_APART_DEG = 20;
  private static final int COARSE_POINTS = 4_000;
  private static final int FINE_POINTS = 16_000;

  /** Scraps at the rim of a scan stand up like cusps; none is sought this close to it. */
  private static final double RIM_MM = 2.5;

  /**
   * What the two ± never fall below: on real arches the plane through one point a tooth differs
   * from that through all cusps by up to 1.5°, the axis by tooth pairs from that of the curve by up
   * to 3°.
   */
  private static final double UP_FLOOR_DEG = 2;

  private static final double FRONT_FLOOR_DEG = 3;

  private ArchFrameFinder() {}

  /**
   * Finds the frame.
   *
   * @param hints directions that are known; each is then taken as it is, with ± 0
   * @throws Refusal if this is no arch or a direction is not sure; with both hints there is always
   *     an answer
   */
  public static FrameFinding find(
      MeshTopology topology, AnatomicSurface surface, Jaw jaw, FrameHints hints) {
    PointCloud cloud = PointCloud.of(topology.mesh(), surface, FINE_POINTS);
    PointCloud inner = cloud.awayFromRims(topology, surface, RIM_MM);
    UpSearch seen = UpSearch.of(topology, surface);
    Vec3 up = hints.up();
    OcclusalPlane plane =
        up == null
            ? OcclusalPlane.near(inner, firstUp(seen, inner, topology, surface))
            : OcclusalPlane.across(inner.size() > 0 ? inner : cloud, up);
    ArchBand band = ArchBand.below(plane, cloud);
    double upDeg = 0;
    if (up == null && band.doubt() == null) {
      SteadyPlane steady = SteadyPlane.of(plane, band);
      plane = steady.plane();
      upDeg = Math.hypot(UP_FLOOR_DEG, steady.uncertaintyDeg());
      band = ArchBand.below(plane, cloud);
    }
    String doubt = band.doubt();
    if (up == null || hints.front() == null) {
      if (doubt != null) {
        throw AnatomyProblem.NO_ARCH.with(doubt);
      }
    }
    if (upDeg > UP_LIMIT_DEG) {
      throw AnatomyProblem.UP_UNCERTAIN.with(
          upDeg,
          UP_LIMIT_DEG,
          String.format(Locale.ROOT, "%.0f cusps and edges in one plane", plane.support()));
    }
    Vec3 y;
    double frontDeg = 0;
    if (hints.front() != null) {
      double apart = hints.front().angleDegTo(plane.up());
      apart = Math.min(apart, 180 - apart);
      if (apart < HINT_APART_DEG) {
        throw AnatomyProblem.FRONT_ALONG_UP.with(apart, HINT_APART_DEG);
      }
      y = hints.front().across(plane.up()).unit();
    } else {
      y = band.front();
      frontDeg = band.frontUncertaintyDeg(FRONT_FLOOR_DEG);
      if (frontDeg > FRONT_LIMIT_DEG) {
        throw AnatomyProblem.FRONT_UNCERTAIN.with(
            frontDeg, FRONT_LIMIT_DEG, "the arch is short or lopsided");
      }
    }
    // Perpendicular to the last digit, as the frame demands.
    Vec3 z = plane.up();
    y = y.across(z).unit();
    Vec3 origin = band.middle();
    ArchFrame frame = new ArchFrame(origin, y, z, jaw, upDeg, frontDeg);
    return new FrameFinding(frame, cues(seen, band, frame));
  }

  private static Vec3 firstUp(
      UpSearch seen, PointCloud inner, MeshTopology topology, AnatomicSurface surface) {
    PointCloud coarse =
        PointCloud.of(topology.mesh(), surface, COARSE_POINTS)
            .awayFromRims(topology, surface, RIM_MM);
    List<Vec3> starts = seen.starts(inner);
    if (starts.isEmpty()) {
      throw AnatomyProblem.UP_UNCERTAIN.with(
          90.0, UP_LIMIT_DEG, "the surface faces no one way and shows no plaster base");
    }
    OcclusalPlane best = null;
    for (Vec3 start : starts) {
      OcclusalPlane plane = OcclusalPlane.near(coarse, start);
      if (best == null || plane.support() > best.support() + 1e-6) {
        best = plane;
      }
    }
    if (best == null || best.support() < 3) {
      throw AnatomyProblem.NO_ARCH.with("no cusps and edges that lie in one plane");
    }
    return best.up();
  }

  private static List<Cue> cues(UpSearch seen, ArchBand band, ArchFrame frame) {
    List<Cue> cues = new ArrayList<>();
    add(cues, "sum of the normals", seen.normalSum, frame.z());
    add(cues, "away from the base", seen.awayFromFloor, frame.z());
    add(cues, "axis of the arch curve", band.curve() == null ? null : band.front(), frame.y());
    return cues;
  }

  private static void add(List<Cue> cues, String name, @Nullable Vec3 said, Vec3 settled) {
    if (said != null) {
      cues.add(new Cue(name, said, said.angleDegTo(settled)));
    }
  }
}
