package rodwork.survey.plane;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.VertexNormals;
import rodwork.survey.Survey;

/**
 * The guiding plane that is there: the largest connected patch of a surface whose normals stand
 * within a tolerance of perpendicular to the path, converging to the occlusal side or, as long as
 * the undercut stays within its own limit, diverging.
 *
 * <p>The limits are cut through the triangles along the values at their corners, so that the patch
 * does not end at edges of the mesh.
 *
 * @param heightMm greatest height along the path [mm]: in any upright line, what lies in the patch
 * @param widthMm across the outward direction and the path [mm]
 * @param areaMm2 area [mm²]
 * @param angleDeg mean angle to the path by area [degrees]; positive: converging to the occlusal
 *     side
 * @param place the middle of its largest piece, scan frame [mm]
 */
public record PlanePatch(
    double heightMm, double widthMm, double areaMm2, double angleDeg, Vec3 place) {
  /** Upright lines are this far apart [mm]. */
  private static final double COLUMN_MM = 0.1;

  /** Normals of the scale that planes are judged by; made once for a cast. */
  public static VertexNormals normals(MeshTopology topology, PlaneRules rules) {
    return VertexNormals.of(topology, rules.normalScale().value());
  }

  /**
   * Finds the patch.
   *
   * @param normals as {@link #normals} makes them
   * @param surface triangles of one upright surface of a tooth
   * @param outward away from the tooth; its part across the path counts
   * @return none where nothing is parallel
   */
  public static Optional<PlanePatch> of(
      Survey survey, VertexNormals normals, int[] surface, Vec3 outward, PlaneRules rules) {
    MeshTopology topology = survey.surveyor().topology();
    TriangleMesh mesh = topology.mesh();
    Vec3 p = survey.axis();
    IntToDoubleFunction angle =
        v -> Math.toDegrees(Math.asin(Math.clamp(normals.normal(v).dot(p), -1, 1)));
    double most = rules.parallel().value();
    double divergence = rules.divergence().value();
    BitSet wanted = new BitSet();
    Arrays.stream(surface).forEach(wanted::set);
    List<@Nullable Piece> pieces = new ArrayList<>(surface.length);
    int[] slot = new int[mesh.triangleCount()];
    for (int t : surface) {
      List<Corner> corners = new ArrayList<>();
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(t, k);
        corners.add(new Corner(mesh.vertex(v), angle.applyAsDouble(v), survey.depth(v)));
      }
      List<Corner> inside = clip(corners, c -> most - c.angleDeg);
      inside = clip(inside, c -> most + c.angleDeg);
      inside = clip(inside, c -> divergence - c.depthMm);
      slot[t] = pieces.size();
      pieces.add(inside.size() < 3 ? null : Piece.of(inside));
    }
    List<Piece> largest = List.of();
    double area = 0;
    BitSet seen = new BitSet();
    for (int t : surface) {
      if (seen.get(t) || pieces.get(slot[t]) == null) {
        continue;
      }
      List<Piece> patch = connected(topology, t, wanted, seen, pieces, slot);
      double sum = patch.stream().mapToDouble(Piece::areaMm2).sum();
      if (sum > area) {
        area = sum;
        largest = patch;
      }
    }
    return largest.isEmpty() ? Optional.empty() : Optional.of(measure(largest, area, p, outward));
  }

  private record Corner(Vec3 point, double angleDeg, double depthMm) {
    Corner towards(Corner other, double share) {
      return new Corner(
          point.plus(other.point.minus(point).times(share)),
          angleDeg + share * (other.angleDeg - angleDeg),
          depthMm + share * (other.depthMm - depthMm));
    }
  }

  private record Piece(List<Corner> corners, double areaMm2, double angleDeg, Vec3 middle) {
    static Piece of(List<Corner> corners) {
      Vec3 sum = Vec3.ZERO;
      double angles = 0;
      Vec3 middle = Vec3.ZERO;
      for (Corner c : corners) {
        angles += c.angleDeg / corners.size();
        middle = middle.plus(c.point.times(1.0 / corners.size()));
      }
      for (int i = 1; i + 1 < corners.size(); i++) {
        Vec3 a = corners.get(i).point.minus(corners.getFirst().point);
        sum = sum.plus(a.cross(corners.get(i + 1).point.minus(corners.getFirst().point)));
      }
      return new Piece(corners, sum.length() / 2, angles, middle);
    }
  }

  /** What of a polygon lies where a value, linear along its sides, is not negative. */
  private static List<Corner> clip(
      List<Corner> polygon, java.util.function.ToDoubleFunction<Corner> value) {
    List<Corner> kept = new ArrayList<>();
    for (int i = 0; i < polygon.size(); i++) {
      Corner a = polygon.get(i);
      Corner b = polygon.get((i + 1) % polygon.size());
      double at = value.applyAsDouble(a);
      double to = value.applyAsDouble(b);
      if (at >= 0) {
        kept.add(a);
      }
      if ((at >= 0) != (to >= 0)) {
        kept.add(a.towards(b, at / (at - to)));
      }
    }
    return kept;
  }

  private static List<Piece> connected(
      MeshTopology topology,
      int start,
      BitSet wanted,
      BitSet seen,
      List<@Nullable Piece> pieces,
      int[] slot) {
    List<Piece> patch = new ArrayList<>();
    Deque<Integer> open = new ArrayDeque<>();
    open.add(start);
    seen.set(start);
    while (!open.isEmpty()) {
      int t = open.remove();
      Piece piece = pieces.get(slot[t]);
      if (piece == null) {
        continue;
      }
      patch.add(piece);
      for (int k = 0; k < 3; k++) {
        int next = topology.neighbour(t, k);
        if (next >= 0 && wanted.get(next) && !seen.get(next)) {
          seen.set(next);
          open.add(next);
        }
      }
    }
    return patch;
  }

  private static PlanePatch measure(List<Piece> patch, double area, Vec3 p, Vec3 outward) {
    Vec3 across = p.cross(outward.across(p).unit());
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double angles = 0;
    Piece middle = patch.getFirst();
    for (Piece piece : patch) {
      angles += piece.angleDeg * piece.areaMm2 / area;
      middle = piece.areaMm2 > middle.areaMm2 ? piece : middle;
      for (Corner c : piece.corners) {
        low = Math.min(low, c.point.dot(across));
        high = Math.max(high, c.point.dot(across));
      }
    }
    double height = 0;
    int columns = (int) Math.max(1, Math.ceil((high - low) / COLUMN_MM));
    for (int i = 0; i < columns; i++) {
      double at = low + (high - low) * (i + 0.5) / columns;
      double sum = 0;
      for (Piece piece : patch) {
        sum += chord(piece.corners, at, across, p);
      }
      height = Math.max(height, sum);
    }
    return new PlanePatch(height, high - low, area, angles, middle.middle);
  }

  /** Height along the path of what an upright line passes in a convex polygon. */
  private static double chord(List<Corner> polygon, double at, Vec3 across, Vec3 p) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < polygon.size(); i++) {
      Vec3 a = polygon.get(i).point;
      Vec3 b = polygon.get((i + 1) % polygon.size()).point;
      double from = a.dot(across) - at;
      double to = b.dot(across) - at;
      if ((from < 0) != (to < 0)) {
        double h = a.plus(b.minus(a).times(from / (from - to))).dot(p);
        least = Math.min(least, h);
        most = Math.max(most, h);
      }
    }
    return most > least ? most - least : 0;
  }
}
