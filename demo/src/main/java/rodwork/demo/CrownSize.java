package rodwork.demo;

/**
 * Sizes of a crown [mm], as tables of tooth anatomy give them (Ash and Nelson, Wheeler's Dental
 * Anatomy, table 1-1; taken from a teaching copy, partly from memory).
 *
 * @param length from the margin at the middle of the facial side to the cusp tip or incisal edge
 * @param md greatest mesiodistal width
 * @param mdNeck mesiodistal width at the neck
 * @param bl greatest faciolingual width
 * @param blNeck faciolingual width at the neck
 */
record CrownSize(double length, double md, double mdNeck, double bl, double blNeck) {}
