package rodwork.casework.prescription;

import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * Sizes that are asked of the laboratory and follow from no measurement; sources stand in the
 * rulebook.
 *
 * @param barRelief relief under a lingual bar
 * @param palatalTorusRelief relief where an upper connector passes over a torus
 * @param mandibularTorusRelief relief where a lower connector passes over a torus
 * @param meshRelief room under a base connector between teeth
 * @param freeEndRelief room under the base connector of a free end
 * @param crossingRelief relief where metal crosses the gingival margin
 * @param bead depth of the bead along an upper connector
 * @param barThickness of a lingual or sublingual bar
 * @param plateThickness of a plate, and of a strap as wide as a thin one has to be
 * @param frameThickness of narrower straps, frames and U-shaped connectors
 * @param minorThickness of a minor connector
 * @param restThickness of a rest at the marginal ridge
 * @param tissueStop side of a tissue stop
 */
public record LaboratoryRules(
    Threshold barRelief,
    Threshold palatalTorusRelief,
    Threshold mandibularTorusRelief,
    Threshold meshRelief,
    Threshold freeEndRelief,
    Threshold crossingRelief,
    Threshold bead,
    Threshold barThickness,
    Threshold plateThickness,
    Threshold frameThickness,
    Threshold minorThickness,
    Threshold restThickness,
    Threshold tissueStop) {

  /** The values of a rulebook. */
  public static LaboratoryRules from(Thresholds book) {
    return new LaboratoryRules(
        book.get("relief-lingual-bar", "mm"),
        book.get("relief-palatal-torus", "mm"),
        book.get("relief-mandibular-torus", "mm"),
        book.get("relief-base-connector", "mm"),
        book.get("relief-base-connector-free-end", "mm"),
        book.get("relief-gingival-crossing", "mm"),
        book.get("bead-depth", "mm"),
        book.get("lingual-bar-thickness", "mm"),
        book.get("palatal-plate-thickness", "mm"),
        book.get("palatal-frame-thickness", "mm"),
        book.get("minor-connector-thickness", "mm"),
        book.get("rest-thickness-least", "mm"),
        book.get("tissue-stop-side", "mm"));
  }
}
