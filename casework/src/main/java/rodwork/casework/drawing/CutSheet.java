package rodwork.casework.drawing;

import java.util.List;
import java.util.Locale;
import rodwork.anatomy.chart.Notation;
import rodwork.design.cut.PreparedCast.Piece;
import rodwork.design.preparation.Step;

/**
 * A section of the crown for each cut, before and after, to scale: the tooth as it stands thin, as
 * it shall be thick, the path upwards. Units of the SVG are mm on paper.
 */
public final class CutSheet {
  private static final double WIDE = 16.8;
  private static final double HIGH = 21;
  private static final double LABEL = 4;
  private static final double CELL_WIDTH = WIDE + 1.2;
  private static final double CELL_HEIGHT = HIGH + LABEL + 1;

  /** The cut lies this far from the left, since the tooth is there. */
  private static final double INWARD = 0.62 * WIDE;

  /** A seat is a large cut, the others are small. */
  private static final double SEAT_SCALE = 3;

  private static final double SCALE = 6;

  private CutSheet() {}

  /**
   * Draws.
   *
   * @param widthMm of the sheet
   * @param font family of the letters
   * @param notation of the teeth
   * @return an SVG document; empty where nothing is cut
   */
  public static String svg(List<Step> steps, double widthMm, String font, Notation notation) {
    List<Step> cuts = steps.stream().filter(s -> s.section().isPresent()).toList();
    if (cuts.isEmpty()) {
      return "";
    }
    int columns = Math.max(1, (int) (widthMm / CELL_WIDTH));
    int rows = (cuts.size() + columns - 1) / columns;
    double height = rows * CELL_HEIGHT + LABEL;
    StringBuilder svg = new StringBuilder();
    svg.append(
        String.format(
            Locale.ROOT,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0fmm\" height=\"%.0fmm\""
                + " viewBox=\"0 0 %.0f %.0f\" font-family=\"%s\">%n<title>Cuts</title>%n"
                + "<rect width=\"100%%\" height=\"100%%\" fill=\"#fff\"/>%n",
            widthMm,
            height,
            widthMm,
            height,
            font));
    for (int i = 0; i < cuts.size(); i++) {
      cell(svg, cuts.get(i), i % columns * CELL_WIDTH, i / columns * CELL_HEIGHT, i, notation);
    }
    text(
        svg,
        0,
        rows * CELL_HEIGHT + 2.5,
        String.format(
            Locale.ROOT,
            "Sections of the crowns, %.0f : 1, seats %.0f : 1, the path upwards. Thin: as the tooth"
                + " stands; thick: as it shall be; grey: what is taken.",
            SCALE,
            SEAT_SCALE));
    return svg.append("</svg>\n").toString();
  }

  private static void cell(
      StringBuilder svg, Step step, double left, double top, int index, Notation notation) {
    double scale = step.kind() == Step.Kind.REST_SEAT ? SEAT_SCALE : SCALE;
    double x = left + INWARD;
    double y = top + LABEL + HIGH / 2;
    svg.append(
        String.format(
            Locale.ROOT,
            "<clipPath id=\"cell%d\"><rect x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\"/>"
                + "</clipPath>%n<g class=\"cut\" clip-path=\"url(#cell%d)\">%n",
            index,
            left,
            top + LABEL,
            WIDE,
            HIGH,
            index));
    var section = step.section().orElseThrow();
    StringBuilder taken = new StringBuilder();
    for (int i = 0; i < section.before().size(); i++) {
      Piece a = section.before().get(i);
      Piece b = section.after().get(i);
      if (!a.equals(b)) {
        taken.append(point("M", scale, x, y, a.out(), a.up()));
        taken.append(point("L", scale, x, y, a.out2(), a.up2()));
        taken.append(point("L", scale, x, y, b.out2(), b.up2()));
        taken.append(point("L", scale, x, y, b.out(), b.up())).append("Z");
      }
    }
    path(svg, taken.toString(), "fill=\"#bbb\" stroke=\"#bbb\" stroke-width=\"0.08\"");
    path(
        svg,
        line(section.before(), scale, x, y),
        "fill=\"none\" stroke=\"#111\" stroke-width=\"0.14\"");
    path(
        svg,
        line(section.after(), scale, x, y),
        "fill=\"none\" stroke=\"#111\" stroke-width=\"0.4\" stroke-linecap=\"round\"");
    svg.append("</g>\n");
    svg.append(
        String.format(
            Locale.ROOT,
            "<rect x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" fill=\"none\""
                + " stroke=\"#999\" stroke-width=\"0.12\"/>%n",
            left,
            top + LABEL,
            WIDE,
            HIGH));
    text(
        svg,
        left,
        top + LABEL - 1,
        step.number() + " · " + step.tooth().in(notation) + " " + name(step));
  }

  private static String name(Step step) {
    return switch (step.kind()) {
      case GUIDING_PLANE, SURVEY_LINE, UNDERCUT, EMBRASURE ->
          step.surface().name().toLowerCase(Locale.ROOT);
      case REST_SEAT -> "seat";
      case SURVEYED_CROWN -> "crown";
    };
  }

  /** Pieces as strokes. */
  private static String line(List<Piece> pieces, double scale, double x, double y) {
    StringBuilder d = new StringBuilder();
    for (Piece p : pieces) {
      d.append(point("M", scale, x, y, p.out(), p.up()))
          .append(point("L", scale, x, y, p.out2(), p.up2()));
    }
    return d.toString();
  }

  private static String point(
      String command, double scale, double x, double y, double out, double up) {
    return String.format(Locale.ROOT, "%s%.2f %.2f", command, x + out * scale, y - up * scale);
  }

  private static void path(StringBuilder svg, String d, String style) {
    if (!d.isEmpty()) {
      svg.append("<path d=\"").append(d).append("\" ").append(style).append("/>\n");
    }
  }

  private static void text(StringBuilder svg, double x, double y, String words) {
    svg.append(
        String.format(
            Locale.ROOT, "<text x=\"%.2f\" y=\"%.2f\" font-size=\"2.0\">%s</text>%n", x, y, words));
  }
}
