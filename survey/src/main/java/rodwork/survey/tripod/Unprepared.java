package rodwork.survey.tripod;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.List;
import java.util.function.IntPredicate;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.anatomy.tooth.HeightThird;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * What mouth preparation will leave as it is, so that a tripod mark set there outlives it: all of
 * the cast but the crowns of the teeth that will be prepared. Teeth, gum near them, ridges and the
 * palate come before folds and floors, which are trimmed and broken first and lie far from every
 * landmark.
 */
public final class Unprepared {
  /** Gum this near to a margin is firm [mm]. */
  private static final double GUM_MM = 7;

  /** A ridge is firm this near to its crest [mm]. */
  private static final double CREST_MM = 5;

  /** The palate reaches this far from the teeth [mm]. */
  private static final double PALATE_MM = 30;

  private Unprepared() {}

  /** All of the cast, where nothing is known of its teeth. */
  public static List<IntPredicate> unknown() {
    return List.of(t -> true);
  }

  /**
   * What stays, the safest first: the firm part of the cast without the crowns of these teeth;
   * where that is too little for three marks, all of it without them; then all without their rest
   * seats and proximal surfaces alone.
   *
   * @param prepared the teeth that will be prepared, likely abutments before there is a plan
   */
  public static List<IntPredicate> of(
      TriangleMesh mesh, Dentition dentition, Collection<ToothNumber> prepared) {
    List<Tooth> teeth =
        prepared.stream().flatMap(number -> dentition.tooth(number).stream()).toList();
    BitSet crowns = new BitSet();
    BitSet seats = new BitSet();
    for (Tooth tooth : teeth) {
      Arrays.stream(tooth.copyOfTriangles()).forEach(crowns::set);
      Arrays.stream(tooth.copyOfTriangles()).filter(t -> isCut(mesh, tooth, t)).forEach(seats::set);
    }
    return List.of(
        t -> !crowns.get(t) && isFirm(mesh, dentition, t), t -> !crowns.get(t), t -> !seats.get(t));
  }

  private static boolean isFirm(TriangleMesh mesh, Dentition dentition, int triangle) {
    if (dentition.labels().of(triangle) != ToothLabels.GUM) {
      return true;
    }
    Vec3 at = mesh.pointOn(triangle, 1 / 3.0, 1 / 3.0);
    Tooth nearest = null;
    double least = PALATE_MM;
    for (Tooth tooth : dentition.inOrder()) {
      double distance = tooth.axes().origin().distance(at);
      if (distance < least) {
        least = distance;
        nearest = tooth;
      }
      if (distance < GUM_MM + tooth.size().mesiodistalMm()
          && tooth.margin().distanceMm(at) < GUM_MM) {
        return true;
      }
    }
    if (nearest != null
        && nearest.number().jaw() == Jaw.UPPER
        && nearest.axes().toTooth(at).y() < 0) {
      return true;
    }
    return dentition.openSpaces().stream()
        .flatMap(space -> space.crest().stream())
        .anyMatch(crest -> crest.distance(at) < CREST_MM);
  }

  /** Marginal ridges and tops, proximal surfaces, and the cingulum of a front tooth. */
  private static boolean isCut(TriangleMesh mesh, Tooth tooth, int triangle) {
    Vec3 at = mesh.pointOn(triangle, 1 / 3.0, 1 / 3.0);
    return switch (tooth.surface(triangle)) {
      case MESIAL, DISTAL, OCCLUSAL -> true;
      case LINGUAL -> tooth.number().isAnterior() || top(tooth, at);
      case FACIAL -> top(tooth, at);
    };
  }

  private static boolean top(Tooth tooth, Vec3 at) {
    return tooth.place(at).height() == HeightThird.OCCLUSAL;
  }
}
