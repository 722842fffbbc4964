package rodwork.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.intake.Cast;
import rodwork.geometry.intake.Intake;
import rodwork.geometry.intake.IntakeOptions;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.overhang.Overhang;
import rodwork.geometry.overhang.OverhangLimits;
import rodwork.survey.Gauges;
import rodwork.survey.SurveyRules;
import rodwork.survey.Surveyor;

/**
 * Rodwork's part of the side-by-side run. {@code export} writes the mesh and the points that all
 * read; {@code run} does Rodwork's share of the work and prints one line a task; {@code table}
 * prints what all have left.
 *
 * <p>The exported mesh is {@link Casts#REAL}, turned so that its occlusal direction is +z and
 * rounded to floats; Rodwork reads it back like the others, so all work on the same numbers.
 */
final class SideBySide {
  private static final int NEAR_POINTS = 100_000;
  private static final int POINTS_ANYWHERE = 20_000;
  private static final String LARGE = "1M";
  private static final double WARM_UP_S = 2.5;

  private final Path folder;
  private final int cores;
  private final int repeats;
  private final double warmUpSeconds;

  private SideBySide(Path folder, int cores, int repeats, double warmUpSeconds) {
    this.folder = folder;
    this.cores = cores;
    this.repeats = repeats;
    this.warmUpSeconds = warmUpSeconds;
  }

  /**
   * Arguments: {@code export FOLDER [CAST]}; {@code run FOLDER CORES REPEATS [WARM_UP_SECONDS]},
   * where the cores are what the common pool was started with; or {@code table FOLDER}.
   */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[1]);
    switch (args[0]) {
      case "export" -> export(folder, args.length > 2 ? args[2] : Casts.REAL);
      case "run" -> {
        double warmUp = args.length > 4 ? Double.parseDouble(args[4]) : WARM_UP_S;
        new SideBySide(folder, Integer.parseInt(args[2]), Integer.parseInt(args[3]), warmUp).run();
      }
      case "table" -> System.out.println(table(folder));
      default -> throw new IllegalArgumentException("export, run or table, not " + args[0]);
    }
  }

  /** The rows that a run has left in a folder. */
  static List<Row> rows(Path folder) throws IOException {
    Path lines = folder.resolve("side-by-side.tsv");
    return Files.exists(lines) ? Row.ofLines(Files.readAllLines(lines)) : List.of();
  }

  /** Table, who won, and whether all found the same. */
  static String table(Path folder) throws IOException {
    List<Row> rows = rows(folder);
    StringBuilder out = new StringBuilder(Tables.besides(rows)).append('\n');
    Tables.winners(rows).forEach(s -> out.append("- ").append(s).append('\n'));
    Agreement.sentences(folder).forEach(s -> out.append("- ").append(s).append('\n'));
    if (!rows.isEmpty()) {
      Files.readAllLines(folder.resolve("side-by-side.tsv")).stream()
          .filter(line -> line.startsWith("left out"))
          .forEach(line -> out.append("- ").append(line).append('\n'));
    }
    return out.toString();
  }

  /** Writes mesh.bin, near.bin, anywhere.bin, large.stl and size.txt. */
  static void export(Path folder, String castName) throws IOException {
    Cast cast = Intake.of(Casts.raw(castName), IntakeOptions.usual(), Watch.NONE);
    TriangleMesh mesh = cast.mesh();
    if (castName.equals(Casts.REAL)) {
      mesh = turned(mesh, Arch.of(cast.topology(), Jaw.LOWER, FrameHints.NONE).frame());
    }
    Files.createDirectories(folder);
    Exchange.writeMesh(folder.resolve("mesh.bin"), mesh);
    Files.writeString(folder.resolve("size.txt"), castName);
    Exchange.writeFloats(folder.resolve("near.bin"), Queries.nearPoints(mesh, NEAR_POINTS));
    Exchange.writeFloats(
        folder.resolve("anywhere.bin"), Queries.pointsAnywhere(mesh, POINTS_ANYWHERE));
    MeshFiles.write(folder.resolve("large.stl"), MadeCast.of(Casts.triangles(LARGE)), Watch.NONE);
  }

  private static TriangleMesh turned(TriangleMesh mesh, ArchFrame frame) {
    double[] xyz = mesh.copyOfCoordinates();
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vec3 p = frame.toArch(mesh.vertex(v).minus(frame.origin()));
      xyz[3 * v] = (float) p.x();
      xyz[3 * v + 1] = (float) p.y();
      xyz[3 * v + 2] = (float) p.z();
    }
    return TriangleMesh.of(xyz, mesh.copyOfCorners());
  }

  private void run() throws IOException {
    String size = Files.readString(folder.resolve("size.txt"));
    TriangleMesh mesh = Exchange.readMesh(folder.resolve("mesh.bin"));
    MeshTopology topology = MeshTopology.of(mesh);
    SurveyRules rules = SurveyRules.SHIPPED;
    OverhangLimits limits =
        new OverhangLimits(
            rules.cap().value(), rules.shankRadius().value(), rules.shankReach().value());
    Overhang.Caster caster = new Overhang.Caster(topology, BoundaryLoops.of(topology));
    Surveyor surveyor = Surveyor.of(topology, AnatomicSurface.whole(mesh), null, rules);
    TriangleTree tree = TriangleTree.of(mesh);

    Overhang field =
        measure(
            "hidden vertices",
            size,
            "Rodwork, undercut depths",
            () -> caster.along(Vec3.Z, limits, Watch.NONE),
            found -> count(under(found)) + " hidden, each with its depth");
    Files.write(folder.resolve("hidden-rodwork.bin"), under(field));
    measure(
        "hidden vertices",
        size,
        "Rodwork, whole survey",
        () -> surveyor.survey(Vec3.Z, Gauges.COMMON, Watch.NONE),
        survey ->
            "depths, %d survey lines, %d marks of three gauges"
                .formatted(survey.lines().size(), survey.marks().size()));
    byte[] rays =
        measure(
            "hidden vertices",
            size,
            "Rodwork, rays to its tree, tree at hand",
            () -> Queries.hidden(tree, Vec3.Z),
            found -> count(found) + " hidden");
    Files.write(folder.resolve("hidden-rodwork-rays.bin"), rays);
    measure("tree built", size, "Rodwork", () -> TriangleTree.of(mesh), built -> "on one core");
    for (String where : new String[] {"near", "anywhere"}) {
      float[] points = Exchange.readFloats(folder.resolve(where + ".bin"));
      measure(
          "closest points " + where,
          size,
          "Rodwork",
          () -> Queries.distances(tree, points),
          SideBySide::mean);
    }
    if (cores == 1) {
      measure(
          "STL read and welded",
          LARGE,
          "Rodwork",
          () -> MeshFiles.read(folder.resolve("large.stl"), Watch.NONE).toMesh(),
          read -> read.vertexCount() + " vertices");
    }
  }

  /** Warms the work up, measures it, prints the line, and gives the last result. */
  private <T> T measure(
      String task, String size, String who, Supplier<T> work, Function<T, String> note) {
    long warmUntil = System.nanoTime() + (long) (1e9 * warmUpSeconds);
    T result = work.get();
    while (System.nanoTime() < warmUntil) {
      result = work.get();
    }
    double[] samples = new double[repeats];
    for (int i = 0; i < repeats; i++) {
      long start = System.nanoTime();
      result = work.get();
      samples[i] = (System.nanoTime() - start) / 1e6;
    }
    String times =
        Arrays.stream(samples)
            .mapToObj(ms -> String.format(Locale.ROOT, "%.3f", ms))
            .collect(Collectors.joining(" "));
    System.out.println(
        String.join(
            "\t", "row", task, size, who, Integer.toString(cores), note.apply(result), times));
    return result;
  }

  private static byte[] under(Overhang field) {
    byte[] under = new byte[field.vertexCount()];
    for (int v = 0; v < under.length; v++) {
      under[v] = (byte) (field.depth(v) > 0 ? 1 : 0);
    }
    return under;
  }

  private static int count(byte[] marked) {
    int count = 0;
    for (byte m : marked) {
      count += m;
    }
    return count;
  }

  private static String mean(float[] distances) {
    double sum = 0;
    for (float d : distances) {
      sum += d;
    }
    return String.format(Locale.ROOT, "mean %.5f mm", sum / distances.length);
  }
}
