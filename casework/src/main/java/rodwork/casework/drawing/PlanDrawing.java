package rodwork.casework.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.plan.Line;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The plan as a drawing to scale, from above and from the sides, from the same curves as the plan
 * itself.
 *
 * <p>Black and white: each kind of part has its own line and hatching, and the legend is always
 * there. Units of the SVG are mm on paper.
 */
public final class PlanDrawing {
  /** Scales are whole multiples of this, so that they can be read off a rule. */
  private static final double SCALE_STEP = 0.05;

  /** Between views [mm on paper]. */
  private static final double GAP_MM = 4;

  private final Arch arch;
  private final Dentition dentition;
  private final Plan plan;
  private final Sheet sheet;
  private final Notation notation;
  private final StringBuilder svg = new StringBuilder();

  private PlanDrawing(Arch arch, Dentition dentition, Plan plan, Sheet sheet, Notation notation) {
    this.arch = arch;
    this.dentition = dentition;
    this.plan = plan;
    this.sheet = sheet;
    this.notation = notation;
  }

  /**
   * Draws.
   *
   * @param title of the cast
   * @param notation in which tooth numbers are written; {@code data-tooth} holds the FDI number
   * @return an SVG document
   */
  public static String svg(
      Arch arch, Dentition dentition, Plan plan, String title, Sheet sheet, Notation notation) {
    return new PlanDrawing(arch, dentition, plan, sheet, notation).draw(title);
  }

  private String draw(String title) {
    double margin = sheet.marginMm();
    double inner = sheet.widthMm() - 2 * margin;
    double y = margin + 6;
    text(margin, y - 2, sheet.titleMm(), title + ", " + plan.kennedy());
    double aboveWidth = sheet.sidesBeside() ? inner * sheet.aboveShare() : inner;
    Panel above = new Panel(View.occlusal(arch.frame()), margin, y, aboveWidth, true, _ -> true);
    double aboveScale = fitting(sheet.fromAbove(), aboveWidth, above.extent());
    double end = above.draw(aboveScale, "from above") + 4;
    double left = sheet.sidesBeside() ? margin + aboveWidth + GAP_MM : margin;
    double half = (sheet.widthMm() - margin - left - GAP_MM) / 2;
    List<Panel> sides = new ArrayList<>();
    List<String> names = new ArrayList<>();
    Vec3 x = arch.frame().x().times(plan.jaw() == rodwork.anatomy.Jaw.LOWER ? -1 : 1);
    // The patient's right looks in the direction of his left, and is seen from the right.
    for (boolean facial : new boolean[] {true, false}) {
      for (Side side : Side.values()) {
        boolean right = side == Side.RIGHT;
        sides.add(
            new Panel(
                View.side(arch.frame(), right == facial ? x : x.times(-1)),
                right ? left : left + half + GAP_MM,
                0,
                half,
                false,
                t -> t.side() == side));
        names.add((right ? "right" : "left") + (facial ? ", facial" : ", lingual"));
      }
    }
    double sideScale =
        fitting(sheet.fromSide(), half, sides.stream().mapToDouble(Panel::extent).max().orElse(0));
    double next = sheet.sidesBeside() ? y : end;
    for (int row = 0; row < sides.size(); row += 2) {
      double top = next;
      for (int i = row; i < row + 2; i++) {
        next = Math.max(next, sides.get(i).at(top).draw(sideScale, names.get(i)));
      }
      next += 3;
    }
    if (sheet.sidesBeside()) {
      y = Math.max(end, legend(left, next + 2, sheet.widthMm() - margin - left));
    } else {
      y = legend(margin, next + 2, inner);
    }
    text(
        margin,
        y + 4,
        sheet.smallMm(),
        String.format(
            Locale.ROOT,
            "Scale %.2f : 1 from above, %.2f : 1 from the sides. Patient's right on the viewer's"
                + " left. An aid: the prescriber decides and signs.",
            aboveScale,
            sideScale));
    double height = y + 5 + margin;
    return String.format(
            Locale.ROOT,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0fmm\" height=\"%.0fmm\""
                + " viewBox=\"0 0 %.0f %.0f\" font-family=\"%s\">%n<title>%s</title>%n"
                + "<rect width=\"100%%\" height=\"100%%\" fill=\"#fff\"/>%n",
            sheet.widthMm(),
            height,
            sheet.widthMm(),
            height,
            sheet.font(),
            escaped(title))
        + Look.hatchings()
        + svg
        + "</svg>\n";
  }

  /** The scale wanted, or the greatest at which an extent fits a width. */
  private static double fitting(double wanted, double width, double extent) {
    double most = extent > 0 ? width / extent : wanted;
    return most >= wanted ? wanted : Math.floor(most / SCALE_STEP) * SCALE_STEP;
  }

  /** Draws the legend, and says where it ends. */
  private double legend(double left, double top, double wide) {
    int columns = sheet.legendColumns();
    double width = wide / columns;
    double step = 2 * sheet.smallMm();
    int i = 0;
    for (Look look : Look.values()) {
      double x = left + width * (i % columns);
      double y = top + step * (i / columns);
      svg.append(look.sample(x, y, 7, sheet.smallMm()));
      text(x + 8.5, y + 0.9 * sheet.smallMm(), sheet.smallMm(), look.words());
      i++;
    }
    return top + step * ((Look.values().length + columns - 1) / columns);
  }

  private void text(double x, double y, double size, String words) {
    svg.append(
        String.format(
            Locale.ROOT,
            "<text x=\"%.2f\" y=\"%.2f\" font-size=\"%.1f\">%s</text>%n",
            x,
            y,
            size,
            escaped(words)));
  }

  /** Names of parts, for a reader of the drawing that shows them: kind, tooth, side. */
  private static String name(String kind, ToothNumber tooth, Surface side) {
    return kind + " " + tooth.fdi() + " " + side.name().toLowerCase(Locale.ROOT);
  }

  private static String name(Part.Clasp clasp) {
    return "clasp " + clasp.tooth().fdi();
  }

  private static String name(Part.DentureBase base) {
    return "base "
        + base.space().missing().stream()
            .map(t -> String.valueOf(t.fdi()))
            .collect(Collectors.joining("–"));
  }

  private static String marked(String part) {
    return part.isEmpty() ? "" : " data-part=\"" + part + "\"";
  }

  private static String escaped(String words) {
    return words.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }

  /** One view on the sheet. */
  private final class Panel {
    private final View view;
    private final double left;
    private double top;
    private final double width;
    private final boolean above;
    private final Predicate<ToothNumber> shown;
    private final List<Tooth> teeth;
    private final List<List<Vec3>> outlines = new ArrayList<>();
    private double scale = 1;
    private double low = Double.POSITIVE_INFINITY;
    private double high = Double.NEGATIVE_INFINITY;
    private double lowUp = Double.POSITIVE_INFINITY;
    private double highUp = Double.NEGATIVE_INFINITY;

    Panel(
        View view,
        double left,
        double top,
        double width,
        boolean above,
        Predicate<ToothNumber> shown) {
      this.view = view;
      this.left = left;
      this.top = top;
      this.width = width;
      this.above = above;
      this.shown = shown;
      this.teeth =
          dentition.inOrder().stream()
              .filter(t -> dentition.standing().contains(t.number()) && shown.test(t.number()))
              .toList();
      for (Tooth tooth : teeth) {
        outlines.add(silhouette(tooth));
        tooth.margin().points().forEach(this::widen);
      }
      outlines.forEach(o -> o.forEach(this::widen));
      for (Part.DentureBase b : plan.bases()) {
        if (drawn(b.space())) {
          b.outline().points().forEach(this::widen);
        }
      }
      if (above) {
        plan.majorConnector().ifPresent(m -> m.outline().points().forEach(this::widen));
      }
    }

    Panel at(double y) {
      top = y;
      return this;
    }

    /** From the left to the right of what is drawn [mm on the cast]; 0 for nothing. */
    double extent() {
      return Math.max(0, high - low);
    }

    /** Draws, and says where on the page it ends. */
    double draw(double at, String name) {
      scale = at;
      if (!(high > low)) {
        return top;
      }
      svg.append(
          String.format(
              Locale.ROOT,
              "<g class=\"view\" data-view=\"%s\" stroke-linejoin=\"round\">%n",
              name));
      if (above) {
        rim();
      }
      for (Part.DentureBase b : plan.bases()) {
        if (drawn(b.space())) {
          line(Look.BASE, b.outline(), name(b));
          line(Look.MESH, b.connector(), name(b));
        }
      }
      if (above) {
        plan.majorConnector().ifPresent(this::connector);
      }
      for (List<Vec3> outline : outlines) {
        path(Look.TOOTH, outline, true, above ? "fill=\"#fff\"" : "", "");
      }
      if (!above) {
        for (Tooth tooth : teeth) {
          path(Look.SURVEY, facing(tooth), false, "", "");
        }
      }
      for (Part.DentureBase b : plan.bases()) {
        if (drawn(b.space())) {
          if (above) {
            line(Look.FINISH, b.finishLine(), name(b));
          }
          b.teeth().forEach(t -> replaced(t, name(b)));
          b.tissueStop().ifPresent(p -> mark(Look.STOP, p, 1, true, name(b)));
        }
      }
      parts();
      for (Tooth tooth : teeth) {
        label(tooth);
      }
      svg.append("</g>\n");
      double bottom = top + (highUp - lowUp) * scale + 4;
      text(left, bottom + 1, sheet.smallMm(), name);
      return bottom + 2;
    }

    private boolean drawn(Space space) {
      return space.missing().stream().anyMatch(shown);
    }

    private boolean faces(Tooth tooth, boolean facial) {
      return tooth.axes().facial().times(facial ? 1 : -1).dot(view.eye()) > 0;
    }

    private void parts() {
      for (Part.MinorConnector m : plan.minorConnectors()) {
        if (shown.test(m.tooth()) && (above || faces(tooth(m.tooth()), false))) {
          line(Look.MINOR, m.line(), name("minor", m.tooth(), m.side()));
        }
      }
      for (Part.GuidingPlate p : plan.plates()) {
        if (shown.test(p.tooth())) {
          line(Look.PLATE, p.line(), name("plate", p.tooth(), p.side()));
        }
      }
      for (Part.Rest r : plan.rests()) {
        if (shown.test(r.tooth())
            && (above || r.kind() != Part.RestKind.CINGULUM || faces(tooth(r.tooth()), false))) {
          line(Look.REST, r.outline(), name("rest", r.tooth(), r.side()));
        }
      }
      for (Part.Clasp c : plan.clasps()) {
        if (!shown.test(c.tooth())) {
          continue;
        }
        boolean facial = c.judgement().family().surface() != Surface.LINGUAL;
        if (above || faces(tooth(c.tooth()), facial)) {
          c.retentive().ifPresent(l -> line(Look.RETENTIVE, l, name(c)));
          c.tip().ifPresent(p -> mark(Look.RETENTIVE, p, 0.9, false, name(c)));
        }
        if (above || faces(tooth(c.tooth()), !facial)) {
          c.reciprocal().ifPresent(l -> line(Look.RECIPROCAL, l, name(c)));
        }
      }
      if (above) {
        plan.fulcrum()
            .ifPresent(f -> path(Look.FULCRUM, List.of(f.from(), f.to()), false, "", "fulcrum"));
      }
    }

    private Tooth tooth(ToothNumber number) {
      return dentition.tooth(number).orElseThrow();
    }

    private void connector(Part.MajorConnector m) {
      svg.append(
          String.format(
              Locale.ROOT,
              "<path class=\"%s\" data-part=\"connector\" fill-rule=\"evenodd\" d=\"%s%s\" %s/>%n",
              Look.CONNECTOR.key(),
              way(m.outline().points(), true),
              m.opening().map(o -> way(o.points(), true)).orElse(""),
              Look.CONNECTOR.style()));
    }

    /** The outer rim of the anatomy, where the scan or the cast ends. */
    private void rim() {
      MeshTopology topology = arch.topology();
      StringBuilder d = new StringBuilder();
      for (int e = 0; e < topology.edgeCount(); e++) {
        int a = topology.edgeTriangle(e, 0);
        int b = topology.edgeTriangle(e, 1);
        boolean inA = a >= 0 && !arch.surface().isBase(a);
        boolean inB = b >= 0 && !arch.surface().isBase(b);
        if (inA != inB) {
          double[] p = page(topology.mesh().vertex(topology.edgeVertex(e, 0)));
          double[] q = page(topology.mesh().vertex(topology.edgeVertex(e, 1)));
          if (inside(p) && inside(q)) {
            d.append(String.format(Locale.ROOT, "M%.1f %.1fL%.1f %.1f", p[0], p[1], q[0], q[1]));
          }
        }
      }
      svg.append("<path class=\"rim\" fill=\"none\" stroke=\"#999\" stroke-width=\"0.15\" d=\"")
          .append(d)
          .append("\"/>\n");
    }

    /** A trimmed base reaches beyond what is drawn, and would run into the next view. */
    private boolean inside(double[] p) {
      return p[0] >= left
          && p[0] <= left + width
          && p[1] >= top
          && p[1] <= top + 2 + (highUp - lowUp) * scale;
    }

    /** Outline of a crown as seen: the hull of its points. */
    private List<Vec3> silhouette(Tooth tooth) {
      TriangleMesh mesh = arch.mesh();
      List<Vec3> points = new ArrayList<>();
      for (int t : tooth.copyOfTriangles()) {
        if (dentition.labels().of(t) != ToothLabels.GUM) {
          for (int k = 0; k < 3; k++) {
            points.add(mesh.vertex(mesh.corner(t, k)));
          }
        }
      }
      return Hull.of(points, view);
    }

    /** The piece of the margin that lies on the side of the eye. */
    private List<Vec3> facing(Tooth tooth) {
      Vec3 middle = tooth.margin().middle();
      List<Vec3> points = tooth.margin().points();
      int n = points.size();
      int start = 0;
      for (int i = 0; i < n; i++) {
        if (behind(points.get(i), middle) && !behind(points.get((i + 1) % n), middle)) {
          start = (i + 1) % n;
        }
      }
      List<Vec3> piece = new ArrayList<>();
      for (int i = 0; i < n && !behind(points.get((start + i) % n), middle); i++) {
        piece.add(points.get((start + i) % n));
      }
      return piece;
    }

    private boolean behind(Vec3 point, Vec3 middle) {
      return point.minus(middle).dot(view.eye()) < 0;
    }

    private void replaced(Space.Position position, String part) {
      mark(Look.REPLACED, position.at(), 3 * scale, false, part);
      number(position.at(), position.tooth());
    }

    private void label(Tooth tooth) {
      number(tooth.centroid(), tooth.number());
    }

    private void number(Vec3 at, ToothNumber tooth) {
      double[] p = page(at);
      double size = sheet.numberMm();
      svg.append(
          String.format(
              Locale.ROOT,
              "<text data-tooth=\"%d\" x=\"%.2f\" y=\"%.2f\" font-size=\"%.1f\" text-anchor=\"middle\""
                  + " stroke=\"#fff\" stroke-width=\"0.8\" stroke-linejoin=\"round\">%s</text>%n"
                  + "<text data-tooth=\"%d\" x=\"%.2f\" y=\"%.2f\" font-size=\"%.1f\" text-anchor=\"middle\">%s</text>%n",
              tooth.fdi(),
              p[0],
              p[1] + 0.36 * size,
              size,
              tooth.in(notation),
              tooth.fdi(),
              p[0],
              p[1] + 0.36 * size,
              size,
              tooth.in(notation)));
    }

    private void widen(Vec3 point) {
      double[] at = view.at(point);
      low = Math.min(low, at[0]);
      high = Math.max(high, at[0]);
      lowUp = Math.min(lowUp, at[1]);
      highUp = Math.max(highUp, at[1]);
    }

    private double[] page(Vec3 point) {
      double[] at = view.at(point);
      double offset = (width - (high - low) * scale) / 2;
      return new double[] {
        left + offset + (at[0] - low) * scale, top + 2 + (highUp - at[1]) * scale
      };
    }

    private void line(Look look, Line line, String part) {
      path(look, line.points(), line.closed(), "", part);
    }

    private void path(Look look, List<Vec3> points, boolean closed, String over, String part) {
      if (points.size() > 1) {
        String style = over.isEmpty() ? look.style() : look.style().replace("fill=\"none\"", over);
        svg.append(
            String.format(
                Locale.ROOT,
                "<path class=\"%s\"%s d=\"%s\" %s/>%n",
                look.key(),
                marked(part),
                way(points, closed),
                style));
      }
    }

    private String way(List<Vec3> points, boolean closed) {
      StringBuilder d = new StringBuilder();
      for (Vec3 point : points) {
        double[] p = page(point);
        d.append(String.format(Locale.ROOT, "%s%.2f %.2f", d.isEmpty() ? "M" : "L", p[0], p[1]));
      }
      return closed ? d.append("Z").toString() : d.toString();
    }

    private void mark(Look look, Vec3 point, double radius, boolean square, String part) {
      double[] p = page(point);
      svg.append(
          square
              ? String.format(
                  Locale.ROOT,
                  "<rect class=\"%s\"%s x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" %s/>%n",
                  look.key(),
                  marked(part),
                  p[0] - radius,
                  p[1] - radius,
                  2 * radius,
                  2 * radius,
                  look.style())
              : String.format(
                  Locale.ROOT,
                  "<circle class=\"%s\"%s cx=\"%.2f\" cy=\"%.2f\" r=\"%.2f\" %s/>%n",
                  look.key(),
                  marked(part),
                  p[0],
                  p[1],
                  radius,
                  look.style()));
    }
  }
}
