package rodwork.demo;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.solid.IsoSurface;

/**
 * A demo cast with all that is known of it by construction.
 *
 * <p>The mesh is closed, in mm, teeth up (+Z occlusal, +Y anterior), and the same on every run. The
 * casts are invented; they show no person.
 */
public final class DemoCast {
  /** Label of a triangle of the plaster base. */
  public static final int BASE = -1;

  /** Label of a triangle of the gum, the palate or the floor of the mouth. */
  public static final int GUM = 0;

  private static final Vec3 MIDDLE = new Vec3(0, -20, 0);
  private static final long NOISE_SEED = 20_250_910;

  private final Jaw jaw;
  private final TriangleMesh mesh;
  private final byte[] labels;
  private final List<DemoTooth> teeth;
  private final List<Integer> missing;

  private DemoCast(
      Jaw jaw, TriangleMesh mesh, byte[] labels, List<DemoTooth> teeth, List<Integer> missing) {
    this.jaw = jaw;
    this.mesh = mesh;
    this.labels = labels;
    this.teeth = List.copyOf(teeth);
    this.missing = List.copyOf(missing);
  }

  /** The lower cast: Kennedy class II, modification 1. Takes a few seconds. */
  public static DemoCast lower() {
    return make(Jaw.LOWER, LowerCast.layout(), LowerCast.CELL_MM);
  }

  /** The upper cast: Kennedy class III, modification 1. Takes a few seconds. */
  public static DemoCast upper() {
    return make(Jaw.UPPER, UpperCast.layout(), UpperCast.CELL_MM);
  }

  private static DemoCast make(Jaw jaw, ArchLayout layout, double cellMm) {
    CastField field = jaw == Jaw.LOWER ? LowerCast.field(layout) : UpperCast.field(layout);
    TriangleMesh smooth =
        IsoSurface.of(field, cellMm, field::detail, new Vec3(0, MIDDLE.y(), field.bottomZ() + 2));
    TriangleMesh mesh = Noise.on(smooth, NOISE_SEED);
    byte[] labels = labels(field, smooth);
    List<DemoTooth> teeth =
        layout.teeth().parallelStream()
            .map(
                t ->
                    new DemoTooth(
                        t.fdi(),
                        t.origin(),
                        t.axis(),
                        t.mesial(),
                        t.facial(),
                        t.crown().size.length(),
                        t.crown().size.md(),
                        t.crown().size.bl(),
                        MarginLine.of(t, field)))
            .toList();
    return new DemoCast(jaw, mesh, labels, teeth, missing(layout));
  }

  /** What {@link #missing()} tells, without the cast. */
  public static List<Integer> missing(Jaw jaw) {
    return missing(jaw == Jaw.LOWER ? LowerCast.layout() : UpperCast.layout());
  }

  private static List<Integer> missing(ArchLayout layout) {
    List<Integer> missing = new ArrayList<>();
    layout.spaces().forEach(space -> missing.addAll(space.fdis()));
    Collections.sort(missing);
    return missing;
  }

  private static byte[] labels(CastField field, TriangleMesh mesh) {
    byte[] labels = new byte[mesh.triangleCount()];
    IntStream.range(0, labels.length)
        .parallel()
        .forEach(
            t -> {
              Vec3 c = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
              labels[t] = (byte) field.labelAt(c.x(), c.y(), c.z());
            });
    return labels;
  }

  public Jaw jaw() {
    return jaw;
  }

  public TriangleMesh mesh() {
    return mesh;
  }

  /** The FDI number of the tooth that a triangle belongs to, {@link #GUM} or {@link #BASE}. */
  public int label(int triangle) {
    return labels[triangle];
  }

  /** The teeth that stand, from −X to +X. */
  public List<DemoTooth> teeth() {
    return teeth;
  }

  /**
   * A tooth by its number.
   *
   * @throws IllegalArgumentException if it does not stand
   */
  public DemoTooth tooth(int fdi) {
    return teeth.stream()
        .filter(t -> t.fdi() == fdi)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("tooth " + fdi + " is missing"));
  }

  /** FDI numbers of the missing teeth; third molars are absent and not counted. */
  public List<Integer> missing() {
    return missing;
  }

  /** The true arch frame: the reference orientation without uncertainty. */
  public ArchFrame frame() {
    return new ArchFrame(MIDDLE, Vec3.Y, Vec3.Z, jaw, 0, 0);
  }
}
