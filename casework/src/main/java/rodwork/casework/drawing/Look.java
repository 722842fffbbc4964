package rodwork.casework.drawing;

import java.util.Locale;
import java.util.stream.Collectors;

/**
 * How each kind of part is drawn: by its line and hatching alone, so that it reads in black and
 * white. Each has a name, words for the legend, its line, what lies in the middle of that line, and
 * its hatching. No two are drawn alike, and none by the width of a plain line alone.
 */
enum Look {
  TOOTH("tooth", "tooth", black(0.25, ""), "", ""),
  SURVEY("margin", "gingival margin", black(0.15, "0.8 0.5"), "", ""),
  BASE("base", "denture base", black(0.35, "3 1"), "", "dots"),
  MESH("mesh", "base connector", black(0.3, ""), "", "lattice"),
  CONNECTOR("connector", "major connector", black(0.6, ""), "", "slant"),
  /** Two lines. */
  FINISH("finish", "finish line", black(1, ""), white(0.5, ""), ""),
  /** A ladder. */
  MINOR("minor", "minor connector", black(1.5, ""), white(1, "") + "\n" + black(1, "0.3 0.7"), ""),
  /** A bar with beads of white. */
  PLATE("plate", "guiding plate", black(1.7, ""), white(0.6, "0.6 0.7"), ""),
  REST("rest", "rest", black(0.35, ""), "", "solid"),
  RETENTIVE("retentive", "retentive arm (ring: tip)", black(0.9, ""), "", ""),
  RECIPROCAL("reciprocal", "reciprocal arm", black(0.9, "2.2 0.8"), "", ""),
  STOP("stop", "tissue stop", black(0.4, ""), "", ""),
  REPLACED("replaced", "tooth replaced", black(0.3, "1 0.8"), "", ""),
  /** Round dots, each from its cap alone. */
  TORUS("torus", "torus, from the chart", black(0.7, "0 1.4"), "", ""),
  FULCRUM("fulcrum", "fulcrum line", black(0.3, "5 1 1 1"), "", "");

  /** Radius of the ring at the tip of an arm [mm on paper]. */
  static final double TIP_MM = 0.9;

  /** Half of the side of a tissue stop [mm on paper]. */
  static final double STOP_MM = 1;

  /** Thinner samples get no smaller than this, so that a legend can be read [mm]. */
  private static final double LEAST_SAMPLE_MM = 1;

  private final String key;
  private final String words;
  private final String line;
  private final String within;
  private final String fill;

  Look(String key, String words, String line, String within, String fill) {
    this.key = key;
    this.words = words;
    this.line = line;
    this.within = within;
    this.fill = fill;
  }

  private static String black(double width, String dashes) {
    return stroke("#111", width, dashes);
  }

  private static String white(double width, String dashes) {
    return stroke("#fff", width, dashes);
  }

  /**
   * The attributes of a line.
   *
   * @param width [mm on paper]
   * @param dashes and gaps [mm on paper]; empty: none
   */
  private static String stroke(String colour, double width, String dashes) {
    return String.format(
        Locale.ROOT,
        "stroke=\"%s\" stroke-width=\"%.2f\"%s",
        colour,
        width,
        dashes.isEmpty()
            ? ""
            : " stroke-dasharray=\""
                + dashes
                + "\""
                + (dashes.startsWith("0 ") ? " stroke-linecap=\"round\"" : ""));
  }

  String words() {
    return words;
  }

  String key() {
    return key;
  }

  /** The attributes of its line. */
  String style() {
    return line
        + String.format(
            Locale.ROOT,
            " fill=\"%s\"",
            fill.isEmpty() ? "none" : fill.equals("solid") ? "#111" : "url(#" + fill + ")");
  }

  /** What lies in the middle of its line, over it, along the same way. */
  String within(String way) {
    return within
        .lines()
        .map(
            stroke ->
                "<path d=\"%s\" %s fill=\"none\" pointer-events=\"none\"/>\n"
                    .formatted(way, stroke))
        .collect(Collectors.joining());
  }

  /** A square with a cross in it, as a tissue stop. */
  static String stop(double x, double y, double half) {
    return String.format(
        Locale.ROOT,
        "M%.2f %.2fh%.2fv%.2fh%.2fzl%.2f %.2fm%.2f 0l%.2f %.2f",
        x - half,
        y - half,
        2 * half,
        2 * half,
        -2 * half,
        2 * half,
        2 * half,
        -2 * half,
        2 * half,
        -2 * half);
  }

  /**
   * A sample for the legend, drawn as the part is: a stretch of the line, its mark, or a field
   * where there is a hatching.
   */
  String sample(double x, double y, double wide, double high) {
    double half = Math.max(LEAST_SAMPLE_MM, high / 2);
    double middle = y + high / 2;
    if (this == STOP) {
      return sample(stop(x + wide / 2, middle, Math.min(STOP_MM, half)));
    }
    if (this == REPLACED) {
      return String.format(
          Locale.ROOT,
          "<circle class=\"legend\" cx=\"%.2f\" cy=\"%.2f\" r=\"%.2f\" %s/>%n",
          x + wide / 2,
          middle,
          half,
          style());
    }
    if (!fill.isEmpty()) {
      return String.format(
          Locale.ROOT,
          "<rect class=\"legend\" x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" %s/>%n",
          x,
          y,
          wide,
          high,
          style());
    }
    double end = this == RETENTIVE ? wide - 2 * TIP_MM : wide;
    String line = sample(String.format(Locale.ROOT, "M%.2f %.2fH%.2f", x, middle, x + end));
    return this != RETENTIVE
        ? line
        : line
            + String.format(
                Locale.ROOT,
                "<circle cx=\"%.2f\" cy=\"%.2f\" r=\"%.2f\" %s/>%n",
                x + end + TIP_MM,
                middle,
                TIP_MM,
                style());
  }

  private String sample(String way) {
    return String.format(Locale.ROOT, "<path class=\"legend\" d=\"%s\" %s/>%n", way, style())
        + within(way);
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
