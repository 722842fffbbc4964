package rodwork.survey;

import java.util.List;
import rodwork.anatomy.AnatomicSurface;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/** Surveys of plain bodies, all of them anatomic, for tests. */
final class Surveys {
  private Surveys() {}

  static Surveyor surveyor(TriangleMesh mesh) {
    return Surveyor.of(
        MeshTopology.of(mesh), AnatomicSurface.whole(mesh), null, SurveyRules.SHIPPED);
  }

  static Survey of(TriangleMesh mesh, Vec3 axis) {
    return surveyor(mesh).survey(axis, Gauges.COMMON, Watch.NONE);
  }

  static double length(List<SurveyLine> lines, SurveyLine.Kind kind) {
    return lines.stream().filter(l -> l.kind() == kind).mapToDouble(SurveyLine::lengthMm).sum();
  }

  static double markLength(Survey survey, double gauge) {
    return survey.marks().stream()
        .filter(m -> m.gaugeMm() == gauge)
        .mapToDouble(GaugeMark::lengthMm)
        .sum();
  }
}
