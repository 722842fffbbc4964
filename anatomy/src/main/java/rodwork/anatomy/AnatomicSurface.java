package rodwork.anatomy;

import java.util.BitSet;
import java.util.List;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * Which triangles of a cast are anatomy, and which are its plaster base: the large planar faces and
 * trimmed walls below the vestibule, that are left out of every figure.
 *
 * <p>Found by {@link #of}, corrected by {@link #withBase} and {@link #withAnatomy}. An immutable
 * value: one bit a triangle, in the order of the mesh.
 */
public final class AnatomicSurface {
  private final BitSet base;
  private final int triangles;
  private final List<BasePlane> planes;
  private final double baseAreaMm2;
  private final double anatomicAreaMm2;

  private AnatomicSurface(TriangleMesh mesh, BitSet base, List<BasePlane> planes) {
    this.base = base;
    this.triangles = mesh.triangleCount();
    this.planes = List.copyOf(planes);
    double baseArea = 0;
    double anatomicArea = 0;
    for (int t = 0; t < triangles; t++) {
      if (base.get(t)) {
        baseArea += mesh.area(t);
      } else {
        anatomicArea += mesh.area(t);
      }
    }
    this.baseAreaMm2 = baseArea;
    this.anatomicAreaMm2 = anatomicArea;
  }

  /**
   * Finds the plaster base of a cast. A scan without one, such as an open shell from the mouth, is
   * anatomic all over.
   *
   * <p>Guaranteed: the answer does not depend on the pose, and the base never takes everything. Not
   * guaranteed: the border between wall and vestibule is found within about one millimetre, and
   * within a triangle; ledges on top of a wall count as anatomy.
   */
  public static AnatomicSurface of(MeshTopology topology) {
    BaseFinder finder = new BaseFinder(topology);
    return new AnatomicSurface(topology.mesh(), finder.base(), finder.planes());
  }

  /** The whole surface as anatomy, whatever it looks like. */
  public static AnatomicSurface whole(TriangleMesh mesh) {
    return new AnatomicSurface(mesh, new BitSet(), List.of());
  }

  /**
   * The base as a person says it is: these triangles and no others.
   *
   * @param baseTriangles one bit a triangle, set where it is base
   */
  public static AnatomicSurface given(TriangleMesh mesh, BitSet baseTriangles) {
    if (baseTriangles.length() > mesh.triangleCount()) {
      throw new IllegalArgumentException(
          "triangle "
              + (baseTriangles.length() - 1)
              + " is named as base, the mesh has "
              + mesh.triangleCount());
    }
    return new AnatomicSurface(mesh, (BitSet) baseTriangles.clone(), List.of());
  }

  /** A correction: these triangles are base too. The planes found are kept. */
  public AnatomicSurface withBase(TriangleMesh mesh, BitSet moreTriangles) {
    BitSet changed = (BitSet) base.clone();
    changed.or(moreTriangles);
    return corrected(mesh, changed);
  }

  /** A correction: these triangles are anatomy after all. The planes found are kept. */
  public AnatomicSurface withAnatomy(TriangleMesh mesh, BitSet moreTriangles) {
    BitSet changed = (BitSet) base.clone();
    changed.andNot(moreTriangles);
    return corrected(mesh, changed);
  }

  private AnatomicSurface corrected(TriangleMesh mesh, BitSet changed) {
    if (mesh.triangleCount() != triangles || changed.length() > triangles) {
      throw new IllegalArgumentException(
          "the correction is for another mesh: this surface has " + triangles + " triangles");
    }
    return new AnatomicSurface(mesh, changed, planes);
  }

  /** Whether a triangle belongs to the plaster base. */
  public boolean isBase(int triangle) {
    return base.get(triangle);
  }

  public int triangleCount() {
    return triangles;
  }

  public int baseTriangleCount() {
    return base.cardinality();
  }

  /** A copy, one bit a triangle, set where it is base. */
  public BitSet copyOfBase() {
    return (BitSet) base.clone();
  }

  public boolean hasBase() {
    return !base.isEmpty();
  }

  /** The large planar faces found, largest first; empty where a person gave the base. */
  public List<BasePlane> planes() {
    return planes;
  }

  /** Area of the base [mm²]. */
  public double baseAreaMm2() {
    return baseAreaMm2;
  }

  /** Area of the anatomy [mm²]. */
  public double anatomicAreaMm2() {
    return anatomicAreaMm2;
  }

  /** Share of the base in the whole area [0 to 1]. */
  public double baseShare() {
    double all = baseAreaMm2 + anatomicAreaMm2;
    return all > 0 ? baseAreaMm2 / all : 0;
  }
}
