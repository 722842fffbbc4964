package rodwork.casework.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Notation;
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

/** One view of a plan on its sheet. Mutable while it is drawn. */
final class PlanPanel {
  /** Radius of the ring of a replaced tooth [mm on the cast]. */
  private static final double REPLACED_MM = 3;

  /** From the middle of a number to the border of its field, in heights of its letters. */
  private static final double FIELD_SHARE = 0.5;

  /** Two digits are so wide, in heights of their letters. */
  private static final double DIGITS_WIDE = 1.35;

  /**
   * A number beside its tooth, beside it where parts lie, or on another part, is so much farther
   * [mm].
   */
  private static final double BESIDE_MM = 3;

  private static final double WRONG_SIDE_MM = 6;

  private final Arch arch;
  private final Dentition dentition;
  private final Plan plan;
  private final Sheet sheet;
  private final Notation notation;
  private final StringBuilder svg = new StringBuilder();
  private final View view;
  private final double left;
  private double top;
  private final double width;
  private final boolean above;
  private final Predicate<ToothNumber> shown;
  private final List<Tooth> teeth;
  private final List<List<Vec3>> outlines = new ArrayList<>();
  private double scale = 1;
  private FreeRoom room = new FreeRoom(0, 0, 1, 1);
  private double low = Double.POSITIVE_INFINITY;
  private double high = Double.NEGATIVE_INFINITY;
  private double lowUp = Double.POSITIVE_INFINITY;
  private double highUp = Double.NEGATIVE_INFINITY;

  PlanPanel(
      Arch arch,
      Dentition dentition,
      Plan plan,
      Sheet sheet,
      Notation notation,
      View view,
      double left,
      double top,
      double width,
      boolean above,
      Predicate<ToothNumber> shown) {
    this.arch = arch;
    this.dentition = dentition;
    this.plan = plan;
    this.sheet = sheet;
    this.notation = notation;
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

  PlanPanel at(double y) {
    top = y;
    return this;
  }

  /** From the left to the right of what is drawn [mm on the cast]; 0 for nothing. */
  double extent() {
    return Math.max(0, high - low);
  }

  /** Left free about what is drawn, for numbers [mm on paper]. */
  static double padMm(Sheet sheet) {
    return 1.7 * sheet.numberMm();
  }

  /** What was drawn. */
  String svg() {
    return svg.toString();
  }

  /** Draws, and says where on the page it ends. */
  double draw(double at, String name) {
    scale = at;
    if (!(high > low)) {
      return top;
    }
    double bottom = top + (highUp - lowUp) * scale + 2 * padMm(sheet);
    room = new FreeRoom(left, top, width, bottom - top);
    svg.append(
        String.format(
            Locale.ROOT, "<g class=\"view\" data-view=\"%s\" stroke-linejoin=\"round\">%n", name));
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
        b.teeth().forEach(t -> ring(Look.REPLACED, t.at(), REPLACED_MM * scale, name(b)));
        b.tissueStop().ifPresent(p -> stop(p, name(b)));
      }
    }
    parts();
    numbers();
    svg.append("</g>\n");
    svg.append(PlanDrawing.text(left, bottom + sheet.smallMm(), sheet.smallMm(), name));
    return bottom + 1.3 * sheet.smallMm();
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
        c.tip().ifPresent(p -> ring(Look.RETENTIVE, p, Look.TIP_MM, name(c)));
      }
      if (above || faces(tooth(c.tooth()), !facial)) {
        c.reciprocal().ifPresent(l -> line(Look.RECIPROCAL, l, name(c)));
      }
    }
    if (above) {
      plan.tori().forEach(t -> t.edge().ifPresent(e -> line(Look.TORUS, e, "")));
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
          room.line(p, q);
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
        && p[1] <= top + 2 * padMm(sheet) + (highUp - lowUp) * scale;
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

  /** Each number where nothing else is drawn: on its tooth, else beside it with a line to it. */
  private void numbers() {
    List<Numbered> all = new ArrayList<>();
    for (int i = 0; i < teeth.size(); i++) {
      List<double[]> outline = outlines.get(i).stream().map(this::page).toList();
      all.add(new Numbered(teeth.get(i).number(), page(teeth.get(i).centroid()), outline));
    }
    for (Part.DentureBase b : plan.bases()) {
      if (drawn(b.space())) {
        b.teeth().forEach(t -> all.add(new Numbered(t.tooth(), page(t.at()), circle(t.at()))));
      }
    }
    List<double[]> covered =
        plan.majorConnector()
            .filter(_ -> above)
            .map(m -> m.outline().points().stream().map(this::page).toList())
            .orElse(List.of());
    for (Numbered one : all) {
      double size = sheet.numberMm();
      double[] at =
          room.place(
                  DIGITS_WIDE * size,
                  2 * FIELD_SHARE * size,
                  one.middle(),
                  free -> cost(free, one, all, covered))
              // No tooth goes without its number, though it hides what lies under it.
              .orElse(one.middle());
      number(at, one);
    }
  }

  /** A number with what it belongs to, on paper. */
  private record Numbered(ToothNumber tooth, double[] middle, List<double[]> outline) {
    boolean has(double[] at) {
      return Hull.contains(outline, at);
    }
  }

  private List<double[]> circle(Vec3 middle) {
    double[] m = page(middle);
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      double angle = 2 * Math.PI * i / 24;
      double radius = REPLACED_MM * scale;
      points.add(new double[] {m[0] + radius * Math.cos(angle), m[1] + radius * Math.sin(angle)});
    }
    return points;
  }

  private double cost(double[] at, Numbered one, List<Numbered> all, List<double[]> covered) {
    double away = Math.hypot(at[0] - one.middle()[0], at[1] - one.middle()[1]);
    boolean mine = one.has(at);
    for (Numbered other : all) {
      if (!other.tooth().equals(one.tooth()) && other.has(at)) {
        return mine ? away + WRONG_SIDE_MM : Double.POSITIVE_INFINITY;
      }
    }
    if (mine) {
      return away;
    }
    boolean wrong =
        above ? Hull.contains(covered, at) : (at[1] > one.middle()[1]) != (plan.jaw() == Jaw.UPPER);
    return away + BESIDE_MM + (wrong ? WRONG_SIDE_MM : 0);
  }

  private void number(double[] at, Numbered one) {
    double size = sheet.numberMm();
    double wide = DIGITS_WIDE * size;
    double high = 2 * FIELD_SHARE * size;
    if (!one.has(at)) {
      double[] to = Hull.nearest(one.outline(), at);
      room.line(at, to);
      svg.append(
          String.format(
              Locale.ROOT,
              "<path class=\"leader\" d=\"M%.2f %.2fL%.2f %.2f\" stroke=\"#555\""
                  + " stroke-width=\"0.15\" fill=\"none\"/>%n",
              at[0],
              at[1],
              to[0],
              to[1]));
    }
    room.field(at, wide, high);
    svg.append(
        String.format(
            Locale.ROOT,
            "<rect x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" fill=\"#fff\"/>"
                + "<text data-tooth=\"%s\" class=\"number\" x=\"%.2f\" y=\"%.2f\""
                + " font-size=\"%.1f\" text-anchor=\"middle\">%s</text>%n",
            at[0] - wide / 2,
            at[1] - high / 2,
            wide,
            high,
            one.tooth(),
            at[0],
            at[1] + 0.36 * size,
            size,
            one.tooth().in(notation)));
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
      left + offset + (at[0] - low) * scale, top + padMm(sheet) + (highUp - at[1]) * scale
    };
  }

  private void line(Look look, Line line, String part) {
    path(look, line.points(), line.closed(), "", part);
    if (look == Look.REST) {
      line.points().forEach(p -> room.line(page(p), page(line.points().getFirst())));
    }
  }

  private void path(Look look, List<Vec3> points, boolean closed, String over, String part) {
    if (points.size() > 1) {
      String style = over.isEmpty() ? look.style() : look.style().replace("fill=\"none\"", over);
      String way = way(points, closed);
      svg.append(
          String.format(
              Locale.ROOT,
              "<path class=\"%s\"%s d=\"%s\" %s/>%n",
              look.key(),
              marked(part),
              way,
              style));
      svg.append(look.within(way));
    }
  }

  private String way(List<Vec3> points, boolean closed) {
    StringBuilder d = new StringBuilder();
    double[] before = page(closed ? points.getLast() : points.getFirst());
    for (Vec3 point : points) {
      double[] p = page(point);
      room.line(before, p);
      before = p;
      d.append(String.format(Locale.ROOT, "%s%.2f %.2f", d.isEmpty() ? "M" : "L", p[0], p[1]));
    }
    return closed ? d.append("Z").toString() : d.toString();
  }

  private void ring(Look look, Vec3 point, double radius, String part) {
    double[] p = page(point);
    if (look != Look.REPLACED) {
      room.field(p, 2 * radius, 2 * radius);
    }
    svg.append(
        String.format(
            Locale.ROOT,
            "<circle class=\"%s\"%s cx=\"%.2f\" cy=\"%.2f\" r=\"%.2f\" %s/>%n",
            look.key(),
            marked(part),
            p[0],
            p[1],
            radius,
            look.style()));
  }

  private void stop(Vec3 point, String part) {
    double[] p = page(point);
    room.field(p, 2 * Look.STOP_MM, 2 * Look.STOP_MM);
    svg.append(
        String.format(
            Locale.ROOT,
            "<path class=\"%s\"%s d=\"%s\" %s/>%n",
            Look.STOP.key(),
            marked(part),
            Look.stop(p[0], p[1], Look.STOP_MM),
            Look.STOP.style()));
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
}
