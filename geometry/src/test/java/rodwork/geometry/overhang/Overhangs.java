package rodwork.geometry.overhang;

import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/** Overhangs for tests, with the usual cap and gauge. */
final class Overhangs {
  static final OverhangLimits USUAL = new OverhangLimits(4, 0.5, 0.05);

  private Overhangs() {}

  static Overhang of(TriangleMesh mesh, Vec3 axis) {
    MeshTopology topology = MeshTopology.of(mesh);
    return new Overhang.Caster(topology, BoundaryLoops.of(topology)).along(axis, USUAL, Watch.NONE);
  }
}
