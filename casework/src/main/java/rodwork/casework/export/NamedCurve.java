package rodwork.casework.export;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rodwork.geometry.Vec3;
import rodwork.survey.GaugeMark;
import rodwork.survey.Survey;
import rodwork.survey.SurveyLine;

/**
 * A curve of a survey, named for other programs.
 *
 * @param kind what it is
 * @param name such as {@code SURVEY_LINE} or {@code GAUGE_0.25_MM}: layer or object in a file
 * @param points [mm]
 * @param closed whether the last point joins the first
 */
record NamedCurve(Kind kind, String name, List<Vec3> points, boolean closed) {
  /** Kinds of curve, each with its colour of a vertex and of a DXF layer (AutoCAD Color Index). */
  enum Kind {
    SURVEY_LINE(0x1D1C1A, 7),
    BAND_EDGE(0x6B6459, 8),
    GAUGE_MARK(0x9A3B1E, 1);

    private final int colour;
    private final int index;

    Kind(int colour, int index) {
      this.colour = colour;
      this.index = index;
    }

    /** Red, green, blue, 8 bits each. */
    int colour() {
      return colour;
    }

    int index() {
      return index;
    }
  }

  NamedCurve {
    points = List.copyOf(points);
  }

  /** Marks first, so that survey lines are drawn over them. */
  static List<NamedCurve> of(Survey survey, PathFrame frame) {
    List<NamedCurve> curves = new ArrayList<>();
    for (GaugeMark mark : survey.marks()) {
      curves.add(
          new NamedCurve(
              Kind.GAUGE_MARK,
              String.format(Locale.ROOT, "GAUGE_%.2f_MM", mark.gaugeMm()),
              mark.points().stream().map(frame::point).toList(),
              mark.closed()));
    }
    for (SurveyLine line : survey.lines()) {
      boolean plain = line.kind() == SurveyLine.Kind.LINE;
      curves.add(
          new NamedCurve(
              plain ? Kind.SURVEY_LINE : Kind.BAND_EDGE,
              plain ? "SURVEY_LINE" : line.kind().name(),
              line.points().stream().map(frame::point).toList(),
              line.closed()));
    }
    return curves;
  }

  /** The points, with the first once more at the end of a closed curve. */
  List<Vec3> ring() {
    if (!closed || points.isEmpty()) {
      return points;
    }
    List<Vec3> ring = new ArrayList<>(points);
    ring.add(points.getFirst());
    return ring;
  }
}
