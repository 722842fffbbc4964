package rodwork.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.teeth.ToothHints;
import rodwork.anatomy.tooth.Tooth;
import rodwork.app.SphereCast;
import rodwork.app.operation.CaseCast;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.FoundTeeth;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.report.BenchWork;
import rodwork.app.report.CaseSaid;
import rodwork.app.report.ChartJson;
import rodwork.app.report.Json;
import rodwork.casework.store.CaseCode;
import rodwork.casework.store.CaseEdit;
import rodwork.casework.store.CaseFile;
import rodwork.casework.store.CaseStore;
import rodwork.casework.store.PartKind;
import rodwork.casework.store.PartName;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.io.LengthUnit;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Shared;

/** A case on the command line is understood as it was on the bench. */
class CaseSourceTest {
  @TempDir Path folder;

  @Test
  void unitAndDirectionsToldOnTheBenchHoldUnlessToldAnew() throws IOException {
    byte[] sphere = Files.readAllBytes(SphereCast.in(folder));
    CaseSource source =
        kept(
            "sphere.ply",
            sphere,
            Optional.of(LengthUnit.CENTIMETRE),
            CaseEdit.NONE,
            "\"up\":[0,0,2],\"front\":[0,1,0]");
    OpenedCast bench = source.open(CastOptions.NONE, Watch.NONE);
    assertThat(bench.mesh().vertex(0).length()).isCloseTo(10 * SphereCast.RADIUS_MM, within(0.5));
    assertThat(bench.frame().z().distance(Vec3.Z)).isLessThan(1e-9);
    assertThat(bench.frame().y().distance(Vec3.Y)).isLessThan(1e-9);
    OpenedCast anew =
        source.open(
            new CastOptions(
                Jaw.UNKNOWN, new FrameHints(null, Vec3.X), Optional.of(LengthUnit.MILLIMETRE)),
            Watch.NONE);
    assertThat(anew.mesh().vertex(0).length()).isCloseTo(SphereCast.RADIUS_MM, within(0.05));
    assertThat(anew.frame().z().distance(Vec3.Z)).isLessThan(1e-9);
    assertThat(anew.frame().y().distance(Vec3.X)).isLessThan(1e-9);
  }

  @Test
  void aPlanOfACaseStandsInTheFrameOfTheBench() throws IOException {
    CaseEdit chart =
        CaseEdit.NONE.put(
            CaseSaid.What.CHART.of(Jaw.LOWER),
            CaseSaid.bytes(ChartJson.of(Chart.missing(Jaw.LOWER, List.of(ToothNumber.of(35))))));
    byte[] scan = Files.readAllBytes(Shared.file("arches/lower-35.ply"));
    kept("lower-35.ply", scan, Optional.empty(), chart, "\"up\":null");
    Vec3 found = axis(plan());
    // Up as a person told it: 2 degrees off what is found.
    Vec3 up = found.plus(found.cross(Vec3.X).unit().times(Math.tan(Math.toRadians(2)))).unit();
    CaseStore store = CaseStore.existing(folder.resolve("store"));
    store.change(
        store.get(new CaseCode("A7")),
        "told",
        CaseEdit.NONE.put(
            BenchWork.name(Jaw.LOWER),
            CaseSaid.bytes(
                bench(Optional.empty(), "\"up\":[%s,%s,%s]".formatted(up.x(), up.y(), up.z())))));
    assertThat(axis(plan()).distance(up)).isLessThan(1e-5);
  }

  @Test
  void aPlanOfACaseKnowsTheOpposingScanThatTheCaseKeeps() throws IOException {
    Path lower = Shared.file("arches/lower-35.ply");
    OpenedCast cast = OpenCast.of(lower, CastOptions.NONE, Watch.NONE);
    Path antagonist = folder.resolve("antagonist.ply");
    TriangleMesh laid = mirrored(cast);
    MeshFiles.write(antagonist, moved(laid, new Vec3(4, 7, 12)), Watch.NONE);
    Path bite = folder.resolve("bite.ply");
    MeshFiles.write(bite, both(cast.mesh(), laid), Watch.NONE);
    String store = folder.resolve("store").toString();
    Shell made =
        Shell.run(
            "case",
            "new",
            "A7",
            "--store",
            store,
            "--missing",
            "35",
            "--lower",
            lower.toString(),
            "--opposing",
            antagonist.toString(),
            "--bite",
            bite.toString());
    assertThat(made.code()).as(made.err()).isEqualTo(0);
    String labels = Shared.file("arches/lower-35.labels.json").toString();
    Shell given =
        Shell.run(
            "plan",
            lower.toString(),
            "--missing",
            "35",
            "--labels",
            labels,
            "--opposing",
            antagonist.toString(),
            "--bite",
            bite.toString(),
            "--json",
            "-");
    Shell bare =
        Shell.run("plan", lower.toString(), "--missing", "35", "--labels", labels, "--json", "-");
    JsonNode kept = plan();
    assertThat(kept.get("findings")).isEqualTo(Json.read(given.out()).get("findings"));
    assertThat(kept.get("findings")).isNotEqualTo(Json.read(bare.out()).get("findings"));
  }

  /** The truth is what the bench itself finds from the same words. */
  @Test
  void teethThatWerePointedAtOnTheBenchAreThoseOfTheCase() throws IOException {
    byte[] scan = Files.readAllBytes(Shared.file("arches/lower-35.ply"));
    Chart chart = Chart.missing(Jaw.LOWER, List.of(ToothNumber.of(35)));
    CaseSource bare =
        kept("lower-35.ply", scan, Optional.empty(), CaseEdit.NONE, "\"up\":null,\"front\":null");
    OpenedCast cast = bare.open(CastOptions.NONE, Watch.NONE);
    FoundTeeth unaided =
        FoundTeeth.of(cast, new ToothHints(Set.of(35), List.of()), chart, null, Watch.NONE);
    Tooth molar = unaided.told().dentition().tooth(ToothNumber.of(36)).orElseThrow();
    // The first molar is called the premolar, as a person would who knows that it drifted.
    Vec3 top = FoundTeeth.onTop(cast.mesh(), molar);
    ToothHints said =
        new ToothHints(
            Set.of(36),
            List.of(new ToothHints.Point(35, top)),
            List.of(new ToothHints.Pin(35, top, 1)));
    FoundTeeth bench = FoundTeeth.of(cast, said, Chart.blank(Jaw.LOWER), null, Watch.NONE);
    assertThat(bench.told().dentition().standing()).contains(ToothNumber.of(35));
    String point = "[%s,%s,%s]".formatted(top.x(), top.y(), top.z());
    ObjectNode work = BenchWork.begun(Optional.empty());
    work.set(
        "bench",
        Json.read(
            "{\"document\":{\"teeth\":{\"missing\":[36],\"points\":[{\"tooth\":35,\"point\":%s}],\"pins\":[{\"tooth\":35,\"point\":%s,\"radiusMm\":1}]}}}"
                .formatted(point, point)));
    CaseStore store = CaseStore.existing(folder.resolve("store"));
    store.change(
        store.get(new CaseCode("A7")),
        "teeth",
        CaseEdit.NONE
            .put(CaseSaid.What.CHART.of(Jaw.LOWER), CaseSaid.bytes(ChartJson.of(bench.chart())))
            .put(BenchWork.name(Jaw.LOWER), CaseSaid.bytes(work)));
    String there = folder.resolve("store").toString();
    Shell shell = Shell.run("abutments", "A7", "--store", there, "--json", "-");
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    Shell plan = Shell.run("plan", "A7", "--store", there, "--json", "-");
    assertThat(plan.code()).as(plan.err()).isEqualTo(0);
    CaseFile file = store.get(new CaseCode("A7"));
    CaseSource source =
        new CaseSource(
            store,
            file,
            CaseCast.of(store, file, Jaw.UNKNOWN),
            CaseSaid.of(store, file, Jaw.LOWER),
            BenchWork.of(store, file, Jaw.LOWER));
    KnownTeethMixin nothing = new KnownTeethMixin();
    new CommandLine(nothing);
    CastTeeth told = source.teeth(nothing, source.open(CastOptions.NONE, Watch.NONE), Watch.NONE);
    assertThat(told.labelsOfFile()).isEqualTo(bench.told().labelsOfFile());
    assertThat(told.labelsOfFile()).isNotEqualTo(unaided.told().labelsOfFile());
    for (Shell one : List.of(shell, plan)) {
      assertThat(Json.read(one.out()).findParents("tooth"))
          .noneMatch(tooth -> tooth.get("tooth").asInt() == 36);
    }
  }

  /** The cast mirrored in a level plane over it: what a person could hold against it. */
  private static TriangleMesh mirrored(OpenedCast cast) {
    TriangleMesh mesh = cast.mesh();
    Vec3 up = cast.frame().z();
    double[] xyz = new double[3 * mesh.vertexCount()];
    int[] corners = new int[3 * mesh.triangleCount()];
    for (int v = 0; v < mesh.vertexCount(); v++) {
      double off = 1 - mesh.vertex(v).minus(cast.frame().origin()).dot(up);
      Vec3 p = mesh.vertex(v).plus(up.times(2 * off));
      xyz[3 * v] = p.x();
      xyz[3 * v + 1] = p.y();
      xyz[3 * v + 2] = p.z();
    }
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        corners[3 * t + 2 - k] = mesh.corner(t, k);
      }
    }
    return TriangleMesh.of(xyz, corners);
  }

  private static TriangleMesh moved(TriangleMesh mesh, Vec3 by) {
    double[] xyz = new double[3 * mesh.vertexCount()];
    for (int v = 0; v < mesh.vertexCount(); v++) {
      xyz[3 * v] = mesh.x(v) + by.x();
      xyz[3 * v + 1] = mesh.y(v) + by.y();
      xyz[3 * v + 2] = mesh.z(v) + by.z();
    }
    return TriangleMesh.of(xyz, mesh.copyOfCorners());
  }

  private static TriangleMesh both(TriangleMesh one, TriangleMesh other) {
    int n = one.vertexCount();
    double[] xyz = new double[3 * (n + other.vertexCount())];
    for (int v = 0; v < n + other.vertexCount(); v++) {
      Vec3 p = v < n ? one.vertex(v) : other.vertex(v - n);
      xyz[3 * v] = p.x();
      xyz[3 * v + 1] = p.y();
      xyz[3 * v + 2] = p.z();
    }
    return TriangleMesh.of(
        xyz,
        IntStream.concat(
                Arrays.stream(one.copyOfCorners()),
                Arrays.stream(other.copyOfCorners()).map(v -> v + n))
            .toArray());
  }

  private static Vec3 axis(JsonNode plan) {
    JsonNode axis = plan.get("axis");
    return new Vec3(axis.get(0).asDouble(), axis.get(1).asDouble(), axis.get(2).asDouble());
  }

  private JsonNode plan() throws IOException {
    Shell shell =
        Shell.run(
            "plan",
            "A7",
            "--store",
            folder.resolve("store").toString(),
            "--labels",
            Shared.file("arches/lower-35.labels.json").toString(),
            "--json",
            "-");
    assertThat(shell.code()).as(shell.err()).isEqualTo(0);
    return Json.read(shell.out());
  }

  private CaseSource kept(
      String name, byte[] scan, Optional<LengthUnit> unit, CaseEdit more, String frame)
      throws IOException {
    CaseStore store = CaseStore.open(folder.resolve("store"));
    CaseEdit edit =
        more.put(new PartName(PartKind.SCAN, Jaw.LOWER, name), scan)
            .put(BenchWork.name(Jaw.LOWER), CaseSaid.bytes(bench(unit, frame)));
    CaseFile file = store.create(new CaseCode("A7"), "test", edit);
    return new CaseSource(
        store,
        file,
        CaseCast.of(store, file, Jaw.UNKNOWN),
        CaseSaid.of(store, file, Jaw.LOWER),
        BenchWork.of(store, file, Jaw.LOWER));
  }

  private static ObjectNode bench(Optional<LengthUnit> unit, String frame) throws IOException {
    ObjectNode bench = BenchWork.begun(unit);
    bench.set("bench", Json.read("{\"document\":{\"frame\":{\"jaw\":\"lower\"," + frame + "}}}"));
    return bench;
  }
}
