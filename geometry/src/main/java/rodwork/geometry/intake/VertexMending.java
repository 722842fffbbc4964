package rodwork.geometry.intake;

import java.util.List;
import rodwork.geometry.io.RawMesh;

/** Takes out vertices that are no points, and welds those in exactly the same place. */
final class VertexMending {
  /** Beyond this a coordinate is a mark for "nothing", not a place [file unit]. */
  static final double GREATEST_COORDINATE = 1e9;

  private VertexMending() {}

  static void dropBad(RawMesh raw, Draft draft, List<Remark> remarks) {
    double[] xyz = draft.xyz;
    boolean[] bad = null;
    int count = 0;
    for (int i = 0; i < xyz.length; i++) {
      if (!(Math.abs(xyz[i]) <= GREATEST_COORDINATE)) {
        if (bad == null) {
          bad = new boolean[xyz.length / 3];
        }
        if (!bad[i / 3]) {
          bad[i / 3] = true;
          count++;
        }
      }
    }
    if (bad == null) {
      return;
    }
    if (count == bad.length) {
      throw IntakeProblem.NOT_FINITE.refusal(raw.facts().name(), count, GREATEST_COORDINATE);
    }
    boolean[] out = bad;
    for (int v = 0; v < out.length; v++) {
      if (out[v]) {
        xyz[3 * v] = 0;
        xyz[3 * v + 1] = 0;
        xyz[3 * v + 2] = 0;
      }
    }
    int triangles =
        draft.keepOnly(
            t -> !out[draft.corner(t, 0)] && !out[draft.corner(t, 1)] && !out[draft.corner(t, 2)]);
    remarks.add(RemarkKind.VERTICES_NOT_FINITE.remark(count, count, triangles));
  }

  /** Makes the earliest of the vertices in one place stand for all; −0 is 0. */
  static void weld(Draft draft, List<Remark> remarks) {
    double[] xyz = draft.xyz;
    int vertices = draft.vertexCount();
    int size = Integer.highestOneBit(Math.max(16, vertices)) << 2;
    int[] slots = new int[size]; // vertex + 1; 0 is free
    boolean[] named = draft.named();
    int[] standsFor = new int[vertices];
    int welded = 0;
    for (int v = 0; v < vertices; v++) {
      standsFor[v] = v;
      if (!named[v]) {
        continue; // must not draw a used vertex to its place in the order
      }
      int slot = hash(xyz, v) & (size - 1);
      while (slots[slot] != 0 && !same(xyz, slots[slot] - 1, v)) {
        slot = (slot + 1) & (size - 1);
      }
      if (slots[slot] == 0) {
        slots[slot] = v + 1;
      } else {
        standsFor[v] = slots[slot] - 1;
        welded++;
      }
    }
    if (welded > 0) {
      draft.replaceCorners(standsFor);
      remarks.add(RemarkKind.VERTICES_WELDED.remark(welded, welded));
    }
  }

  private static boolean same(double[] xyz, int a, int b) {
    return xyz[3 * a] == xyz[3 * b]
        && xyz[3 * a + 1] == xyz[3 * b + 1]
        && xyz[3 * a + 2] == xyz[3 * b + 2];
  }

  private static int hash(double[] xyz, int v) {
    // + 0.0 makes −0 and 0 one
    long h = Double.doubleToRawLongBits(xyz[3 * v] + 0.0) * 0x9E3779B97F4A7C15L;
    h = (h ^ (h >>> 29) ^ Double.doubleToRawLongBits(xyz[3 * v + 1] + 0.0)) * 0xBF58476D1CE4E5B9L;
    h = (h ^ (h >>> 32) ^ Double.doubleToRawLongBits(xyz[3 * v + 2] + 0.0)) * 0x94D049BB133111EBL;
    return (int) (h >>> 33);
  }
}
