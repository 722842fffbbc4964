package rodwork.geometry.mesh;

import java.util.Arrays;

/**
 * One chain of boundary edges, in order.
 *
 * <p>Edge {@code i} joins vertex {@code i} to vertex {@code i + 1}, in a closed loop the last one
 * to vertex 0. On a consistently turned mesh the surface lies on the left going along, seen from
 * its outer side.
 */
public final class BoundaryLoop {
  /** What a loop bounds. */
  public enum Kind {
    /** The outer end of an open shell. */
    RIM,
    /** A gap in the surface. */
    HOLE
  }

  private final int id;
  private final int component;
  private final Kind kind;
  private final boolean closed;
  private final double lengthMm;
  private final int[] edges;
  private final int[] vertices;

  BoundaryLoop(
      int id,
      int component,
      Kind kind,
      boolean closed,
      double lengthMm,
      int[] edges,
      int[] vertices) {
    this.id = id;
    this.component = component;
    this.kind = kind;
    this.closed = closed;
    this.lengthMm = lengthMm;
    this.edges = edges;
    this.vertices = vertices;
  }

  public int id() {
    return id;
  }

  /** The component (see {@link Components}) of its first edge's triangle. */
  public int component() {
    return component;
  }

  public Kind kind() {
    return kind;
  }

  /** False only where the chain ends at an edge with more than two triangles. */
  public boolean closed() {
    return closed;
  }

  /** Sum of its edges [mm]. */
  public double lengthMm() {
    return lengthMm;
  }

  public int edgeCount() {
    return edges.length;
  }

  public int edge(int i) {
    return edges[i];
  }

  /** As many as edges in a closed loop, else one more. */
  public int vertexCount() {
    return vertices.length;
  }

  public int vertex(int i) {
    return vertices[i];
  }

  @Override
  public String toString() {
    return kind + " of " + edges.length + " edges, " + lengthMm + " mm" + Arrays.toString(vertices);
  }
}
