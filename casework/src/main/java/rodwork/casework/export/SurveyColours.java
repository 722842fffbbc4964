package rodwork.casework.export;

import java.util.Arrays;
import java.util.List;
import rodwork.geometry.Vec3;
import rodwork.geometry.io.VertexProperty;
import rodwork.geometry.mesh.SurfacePoint;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;

/** Survey lines and gauge marks as colours of the nearest vertices, for viewers that show those. */
final class SurveyColours {
  private static final int STONE = 0xD8D2C4;
  private static final double STEP_MM = 0.1;

  private SurveyColours() {}

  /** {@code red}, {@code green}, {@code blue} of each vertex. */
  static List<VertexProperty> of(TriangleMesh mesh, List<NamedCurve> curves) {
    int[] colours = new int[mesh.vertexCount()];
    Arrays.fill(colours, STONE);
    TriangleTree tree = TriangleTree.of(mesh);
    for (NamedCurve curve : curves) {
      List<Vec3> points = curve.ring();
      for (int i = 1; i < points.size(); i++) {
        Vec3 from = points.get(i - 1);
        Vec3 step = points.get(i).minus(from);
        int pieces = Math.max(1, (int) Math.ceil(step.length() / STEP_MM));
        for (int k = 0; k <= pieces; k++) {
          Vec3 at = from.plus(step.times((double) k / pieces));
          tree.closest(at)
              .ifPresent(p -> colours[nearestCorner(mesh, p, at)] = curve.kind().colour());
        }
      }
    }
    return List.of(
        channel("red", colours, 16), channel("green", colours, 8), channel("blue", colours, 0));
  }

  private static int nearestCorner(TriangleMesh mesh, SurfacePoint on, Vec3 at) {
    int best = mesh.corner(on.triangle(), 0);
    for (int k = 1; k < 3; k++) {
      int other = mesh.corner(on.triangle(), k);
      if (mesh.vertex(other).distance(at) < mesh.vertex(best).distance(at)) {
        best = other;
      }
    }
    return best;
  }

  private static VertexProperty channel(String name, int[] colours, int shift) {
    byte[] values = new byte[colours.length];
    for (int v = 0; v < values.length; v++) {
      values[v] = (byte) (colours[v] >> shift);
    }
    return new VertexProperty.OfByte(name, values);
  }
}
