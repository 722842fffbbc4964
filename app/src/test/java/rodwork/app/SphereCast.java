package rodwork.app;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
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

  /** A level sheet over it, as a scan in text (OFF). */
  public static byte[] sheet(double heightMm) {
    StringBuilder off = new StringBuilder("OFF\n4 2 0\n");
    for (String corner : List.of("-60 -60", "60 -60", "-60 60", "60 60")) {
      off.append(corner).append(' ').append(heightMm).append('\n');
    }
    return off.append("3 0 1 2\n3 1 3 2\n").toString().getBytes(StandardCharsets.UTF_8);
  }

  /** Writes it as binary PLY. */
  public static Path in(Path folder) {
    Path file = folder.resolve("sphere.ply");
    MeshFiles.write(file, MESH, Watch.NONE);
    return file;
  }
}
