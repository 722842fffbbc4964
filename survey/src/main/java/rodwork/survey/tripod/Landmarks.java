package rodwork.survey.tripod;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.tooth.GingivalMargin;
import rodwork.anatomy.tooth.Neighbour;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/** Finds the landmarks of a cast whose teeth are known. */
public final class Landmarks {
  /** A cusp tip is the highest point along its tooth's axis within this of itself [mm]. */
  private static final double TIP_MM = 1.0;

  private final TriangleMesh mesh;

  private Landmarks(TriangleMesh mesh) {
    this.mesh = mesh;
  }

  /** The landmarks of all teeth on a scan, from the patient's right to left. */
  public static List<Landmark> of(TriangleMesh mesh, Dentition dentition) {
    Landmarks finder = new Landmarks(mesh);
    List<Landmark> found = new ArrayList<>();
    for (Tooth tooth : dentition.inOrder()) {
      if (tooth.number().isIncisor()) {
        found.add(finder.angle(tooth, Landmark.Kind.MESIOINCISAL_ANGLE, 1));
        found.add(finder.angle(tooth, Landmark.Kind.DISTOINCISAL_ANGLE, -1));
      } else {
        finder.tips(tooth, found);
      }
      papillae(tooth, found);
    }
    return found;
  }

  private void tips(Tooth tooth, List<Landmark> found) {
    for (Vec3 tip : tooth.cuspTips(tooth.axes().axis())) {
      if (isTip(tooth, tip)) {
        Vec3 q = tooth.axes().toTooth(tip);
        found.add(new Landmark(cusp(tooth, q), tooth.number(), Optional.empty(), tip));
      }
    }
  }

  private static Landmark.Kind cusp(Tooth tooth, Vec3 q) {
    if (tooth.number().isMolar()) {
      return q.y() >= 0
          ? q.x() >= 0 ? Landmark.Kind.MESIOFACIAL_CUSP : Landmark.Kind.DISTOFACIAL_CUSP
          : q.x() >= 0 ? Landmark.Kind.MESIOLINGUAL_CUSP : Landmark.Kind.DISTOLINGUAL_CUSP;
    }
    return !tooth.number().isPremolar()
        ? Landmark.Kind.CUSP
        : q.y() >= 0 ? Landmark.Kind.FACIAL_CUSP : Landmark.Kind.LINGUAL_CUSP;
  }

  /** The highest point of a quarter of a crown may be the flank of the next cusp. */
  private boolean isTip(Tooth tooth, Vec3 tip) {
    Vec3 up = tooth.axes().axis();
    for (int t : tooth.copyOfTriangles()) {
      for (int k = 0; k < 3; k++) {
        Vec3 way = mesh.vertex(mesh.corner(t, k)).minus(tip);
        if (way.dot(up) > 0 && way.across(up).length() < TIP_MM) {
          return false;
        }
      }
    }
    return true;
  }

  /** Where the edge of an incisor turns into its side: what lies farthest out and up alike. */
  private Landmark angle(Tooth tooth, Landmark.Kind kind, int side) {
    Vec3 towards = tooth.axes().mesial().times(side).plus(tooth.axes().axis());
    Vec3 corner = tooth.centroid();
    for (int t : tooth.copyOfTriangles()) {
      for (int k = 0; k < 3; k++) {
        Vec3 p = mesh.vertex(mesh.corner(t, k));
        corner = p.dot(towards) > corner.dot(towards) ? p : corner;
      }
    }
    return new Landmark(kind, tooth.number(), Optional.empty(), corner);
  }

  /** Where the margin goes under a contact, there the papilla ends; told once for two teeth. */
  private static void papillae(Tooth tooth, List<Landmark> found) {
    GingivalMargin margin = tooth.margin();
    int n = margin.points().size();
    for (int i = 0; i < n; i++) {
      boolean seen = margin.kinds().get(i) == GingivalMargin.Kind.SEEN;
      int next = (i + 1) % n;
      boolean nextSeen = margin.kinds().get(next) == GingivalMargin.Kind.SEEN;
      boolean under = margin.kinds().get(seen ? next : i) == GingivalMargin.Kind.UNDER_CONTACT;
      if (seen == nextSeen || !under) {
        continue;
      }
      Vec3 tip = margin.points().get(seen ? i : next);
      Vec3 q = tooth.axes().toTooth(tip);
      Optional<Neighbour> other = q.x() >= 0 ? tooth.mesialNeighbour() : tooth.distalNeighbour();
      Landmark.Kind kind =
          q.y() >= 0 ? Landmark.Kind.FACIAL_PAPILLA : Landmark.Kind.LINGUAL_PAPILLA;
      if (other.filter(Neighbour::touches).isEmpty()) {
        continue;
      }
      boolean told =
          found.stream()
              .anyMatch(
                  known ->
                      known.kind() == kind
                          && known.tooth().equals(other.get().number())
                          && known.other().filter(tooth.number()::equals).isPresent());
      if (!told) {
        found.add(new Landmark(kind, tooth.number(), Optional.of(other.get().number()), tip));
      }
    }
  }
}
