package rodwork.app.operation;

import rodwork.anatomy.Arch;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.teeth.ToothFinding;
import rodwork.geometry.intake.FileMap;

/**
 * A cast with its teeth. Immutable.
 *
 * @param cast the cast
 * @param arch the same with the jaw that the teeth belong to
 * @param finding labels, and how sure they are
 * @param dentition what is measured on them
 */
public record CastTeeth(OpenedCast cast, Arch arch, ToothFinding finding, Dentition dentition) {

  /** The cast with the jaw that its teeth tell. */
  public OpenedCast jawed() {
    return cast.withJaw(arch.frame().jaw());
  }

  /** The FDI number of each triangle of the file, in its order; 0 for gum and for what is gone. */
  public int[] labelsOfFile() {
    FileMap files = cast.cast().files();
    int[] labels = new int[files.fileTriangleCount()];
    for (int t = 0; t < labels.length; t++) {
      int mesh = files.meshTriangle(t);
      labels[t] = mesh < 0 ? 0 : finding.labels().of(mesh);
    }
    return labels;
  }
}
