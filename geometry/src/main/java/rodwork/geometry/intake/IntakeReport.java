package rodwork.geometry.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.BoundaryLoop;

/**
 * What came in, what it was taken for, and what was mended.
 *
 * @param file the file's name
 * @param format the format that its content showed
 * @param inFile what the file holds
 * @param kept what became the cast
 * @param low corner of the cast's box with the least coordinates [mm]
 * @param high the opposite corner [mm]
 * @param unit the unit of length
 * @param edges how long its edges are
 * @param surface its area and pieces
 * @param loops its boundary loops, longest first
 * @param remarks what was noticed, in the order of the work
 */
public record IntakeReport(
    String file,
    String format,
    Counts inFile,
    Counts kept,
    Vec3 low,
    Vec3 high,
    UnitFinding unit,
    EdgeLengths edges,
    Surface surface,
    List<Loop> loops,
    List<Remark> remarks) {

  public IntakeReport {
    loops = List.copyOf(loops);
    remarks = List.copyOf(remarks);
  }

  /** Numbers of vertices and triangles. */
  public record Counts(int vertices, int triangles) {}

  /**
   * The surface as a whole.
   *
   * @param watertight whether it has no boundary
   * @param pieces number of its connected pieces
   * @param areaMm2 its area [mm²]
   * @param volumeMm3 what a watertight one holds [mm³]; null for an open one
   */
  public record Surface(
      boolean watertight, int pieces, double areaMm2, @Nullable Double volumeMm3) {}

  /**
   * One boundary loop.
   *
   * @param kind outer rim or hole
   * @param edges number of its edges
   * @param lengthMm its length [mm]
   * @param middle mean of its vertices [mm]
   */
  public record Loop(BoundaryLoop.Kind kind, int edges, double lengthMm, Vec3 middle) {}

  /** Longest side of the box [mm]. */
  public double spanMm() {
    Vec3 size = high.minus(low);
    return Math.max(size.x(), Math.max(size.y(), size.z()));
  }

  /** The remarks that call for a look by the user. */
  public List<Remark> warnings() {
    return remarks.stream().filter(r -> r.outcome() == RemarkKind.Outcome.WARNING).toList();
  }

  /** The report as a person reads it, one fact a line. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(
        Phrase.fill(
            "{file}: {format}, {vertices} vertices, {triangles} triangles.",
            file,
            format,
            inFile.vertices(),
            inFile.triangles()));
    Vec3 size = high.minus(low);
    lines.add(
        String.format(
            Locale.ROOT,
            "Extent %.1f × %.1f × %.1f mm; unit %s, %s.",
            size.x(),
            size.y(),
            size.z(),
            unit.unit().label(),
            why()));
    lines.add(surfaceLine());
    lines.add(
        Phrase.fill(
            "Edge length {where}: middle {median} mm, 95 in 100 below {p95} mm.",
            edges.nearTeeth() ? "near the teeth" : "over the whole surface",
            edges.medianMm(),
            edges.p95Mm()));
    remarks.forEach(r -> lines.add(r.line()));
    if (!kept.equals(inFile)) {
      lines.add(Phrase.fill("Kept: {} vertices, {} triangles.", kept.vertices(), kept.triangles()));
    }
    return lines;
  }

  private String why() {
    return switch (unit.evidence()) {
      case GIVEN -> "as given";
      case DECLARED -> "as the file declares";
      case SPAN -> "found from the span (an arch spans 40 to 90 mm)";
      case ASSUMED -> "assumed";
    };
  }

  private String surfaceLine() {
    if (surface.watertight()) {
      return Phrase.fill(
          "Watertight, area {area} mm², volume {volume} mm³.",
          surface.areaMm2(),
          surface.volumeMm3() == null ? 0.0 : surface.volumeMm3());
    }
    long rims = loops.stream().filter(l -> l.kind() == BoundaryLoop.Kind.RIM).count();
    return Phrase.fill(
        "Open shell, area {area} mm²; outer rims: {rims}, holes: {holes}.",
        surface.areaMm2(),
        rims,
        loops.size() - rims);
  }
}
