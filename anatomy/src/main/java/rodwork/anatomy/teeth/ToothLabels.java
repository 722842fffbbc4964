package rodwork.anatomy.teeth;

import java.util.Arrays;
import java.util.SortedSet;
import java.util.TreeSet;
import rodwork.geometry.mesh.TriangleMesh;

/** The tooth of each triangle of one mesh: an FDI number, or {@link #GUM}. Immutable. */
public final class ToothLabels {
  public static final int GUM = 0;

  private final int[] labels;

  private ToothLabels(int[] labels) {
    this.labels = labels;
  }

  /**
   * The labels of a mesh.
   *
   * @param labels FDI number of each triangle in file order, 0 for gum
   * @throws IllegalArgumentException naming the triangle whose number is neither
   */
  public static ToothLabels of(int[] labels) {
    for (int t = 0; t < labels.length; t++) {
      if (labels[t] != GUM && !isFdi(labels[t])) {
        throw new IllegalArgumentException(
            "triangle " + t + " has the number " + labels[t] + ": neither FDI 11–48 nor 0 for gum");
      }
    }
    return new ToothLabels(labels.clone());
  }

  /** Whether this is the FDI number of a permanent tooth (ISO 3950). */
  public static boolean isFdi(int number) {
    return number / 10 >= 1 && number / 10 <= 4 && number % 10 >= 1 && number % 10 <= 8;
  }

  public int triangleCount() {
    return labels.length;
  }

  /** The FDI number of a triangle, or 0 for gum. */
  public int of(int triangle) {
    return labels[triangle];
  }

  /** The teeth that have at least one triangle, in rising order. */
  public SortedSet<Integer> numbers() {
    SortedSet<Integer> numbers = new TreeSet<>();
    for (int label : labels) {
      if (label != GUM) {
        numbers.add(label);
      }
    }
    return numbers;
  }

  /** The surface of one tooth, or of the gum for 0 [mm²]. */
  public double area(int number, TriangleMesh mesh) {
    if (mesh.triangleCount() != labels.length) {
      throw new IllegalArgumentException(
          "labels of " + labels.length + " triangles, mesh of " + mesh.triangleCount());
    }
    double sum = 0;
    for (int t = 0; t < labels.length; t++) {
      if (labels[t] == number) {
        sum += mesh.area(t);
      }
    }
    return sum;
  }

  public int[] copy() {
    return labels.clone();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ToothLabels that && Arrays.equals(labels, that.labels);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(labels);
  }

  @Override
  public String toString() {
    return "ToothLabels" + numbers();
  }
}
