package rodwork.anatomy;

import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * A cast that has been understood as far as a survey needs it: its mesh, which part of it is
 * anatomy, and how it lies.
 *
 * @param topology the mesh with its neighbours, in the scan frame [mm]
 * @param surface which triangles are anatomy and which plaster base
 * @param frame the arch frame in the scan frame
 */
public record Arch(MeshTopology topology, AnatomicSurface surface, ArchFrame frame) {

  public Arch {
    if (surface.triangleCount() != topology.mesh().triangleCount()) {
      throw new IllegalArgumentException(
          "the surface is of another mesh: "
              + surface.triangleCount()
              + " triangles, the mesh has "
              + topology.mesh().triangleCount());
    }
  }

  /**
   * Finds base and frame of a mesh.
   *
   * @throws rodwork.geometry.Refusal if the frame is not sure; see {@link AnatomyProblem}
   */
  public static Arch of(MeshTopology topology, Jaw jaw, FrameHints hints) {
    AnatomicSurface surface = AnatomicSurface.of(topology);
    return new Arch(topology, surface, ArchFrameFinder.find(topology, surface, jaw, hints).frame());
  }

  public TriangleMesh mesh() {
    return topology.mesh();
  }

  public Arch withFrame(ArchFrame other) {
    return new Arch(topology, surface, other);
  }

  public Arch withSurface(AnatomicSurface other) {
    return new Arch(topology, other, frame);
  }
}
