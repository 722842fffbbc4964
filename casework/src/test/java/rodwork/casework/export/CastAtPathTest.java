package rodwork.casework.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.anatomy.AnatomicSurface;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.io.RawMesh;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Bodies;
import rodwork.survey.Gauges;
import rodwork.survey.Survey;
import rodwork.survey.SurveyRules;
import rodwork.survey.Surveyor;

/** The files are read back, and the cast in them is surveyed again: along +Z it is the same. */
class CastAtPathTest {
  private static final Vec3 AXIS = new Vec3(0.1, -0.2, 1).unit();

  @TempDir Path folder;

  private static Survey survey(TriangleMesh mesh, Vec3 axis) {
    return Surveyor.of(
            MeshTopology.of(mesh), AnatomicSurface.whole(mesh), null, SurveyRules.SHIPPED)
        .survey(axis, Gauges.COMMON, Watch.NONE);
  }

  private Survey written() {
    TriangleMesh mesh = Bodies.moved(Bodies.sphere(4, 0.3), new Vec3(12, -7, 3));
    Survey survey = survey(mesh, AXIS);
    PathFrame frame = PathFrame.of(new Vec3(10, -5, 2), new Vec3(0.2, 1, 0), AXIS);
    CastAtPath.write(folder, survey, frame, "scan.stl", "0".repeat(64), Watch.NONE);
    return survey;
  }

  @Test
  void theCastSurveyedAgainHasTheSameDepthsLinesAndMarks() {
    Survey before = written();
    RawMesh read = MeshFiles.read(folder.resolve("cast.ply"), Watch.NONE);
    TriangleMesh mesh = read.toMesh();
    Survey after = survey(mesh, Vec3.Z);
    int deep = 0;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      assertThat(after.depth(v)).isCloseTo(before.depth(v), offset(1e-6));
      deep += after.depth(v) > 0.25 ? 1 : 0;
    }
    assertThat(deep).as("vertices with undercut").isGreaterThan(100);
    assertThat(after.lines()).hasSameSizeAs(before.lines()).isNotEmpty();
    assertThat(after.lines().getFirst().lengthMm())
        .isCloseTo(before.lines().getFirst().lengthMm(), offset(1e-4));
    assertThat(read.hasVertexColours()).isTrue();
    assertThat(MeshFiles.read(folder.resolve("cast.stl"), Watch.NONE).toMesh().triangleCount())
        .isEqualTo(mesh.triangleCount());
  }

  @Test
  void linesLieWhereTheyLayAndTheMatrixLeadsBackToTheScan() throws IOException {
    Survey before = written();
    JsonNode json = new ObjectMapper().readTree(Files.readString(folder.resolve("path.json")));
    List<Vec3> obj = new ArrayList<>();
    int elements = 0;
    for (String line : Files.readAllLines(folder.resolve("lines.obj"))) {
      String[] words = line.split(" ", -1);
      if (words[0].equals("v")) {
        obj.add(
            new Vec3(
                Double.parseDouble(words[1]),
                Double.parseDouble(words[2]),
                Double.parseDouble(words[3])));
      }
      elements += words[0].equals("l") ? 1 : 0;
    }
    List<Vec3> scan = new ArrayList<>();
    before.marks().forEach(mark -> scan.addAll(mark.points()));
    before.lines().forEach(line -> scan.addAll(line.points()));
    assertThat(elements).isEqualTo(before.marks().size() + before.lines().size());
    assertThat(obj).hasSameSizeAs(scan);
    for (int i = 0; i < obj.size(); i++) {
      assertThat(moved(json.get("pathToScan"), obj.get(i)).distance(scan.get(i))).isLessThan(1e-4);
      assertThat(moved(json.get("scanToPath"), scan.get(i)).distance(obj.get(i))).isLessThan(1e-4);
    }
    assertThat(moved(json.get("scanToPath"), new Vec3(10, -5, 2)).length()).isLessThan(1e-12);
  }

  private static Vec3 moved(JsonNode matrix, Vec3 p) {
    double[] out = new double[3];
    for (int i = 0; i < 3; i++) {
      JsonNode row = matrix.get(i);
      out[i] =
          row.get(0).asDouble() * p.x()
              + row.get(1).asDouble() * p.y()
              + row.get(2).asDouble() * p.z()
              + row.get(3).asDouble();
    }
    return new Vec3(out[0], out[1], out[2]);
  }

  /** Groups of a code and a value, each on a line of its own. */
  @Test
  void theDxfIsPairsOfCodesAndValuesWithEveryPoint() throws IOException {
    Survey before = written();
    List<String> lines = Files.readAllLines(folder.resolve("lines.dxf"));
    assertThat(lines.size() % 2).isZero();
    int vertices = 0;
    int polylines = 0;
    for (int i = 0; i < lines.size(); i += 2) {
      assertThat(Integer.parseInt(lines.get(i).strip())).isBetween(0, 70);
      vertices += lines.get(i + 1).equals("VERTEX") ? 1 : 0;
      polylines += lines.get(i + 1).equals("POLYLINE") ? 1 : 0;
    }
    assertThat(polylines).isEqualTo(before.marks().size() + before.lines().size());
    assertThat(vertices)
        .isEqualTo(
            before.marks().stream().mapToInt(m -> m.points().size()).sum()
                + before.lines().stream().mapToInt(l -> l.points().size()).sum());
    assertThat(lines).contains("GAUGE_0.25_MM", "EOF");
  }
}
