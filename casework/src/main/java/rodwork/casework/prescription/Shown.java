package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import rodwork.anatomy.chart.Notation;

/**
 * A content as the pages show it.
 *
 * @param content with teeth in the notation; not to be changed
 * @param notation of its teeth
 */
public record Shown(JsonNode content, Notation notation) {
  /** As the file has it, in FDI. */
  public static Shown fdi(Prescription prescription) {
    return new Shown(prescription.content(), Notation.FDI);
  }

  /**
   * In a notation that a person chose.
   *
   * @param content that the prescription was written from
   */
  public static Shown of(
      Prescription prescription, PrescriptionContent content, Notation notation) {
    if (notation == Notation.FDI) {
      return fdi(prescription);
    }
    ObjectNode json = content.json(notation);
    // Where nothing was changed the revision of before holds, with its date.
    json.set("date", prescription.content().path("date"));
    return new Shown(json, notation);
  }

  /** What the pages call the numbers. */
  String words() {
    return switch (notation) {
      case FDI -> "FDI";
      case UNIVERSAL -> "Universal, 1 to 32";
      case PALMER -> "Palmer";
    };
  }
}
