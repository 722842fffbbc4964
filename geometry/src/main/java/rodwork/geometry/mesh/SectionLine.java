package rodwork.geometry.mesh;

import java.util.Arrays;
import rodwork.geometry.Vec3;

/**
 * One connected piece of a section, a polyline on the surface.
 *
 * <p>Segment {@code i} joins point {@code i} to point {@code i + 1}, in a closed line the last one
 * to point 0, and lies on one triangle.
 */
public final class SectionLine {
  private final double[] xyz;
  private final int[] triangles;
  private final boolean closed;

  SectionLine(double[] xyz, int[] triangles, boolean closed) {
    this.xyz = xyz;
    this.triangles = triangles;
    this.closed = closed;
  }

  public boolean closed() {
    return closed;
  }

  public int pointCount() {
    return xyz.length / 3;
  }

  public Vec3 point(int i) {
    return new Vec3(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
  }

  /** As many as points in a closed line, else one fewer. */
  public int segmentCount() {
    return triangles.length;
  }

  /** The triangle that a segment lies on. */
  public int triangle(int segment) {
    return triangles[segment];
  }

  /** Sum of its segments [mm]. */
  public double lengthMm() {
    double length = 0;
    for (int i = 0; i < triangles.length; i++) {
      length += point(i).distance(point((i + 1) % pointCount()));
    }
    return length;
  }

  @Override
  public String toString() {
    return (closed ? "closed" : "open") + " line " + Arrays.toString(xyz);
  }
}
