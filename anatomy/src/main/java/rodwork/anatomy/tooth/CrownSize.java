package rodwork.anatomy.tooth;

/**
 * The size of one crown, as the scan shows it.
 *
 * @param facialHeightMm along the axis from the facial margin to the cusp tip or edge above it
 * @param lingualHeightMm the same on the lingual side
 * @param mesiodistalMm greatest width; between touching neighbours from contact to contact
 * @param faciolingualMm greatest depth
 */
public record CrownSize(
    double facialHeightMm, double lingualHeightMm, double mesiodistalMm, double faciolingualMm) {}
