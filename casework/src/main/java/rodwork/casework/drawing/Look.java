package rodwork.casework.drawing;

import java.util.Locale;

/**
 * How each kind of part is drawn: by its line and hatching alone, so that it reads in black and
 * white. Each has a name, words for the legend, the width of its line [mm on paper], the pattern of
 * its dashes and its hatching, both empty for none.
 */
enum Look {
  TOOTH("tooth", "tooth", 0.25, "", ""),
  SURVEY("margin", "gingival margin", 0.15, "0.4 0.6", ""),
  BASE("base", "denture base", 0.35, "3 1", "dots"),
  MESH("mesh", "base connector", 0.3, "", "lattice"),
  CONNECTOR("connector", "major connector", 0.6, "", "slant"),
  FINISH("finish", "finish line", 0.8, "", ""),
  MINOR("minor", "minor connector", 1.2, "", ""),
  PLATE("plate", "guiding plate", 1.6, "", ""),
  REST("rest", "rest", 0.35, "", "solid"),
  RETENTIVE("retentive", "retentive arm (ring: tip)", 0.9, "", ""),
  RECIPROCAL("reciprocal", "reciprocal arm", 0.9, "2.2 0.8", ""),
  STOP("stop", "tissue stop", 0.4, "", ""),
  REPLACED("replaced", "tooth replaced", 0.3, "1 0.8", ""),
  TORUS("torus", "torus, from the chart", 0.35, "0.2 0.9", ""),
  FULCRUM("fulcrum", "fulcrum line", 0.3, "5 1 1 1", "");

  private final String key;
  private final String words;
  private final double width;
  private final String dashes;
  private final String fill;

  Look(String key, String words, double width, String dashes, String fill) {
    this.key = key;
    this.words = words;
    this.width = width;
    this.dashes = dashes;
    this.fill = fill;
  }

  String words() {
    return words;
  }

  String key() {
    return key;
  }

  /** The attributes of its line. */
  String style() {
    return String.format(
        Locale.ROOT,
        "stroke=\"#111\" stroke-width=\"%.2f\"%s fill=\"%s\"",
        width,
        dashes.isEmpty() ? "" : " stroke-dasharray=\"" + dashes + "\"",
        fill.isEmpty() ? "none" : fill.equals("solid") ? "#111" : "url(#" + fill + ")");
  }

  /** A sample for the legend: a stretch of the line, or a field where there is a hatching. */
  String sample(double x, double y, double wide, double high) {
    return fill.isEmpty()
        ? String.format(
            Locale.ROOT,
            "<path class=\"legend\" d=\"M%.2f %.2fH%.2f\" %s/>%n",
            x,
            y + high / 2,
            x + wide,
            style())
        : String.format(
            Locale.ROOT,
            "<rect class=\"legend\" x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" %s/>%n",
            x,
            y,
            wide,
            high,
            style());
  }

  /** The hatchings. */
  static String hatchings() {
    return """
        <defs>
        <pattern id="slant" width="1.6" height="1.6" patternUnits="userSpaceOnUse" \
        patternTransform="rotate(45)"><path d="M0 0V1.6" stroke="#111" stroke-width="0.22"/></pattern>
        <pattern id="lattice" width="2" height="2" patternUnits="userSpaceOnUse" \
        patternTransform="rotate(45)"><path d="M0 0H2M0 0V2" stroke="#111" stroke-width="0.25"/></pattern>
        <pattern id="dots" width="1.8" height="1.8" patternUnits="userSpaceOnUse">\
        <circle cx="0.5" cy="0.5" r="0.18" fill="#111"/></pattern>
        </defs>
        """;
  }
}
