package rodwork.anatomy.space;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.PatchTree;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Follows the crest of a ridge: at each station along the way the highest place of the gum across
 * it, smoothed along the way and laid back on the surface.
 */
final class CrestTracer {
  private static final double STEP_MM = 0.75;

  /** The crest is sought this far to both sides of the way between two teeth [mm]. */
  private static final double HALF_WIDTH_MM = 6;

  /** How much height a place off the way must make up for [mm per mm²]: ridges are rounded. */
  private static final double OFF_WAY_PER_MM2 = 0.02;

  /** Deviation of the smoothing along the crest [mm]. */
  private static final double SMOOTH_MM = 1.5;

  /** A free end is followed no farther than this [mm]. */
  private static final double MOST_FREE_MM = 45;

  /** Where the crest falls by this over two millimetres, the ridge has come to its end [mm]. */
  private static final double FALL_MM = 2;

  private final Arch arch;
  private final ArchFrame frame;
  private final ToothLabels labels;

  CrestTracer(Arch arch, ToothLabels labels) {
    this.arch = arch;
    this.frame = arch.frame();
    this.labels = labels;
  }

  /** The crest between two crowns, given the ends of the shortest way between them. */
  List<Vec3> between(Vec3 from, Vec3 to) {
    Vec3 way = to.minus(from).across(frame.z());
    double length = way.length();
    if (length < STEP_MM) {
      return List.of();
    }
    Vec3 along = way.times(1 / length);
    Gum gum = gum(from.plus(to).times(0.5), length / 2 + HALF_WIDTH_MM);
    int stations = Math.max(2, (int) Math.round(length / STEP_MM));
    List<Vec3> tops = new ArrayList<>();
    for (int i = 0; i <= stations; i++) {
      Vec3 at = from.plus(way.times((double) i / stations));
      Vec3 top = gum.top(at, along);
      if (top != null) {
        tops.add(top);
      }
    }
    return tops.size() < 2 ? List.of() : gum.laid(smooth(tops));
  }

  /** The crest behind the last tooth of a side, from that tooth backwards. */
  List<Vec3> behind(Tooth last) {
    Vec3 back = last.axes().outOf(Surface.DISTAL).across(frame.z()).unit();
    Vec3 start =
        last.axes().toScan(new Vec3(-last.size().mesiodistalMm() / 2, 0, 0)).plus(back.times(0.5));
    Gum gum = gum(start.plus(back.times(MOST_FREE_MM / 2)), MOST_FREE_MM / 2 + HALF_WIDTH_MM);
    List<Vec3> tops = new ArrayList<>();
    Vec3 at = start;
    for (double way = 0; way < MOST_FREE_MM; way += STEP_MM) {
      Vec3 top = gum.top(at, back);
      if (top == null || ended(tops, top)) {
        break;
      }
      tops.add(top);
      // Keep to the ridge: half of the way off is made good at each step.
      Vec3 off = top.minus(at).across(frame.z());
      at = at.plus(back.times(STEP_MM)).plus(off.minus(back.times(off.dot(back))).times(0.5));
    }
    return tops.size() < 3 ? List.of() : gum.laid(smooth(tops));
  }

  private boolean ended(List<Vec3> tops, Vec3 next) {
    int back = (int) Math.round(2 / STEP_MM);
    return tops.size() > 3 * back
        && tops.get(tops.size() - back).minus(next).dot(frame.z()) > FALL_MM;
  }

  private List<Vec3> smooth(List<Vec3> points) {
    int reach = (int) Math.ceil(2.5 * SMOOTH_MM / STEP_MM);
    List<Vec3> smooth = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      // The window shrinks towards the ends, so that the ends stay.
      int most = Math.min(reach, Math.min(i, points.size() - 1 - i));
      Vec3 sum = Vec3.ZERO;
      double weights = 0;
      for (int j = -most; j <= most; j++) {
        double w = Math.exp(-0.5 * j * j * STEP_MM * STEP_MM / (SMOOTH_MM * SMOOTH_MM));
        sum = sum.plus(points.get(i + j).times(w));
        weights += w;
      }
      smooth.add(sum.times(1 / weights));
    }
    return smooth;
  }

  private Gum gum(Vec3 middle, double reach) {
    TriangleMesh mesh = arch.mesh();
    int[] found = new int[mesh.triangleCount()];
    int count = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (labels.of(t) == ToothLabels.GUM && !arch.surface().isBase(t)) {
        int v = mesh.corner(t, 0);
        double dx = mesh.x(v) - middle.x();
        double dy = mesh.y(v) - middle.y();
        double dz = mesh.z(v) - middle.z();
        double up = dx * frame.z().x() + dy * frame.z().y() + dz * frame.z().z();
        if (dx * dx + dy * dy + dz * dz - up * up < reach * reach) {
          found[count++] = t;
        }
      }
    }
    return new Gum(PatchTree.of(mesh, Arrays.copyOf(found, count)), middle);
  }

  /** The gum about a space, looked at from above. */
  private final class Gum {
    private static final double ABOVE_MM = 60;
    private static final double ACROSS_STEP_MM = 0.4;

    private final PatchTree tree;
    private final double top;

    Gum(PatchTree tree, Vec3 middle) {
      this.tree = tree;
      this.top = middle.dot(frame.z()) + ABOVE_MM;
    }

    /** The highest place of the section across the way; null where the scan shows no gum there. */
    @Nullable Vec3 top(Vec3 at, Vec3 along) {
      Vec3 across = frame.z().cross(along).unit();
      Vec3 best = null;
      double most = Double.NEGATIVE_INFINITY;
      for (double off = -HALF_WIDTH_MM; off <= HALF_WIDTH_MM; off += ACROSS_STEP_MM) {
        Vec3 above = at.plus(across.times(off));
        above = above.plus(frame.z().times(top - above.dot(frame.z())));
        Vec3 hit =
            tree.firstHit(above, frame.z().times(-1), 3 * ABOVE_MM)
                .map(h -> h.point())
                .orElse(null);
        if (hit != null) {
          double height = hit.dot(frame.z()) - OFF_WAY_PER_MM2 * off * off;
          if (height > most) {
            most = height;
            best = hit;
          }
        }
      }
      return best;
    }

    List<Vec3> laid(List<Vec3> line) {
      return line.stream()
          .map(p -> tree.closest(p, HALF_WIDTH_MM).map(hit -> hit.point()).orElse(p))
          .toList();
    }
  }
}
