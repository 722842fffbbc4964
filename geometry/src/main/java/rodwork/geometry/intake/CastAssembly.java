package rodwork.geometry.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;
import rodwork.geometry.io.RawMesh;
import rodwork.geometry.mesh.BoundaryLoop;
import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.Components;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/** Makes the cast of a mended draft: numbers its vertices anew where needed, scales, measures. */
final class CastAssembly {
  /** Longer edges cannot place a clasp terminal in 0.25 mm of undercut [mm]. */
  private static final double COARSE_EDGE_MM = 0.3;

  /** Rounding beyond this would be seen in a depth [mm]. */
  private static final double COARSE_STEP_MM = 0.005;

  private final RawMesh raw;
  private final Draft draft;
  private final UnitFinding unit;
  private final List<Remark> remarks;

  CastAssembly(RawMesh raw, Draft draft, UnitFinding unit, List<Remark> remarks) {
    this.raw = raw;
    this.draft = draft;
    this.unit = unit;
    this.remarks = new ArrayList<>(remarks);
  }

  Cast cast() {
    boolean[] named = draft.named();
    int used = 0;
    for (boolean n : named) {
      used += n ? 1 : 0;
    }
    int[] meshVertex = used == named.length ? null : meshVertices(named);
    MeshTopology topology = topology(meshVertex, used);
    boolean asDraft = topology.equals(draft.topology());
    Components components = asDraft ? draft.components() : Components.of(topology);
    BoundaryLoops loops = asDraft ? draft.loops() : BoundaryLoops.of(topology, components);
    FileMap files =
        FileMap.of(raw.vertexCount(), raw.triangleCount(), meshVertex, used, draft.fileTriangles());
    remarkUnused();
    remarkHoles(loops);
    remarkOverused(topology);
    remarkRounding();
    EdgeLengths edges = TeethSide.edgeLengths(topology, loops);
    if (edges.medianMm() > COARSE_EDGE_MM) {
      remarks.add(RemarkKind.TOO_COARSE.remark(edges.edges(), edges.medianMm(), COARSE_EDGE_MM));
    }
    return new Cast(topology, loops, files, report(topology.mesh(), components, loops, edges));
  }

  /** The new number of each file vertex, −1 where it falls out. */
  private int[] meshVertices(boolean[] named) {
    int[] numbers = new int[named.length];
    int next = 0;
    for (int v = 0; v < named.length; v++) {
      numbers[v] = named[v] ? next++ : -1;
    }
    int[] standsFor = draft.standsFor;
    if (standsFor != null) {
      for (int v = 0; v < named.length; v++) {
        numbers[v] = numbers[standsFor[v]]; // always an earlier or the same one
      }
    }
    return numbers;
  }

  private MeshTopology topology(int @Nullable [] meshVertex, int used) {
    double factor = unit.unit().millimetres();
    if (meshVertex == null && factor == 1) {
      return draft.topology();
    }
    double[] xyz = new double[3 * used];
    int[] corners = draft.copyOfCorners();
    if (meshVertex != null) {
      for (int i = 0; i < corners.length; i++) {
        corners[i] = meshVertex[corners[i]];
      }
    }
    for (int v = 0; v < draft.vertexCount(); v++) {
      boolean itself = draft.standsFor == null || draft.standsFor[v] == v;
      int to = meshVertex == null ? v : meshVertex[v];
      if (to >= 0 && itself) {
        xyz[3 * to] = factor * draft.xyz[3 * v];
        xyz[3 * to + 1] = factor * draft.xyz[3 * v + 1];
        xyz[3 * to + 2] = factor * draft.xyz[3 * v + 2];
      }
    }
    return MeshTopology.of(TriangleMesh.of(xyz, corners));
  }

  private void remarkUnused() {
    boolean[] named = new boolean[raw.vertexCount()];
    for (int t = 0; t < raw.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        named[raw.corner(t, k)] = true;
      }
    }
    int unused = 0;
    for (boolean n : named) {
      unused += n ? 0 : 1;
    }
    if (unused > 0) {
      remarks.add(RemarkKind.VERTICES_UNUSED.remark(unused, unused));
    }
  }

  private void remarkHoles(BoundaryLoops loops) {
    List<BoundaryLoop> holes = loops.holes();
    if (!holes.isEmpty()) {
      double longest = holes.stream().mapToDouble(BoundaryLoop::lengthMm).max().orElse(0);
      remarks.add(RemarkKind.HOLES_KEPT.remark(holes.size(), holes.size(), longest));
    }
  }

  private void remarkOverused(MeshTopology topology) {
    int overused = 0;
    for (int e = 0; e < topology.edgeCount(); e++) {
      overused += topology.isNonManifold(e) ? 1 : 0;
    }
    if (overused > 0) {
      remarks.add(RemarkKind.EDGES_OVERUSED.remark(overused, overused));
    }
  }

  /** Tells when 32-bit numbers so far from the origin are too far apart. */
  private void remarkRounding() {
    double farthest = 0;
    for (double c : draft.xyz) {
      farthest = Math.max(farthest, Math.abs(c));
    }
    double mm = unit.unit().millimetres();
    double step = mm * Math.ulp((float) farthest);
    if (step < COARSE_STEP_MM) {
      return;
    }
    for (double c : draft.xyz) {
      if (c != (float) c) {
        return; // the file has finer numbers
      }
    }
    remarks.add(RemarkKind.COORDINATES_ROUNDED.remark(1, farthest * mm, step));
  }

  private IntakeReport report(
      TriangleMesh mesh, Components components, BoundaryLoops loops, EdgeLengths edges) {
    Vec3 low = mesh.vertex(0);
    Vec3 high = low;
    for (int v = 1; v < mesh.vertexCount(); v++) {
      Vec3 p = mesh.vertex(v);
      low = new Vec3(Math.min(low.x(), p.x()), Math.min(low.y(), p.y()), Math.min(low.z(), p.z()));
      high =
          new Vec3(Math.max(high.x(), p.x()), Math.max(high.y(), p.y()), Math.max(high.z(), p.z()));
    }
    List<IntakeReport.Loop> facts =
        loops.loops().stream()
            .map(l -> new IntakeReport.Loop(l.kind(), l.edgeCount(), l.lengthMm(), middle(mesh, l)))
            .sorted(Comparator.comparingDouble(IntakeReport.Loop::lengthMm).reversed())
            .toList();
    return new IntakeReport(
        raw.facts().name(),
        raw.facts().format().label(),
        new IntakeReport.Counts(raw.vertexCount(), raw.triangleCount()),
        new IntakeReport.Counts(mesh.vertexCount(), mesh.triangleCount()),
        low,
        high,
        unit,
        edges,
        surface(mesh, low, components, loops),
        facts,
        remarks);
  }

  private static IntakeReport.Surface surface(
      TriangleMesh mesh, Vec3 near, Components components, BoundaryLoops loops) {
    double area = 0;
    double six = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 normal = mesh.doubleAreaNormal(t);
      area += normal.length() / 2;
      six += mesh.vertex(mesh.corner(t, 0)).minus(near).dot(normal);
    }
    boolean watertight = loops.count() == 0;
    return new IntakeReport.Surface(
        watertight, components.count(), area, watertight ? six / 6 : null);
  }

  private static Vec3 middle(TriangleMesh mesh, BoundaryLoop loop) {
    Vec3 sum = Vec3.ZERO;
    for (int i = 0; i < loop.vertexCount(); i++) {
      sum = sum.plus(mesh.vertex(loop.vertex(i)));
    }
    return sum.times(1.0 / loop.vertexCount());
  }
}
