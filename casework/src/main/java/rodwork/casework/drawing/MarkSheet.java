package rodwork.casework.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.survey.tripod.MarkBearings;
import rodwork.survey.tripod.Tripod;

/**
 * The tripod marks on the cast from above, each with its distances to two landmarks: what is needed
 * to set them on plaster with dividers. Units of the SVG are mm on paper.
 */
public final class MarkSheet {
  private static final double LETTER_MM = 2.3;
  private static final double RING_MM = 1.1;
  private static final double MARGIN_MM = 3;

  /** The words beside a mark find room on the right of the rightmost one [mm]. */
  private static final double LABEL_MM = 13;

  private MarkSheet() {}

  /**
   * Draws.
   *
   * @param bearings one a mark; empty where no two landmarks fix it
   * @param widthMm of the sheet
   * @param heightMm of the sheet
   */
  public static String svg(
      Arch arch,
      Dentition dentition,
      Tripod tripod,
      List<Optional<MarkBearings>> bearings,
      double widthMm,
      double heightMm,
      String font,
      Notation notation) {
    View view = View.occlusal(arch.frame());
    List<List<Vec3>> outlines = new ArrayList<>();
    List<Vec3> all = new ArrayList<>();
    List<Tooth> teeth =
        dentition.inOrder().stream()
            .filter(t -> dentition.standing().contains(t.number()))
            .toList();
    for (Tooth tooth : teeth) {
      List<Vec3> outline = Hull.of(points(arch.mesh(), tooth), view);
      outlines.add(outline);
      all.addAll(outline);
    }
    tripod.marks().forEach(m -> all.add(m.point()));
    Frame frame = Frame.of(view, all, widthMm, heightMm);
    StringBuilder svg = new StringBuilder();
    svg.append(
        String.format(
            Locale.ROOT,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0fmm\" height=\"%.0fmm\""
                + " viewBox=\"0 0 %.0f %.0f\" font-family=\"%s\">%n<title>Tripod marks</title>%n"
                + "<rect width=\"100%%\" height=\"100%%\" fill=\"#fff\"/>%n",
            widthMm,
            heightMm,
            widthMm,
            heightMm,
            font));
    for (int i = 0; i < teeth.size(); i++) {
      svg.append(frame.path(outlines.get(i), true, "stroke=\"#777\" stroke-width=\"0.2\""));
      svg.append(frame.text(teeth.get(i).centroid(), teeth.get(i).number().in(notation), "#777"));
    }
    List<Vec3> corners = tripod.marks().stream().map(m -> m.point()).toList();
    svg.append(
        frame.path(
            corners, true, "stroke=\"#111\" stroke-width=\"0.15\" stroke-dasharray=\"2 1\""));
    for (int i = 0; i < 3; i++) {
      Vec3 mark = corners.get(i);
      for (MarkBearings.Bearing b : bearings.get(i).map(MarkBearings::both).orElse(List.of())) {
        Vec3 landmark = b.landmark().point();
        svg.append(
            frame.path(
                List.of(mark, landmark),
                false,
                "stroke=\"#111\" stroke-width=\"0.25\" stroke-dasharray=\"0.5 0.5\""));
        svg.append(frame.dot(landmark));
        svg.append(
            frame.text(
                mark.plus(landmark.minus(mark).times(0.55)),
                String.format(Locale.ROOT, "%.1f", b.distanceMm()),
                "#111"));
      }
      svg.append(frame.mark(mark, i + 1));
    }
    return svg.append("</svg>\n").toString();
  }

  private static List<Vec3> points(TriangleMesh mesh, Tooth tooth) {
    List<Vec3> points = new ArrayList<>();
    for (int t : tooth.copyOfTriangles()) {
      for (int k = 0; k < 3; k++) {
        points.add(mesh.vertex(mesh.corner(t, k)));
      }
    }
    return points;
  }

  /** From the cast to the sheet. */
  private record Frame(View view, double left, double top, double scale, double offset) {
    static Frame of(View view, List<Vec3> points, double width, double height) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      double down = Double.POSITIVE_INFINITY;
      double up = Double.NEGATIVE_INFINITY;
      for (Vec3 p : points) {
        double[] at = view.at(p);
        low = Math.min(low, at[0]);
        high = Math.max(high, at[0]);
        down = Math.min(down, at[1]);
        up = Math.max(up, at[1]);
      }
      double scale =
          Math.min(
              (width - 2 * LABEL_MM) / Math.max(1, high - low),
              (height - 2 * MARGIN_MM) / Math.max(1, up - down));
      return new Frame(view, low, up, scale, (width - (high - low) * scale) / 2);
    }

    private double[] page(Vec3 p) {
      double[] at = view.at(p);
      return new double[] {offset + (at[0] - left) * scale, MARGIN_MM + (top - at[1]) * scale};
    }

    String path(List<Vec3> points, boolean closed, String style) {
      StringBuilder d = new StringBuilder();
      for (Vec3 p : points) {
        double[] at = page(p);
        d.append(String.format(Locale.ROOT, "%s%.2f %.2f", d.isEmpty() ? "M" : "L", at[0], at[1]));
      }
      return "<path d=\"" + d + (closed ? "Z" : "") + "\" fill=\"none\" " + style + "/>\n";
    }

    String dot(Vec3 p) {
      double[] at = page(p);
      return String.format(
          Locale.ROOT, "<circle cx=\"%.2f\" cy=\"%.2f\" r=\"0.5\" fill=\"#111\"/>%n", at[0], at[1]);
    }

    String mark(Vec3 p, int number) {
      double[] at = page(p);
      return String.format(
              Locale.ROOT,
              "<circle cx=\"%1$.2f\" cy=\"%2$.2f\" r=\"%3$.2f\" fill=\"#fff\" stroke=\"#111\""
                  + " stroke-width=\"0.3\"/><path d=\"M%4$.2f %2$.2fH%5$.2fM%1$.2f %6$.2fV%7$.2f\""
                  + " stroke=\"#111\" stroke-width=\"0.3\"/>%n",
              at[0],
              at[1],
              RING_MM,
              at[0] - 1.6 * RING_MM,
              at[0] + 1.6 * RING_MM,
              at[1] - 1.6 * RING_MM,
              at[1] + 1.6 * RING_MM)
          + letters(at[0] + 1.8 * RING_MM, at[1] - RING_MM, "mark " + number, "#111");
    }

    String text(Vec3 p, String words, String colour) {
      double[] at = page(p);
      return letters(
          at[0] - 0.3 * LETTER_MM * words.length(), at[1] + LETTER_MM / 3, words, colour);
    }

    private static String letters(double x, double y, String words, String colour) {
      String at =
          String.format(Locale.ROOT, "x=\"%.2f\" y=\"%.2f\" font-size=\"%.1f\"", x, y, LETTER_MM);
      return "<text "
          + at
          + " stroke=\"#fff\" stroke-width=\"0.7\">"
          + words
          + "</text><text "
          + at
          + " fill=\""
          + colour
          + "\">"
          + words
          + "</text>\n";
    }
  }
}
