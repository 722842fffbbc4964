package rodwork.app;

import java.nio.file.Path;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Bodies;

/**
 * A sphere as a scan file: along any axis its undercut below the equator is R − ρ, ρ the distance
 * from the axis, its survey line is the equator, and a gauge of size g reaches the circle ρ = R − g
 * below it (closed forms).
 */
public final class SphereCast {
  public static final double RADIUS_MM = 22;

  /** How far the triangles may lie inside the sphere: edge² / 8 R, with 20 % longer edges. */
  public static final double SAG_MM = 0.02;

  public static final TriangleMesh MESH = Bodies.sphere(RADIUS_MM, 1.2);

  private SphereCast() {}

  /** Writes it as binary PLY. */
  public static Path in(Path folder) {
    Path file = folder.resolve("sphere.ply");
    MeshFiles.write(file, MESH, Watch.NONE);
    return file;
  }
}
