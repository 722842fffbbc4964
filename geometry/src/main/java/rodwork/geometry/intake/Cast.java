package rodwork.geometry.intake;

import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * A scan that can be surveyed: a mesh in mm, mended as far as it could be, in the scan frame of its
 * file.
 *
 * @param topology who is whose neighbour in its mesh
 * @param loops its boundary loops
 * @param files which vertices and triangles of the file it is made of
 * @param report what was found and mended
 */
public record Cast(MeshTopology topology, BoundaryLoops loops, FileMap files, IntakeReport report) {
  public TriangleMesh mesh() {
    return topology.mesh();
  }
}
