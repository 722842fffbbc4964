package rodwork.app.report;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.AppRefusal;

/** The tooth of each triangle of a scan file, as {@code rodwork teeth --labels} writes it. */
public final class LabelsFile {
  private LabelsFile() {}

  /**
   * Reads labels.
   *
   * @return FDI number or 0 of each triangle, in the order of the scan file
   * @throws rodwork.geometry.Refusal if the file cannot be read or holds anything else
   */
  public static int[] read(Path file) {
    String name = String.valueOf(file.getFileName());
    JsonNode json = JsonTriples.file(file);
    if (!json.isArray()) {
      throw AppRefusal.JSON_WRONG.with(name, "it is no array of tooth numbers");
    }
    int[] labels = new int[json.size()];
    for (int i = 0; i < labels.length; i++) {
      JsonNode label = json.get(i);
      if (!label.isInt() || (label.asInt() != 0 && !ToothNumber.exists(label.asInt()))) {
        throw AppRefusal.JSON_WRONG.with(
            name, "entry " + (i + 1) + " is " + label + ", neither an FDI number nor 0 for gum");
      }
      labels[i] = label.asInt();
    }
    return labels;
  }
}
