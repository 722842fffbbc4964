package rodwork.geometry.intake;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.io.RawMesh;
import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.Components;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The mesh while it is being mended; mutable, because each step changes little of much.
 *
 * <p>Vertices keep the file's numbers to the end; those that fall out are simply named no more.
 */
final class Draft {
  /** Coordinates of all file vertices, in the file's unit; those of bad ones are 0. */
  final double[] xyz;

  /** The file vertex that stands for each file vertex; null while every one stands for itself. */
  int @Nullable [] standsFor;

  private int[] corners;

  /** The file triangle of each triangle, −1 for a new one; null while they are the same. */
  private int @Nullable [] source;

  // Found on demand, and forgotten at every change.
  private @Nullable MeshTopology topology;
  private @Nullable Components components;
  private @Nullable BoundaryLoops loops;

  Draft(RawMesh raw) {
    this.xyz = raw.copyOfCoordinates();
    this.corners = raw.copyOfCorners();
  }

  int vertexCount() {
    return xyz.length / 3;
  }

  int triangleCount() {
    return corners.length / 3;
  }

  int corner(int triangle, int k) {
    return corners[3 * triangle + k];
  }

  /** The file triangle of a triangle, −1 for a new one. */
  int source(int triangle) {
    return source == null ? triangle : source[triangle];
  }

  MeshTopology topology() {
    if (topology == null) {
      topology = MeshTopology.of(TriangleMesh.of(xyz, corners));
    }
    return topology;
  }

  Components components() {
    if (components == null) {
      components = Components.of(topology());
    }
    return components;
  }

  BoundaryLoops loops() {
    if (loops == null) {
      loops = BoundaryLoops.of(topology(), components());
    }
    return loops;
  }

  private void forget() {
    topology = null;
    components = null;
    loops = null;
  }

  /** Names the given vertex in place of each corner. */
  void replaceCorners(int[] by) {
    for (int i = 0; i < corners.length; i++) {
      corners[i] = by[corners[i]];
    }
    standsFor = by;
    forget();
  }

  /** Drops the triangles that fail; returns how many. */
  int keepOnly(IntPredicate keep) {
    int total = triangleCount();
    int kept = 0;
    while (kept < total && keep.test(kept)) {
      kept++;
    }
    if (kept == total) {
      return 0;
    }
    int[] nextCorners = Arrays.copyOf(corners, corners.length);
    int[] nextSource = new int[total];
    for (int t = 0; t < kept; t++) {
      nextSource[t] = source(t);
    }
    for (int t = kept + 1; t < total; t++) {
      if (keep.test(t)) {
        System.arraycopy(corners, 3 * t, nextCorners, 3 * kept, 3);
        nextSource[kept++] = source(t);
      }
    }
    corners = Arrays.copyOf(nextCorners, 3 * kept);
    source = Arrays.copyOf(nextSource, kept);
    forget();
    return total - kept;
  }

  /** Swaps two corners of the chosen triangles, so that they face the other way. */
  void turn(IntPredicate triangle) {
    int[] next = corners.clone(); // the topology's mesh holds the old ones
    for (int t = 0; t < triangleCount(); t++) {
      if (triangle.test(t)) {
        next[3 * t + 1] = corners[3 * t + 2];
        next[3 * t + 2] = corners[3 * t + 1];
      }
    }
    corners = next;
    forget();
  }

  /** Replaces all corners: as many triangles as before, each in its old place. */
  void setCorners(int[] next) {
    if (next.length != corners.length) {
      throw new IllegalArgumentException("the number of triangles must stay");
    }
    corners = next;
    forget();
  }

  /** Adds triangles that the file does not have. */
  void append(int[] more) {
    int old = triangleCount();
    int[] nextSource = new int[old + more.length / 3];
    for (int t = 0; t < nextSource.length; t++) {
      nextSource[t] = t < old ? source(t) : -1;
    }
    int[] next = Arrays.copyOf(corners, corners.length + more.length);
    System.arraycopy(more, 0, next, corners.length, more.length);
    corners = next;
    source = nextSource;
    forget();
  }

  int[] copyOfCorners() {
    return corners.clone();
  }

  /** The file triangle of each triangle, −1 for a new one; null while they are the same. */
  int @Nullable [] fileTriangles() {
    return source;
  }

  /** The vertices that a triangle names. */
  boolean[] named() {
    boolean[] named = new boolean[vertexCount()];
    for (int corner : corners) {
      named[corner] = true;
    }
    return named;
  }

  /** Longest side of the box about the triangles [file unit]. */
  double span() {
    double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    double[] high = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (int corner : corners) {
      for (int k = 0; k < 3; k++) {
        low[k] = Math.min(low[k], xyz[3 * corner + k]);
        high[k] = Math.max(high[k], xyz[3 * corner + k]);
      }
    }
    return Math.max(high[0] - low[0], Math.max(high[1] - low[1], high[2] - low[2]));
  }
}
