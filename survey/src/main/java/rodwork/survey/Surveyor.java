package rodwork.survey;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.BoundaryLoops;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.VertexNormals;
import rodwork.geometry.overhang.Overhang;
import rodwork.geometry.overhang.OverhangLimits;

/**
 * Surveys one cast at any number of paths.
 *
 * <p>What belongs to the cast alone (neighbours, averaged normals, boundaries) is made once; each
 * survey is immutable, and several may run at the same time.
 */
public final class Surveyor {
  private final MeshTopology topology;
  private final AnatomicSurface surface;
  private final @Nullable ArchFrame frame;
  private final SurveyRules rules;
  private final VertexNormals normals;
  private final Overhang.Caster caster;
  private final OverhangLimits limits;
  private volatile @Nullable Overhang reference;

  private Surveyor(
      MeshTopology topology,
      AnatomicSurface surface,
      @Nullable ArchFrame frame,
      SurveyRules rules,
      VertexNormals normals,
      Overhang.Caster caster) {
    this.topology = topology;
    this.surface = surface;
    this.frame = frame;
    this.rules = rules;
    this.normals = normals;
    this.caster = caster;
    this.limits =
        new OverhangLimits(
            rules.cap().value(), rules.shankRadius().value(), rules.shankReach().value());
  }

  /** A surveyor of an arch whose frame is known. */
  public static Surveyor of(Arch arch, SurveyRules rules) {
    return of(arch.topology(), arch.surface(), arch.frame(), rules);
  }

  /**
   * A surveyor of a cast whose frame may not be known: then only an axis can be surveyed, and
   * nothing is said about the reference orientation.
   */
  public static Surveyor of(
      MeshTopology topology,
      AnatomicSurface surface,
      @Nullable ArchFrame frame,
      SurveyRules rules) {
    return new Surveyor(
        topology,
        surface,
        frame,
        rules,
        VertexNormals.of(topology, rules.normalScale().value()),
        new Overhang.Caster(topology, BoundaryLoops.of(topology)));
  }

  /** The same cast with another frame; nothing that belongs to the mesh is made again. */
  public Surveyor withFrame(ArchFrame other) {
    return new Surveyor(topology, surface, other, rules, normals, caster);
  }

  /**
   * A survey at a tilt.
   *
   * @throws IllegalStateException if the frame of the cast is not known
   */
  public Survey survey(Tilt tilt, Gauges gauges, Watch watch) {
    ArchFrame known = frame;
    if (known == null) {
      throw new IllegalStateException("a tilt needs the arch frame; survey an axis instead");
    }
    return survey(tilt.axis(known), gauges, watch);
  }

  /**
   * A survey along an axis.
   *
   * @param axis withdrawal axis in the scan frame, from tissue to the occlusal side; any length but
   *     0
   */
  public Survey survey(Vec3 axis, Gauges gauges, Watch watch) {
    Overhang overhang = caster.along(axis, limits, watch);
    IntPredicate anatomic = t -> !surface.isBase(t);
    GaugeMarks tracer = new GaugeMarks(topology, overhang, rules);
    // Lines and each gauge are traced side by side; they share nothing but the overhang.
    int sizes = gauges.sizesMm().size();
    SurveyLines[] lines = new SurveyLines[1];
    List<List<GaugeMark>> marks = new ArrayList<>(Collections.nCopies(sizes, List.of()));
    IntStream.rangeClosed(0, sizes)
        .parallel()
        .forEach(
            i -> {
              if (i == sizes) {
                lines[0] = SurveyLines.trace(topology, normals, anatomic, overhang, rules, watch);
              } else {
                marks.set(i, tracer.trace(gauges.sizesMm().get(i), anatomic, watch));
              }
            });
    return new Survey(
        this,
        overhang,
        gauges,
        lines[0].lines(),
        lines[0].hidden(),
        marks.stream().flatMap(List::stream).toList());
  }

  /**
   * The depths alone along an axis, as exact as in a whole survey: it has no lines and no marks.
   * For a picture that moves.
   *
   * @param axis withdrawal axis in the scan frame, from tissue to the occlusal side; any length but
   *     0
   */
  public Survey field(Vec3 axis, Gauges gauges, Watch watch) {
    return new Survey(this, caster.along(axis, limits, watch), gauges, List.of(), 0, List.of());
  }

  /**
   * The cast seen along an axis, for one who asks at a few places.
   *
   * @param axis withdrawal axis in the scan frame; any length but 0
   */
  public Overhang probe(Vec3 axis, Watch watch) {
    return caster.sparsely(axis, limits, watch);
  }

  /**
   * A survey along an axis for one who reads a few places of it: no lines, no marks, and each depth
   * is found when it is asked for, as exact as in a whole survey.
   *
   * @param axis withdrawal axis in the scan frame, from tissue to the occlusal side; any length but
   *     0
   */
  public Survey places(Vec3 axis, Gauges gauges, Watch watch) {
    return new Survey(this, caster.sparsely(axis, limits, watch), gauges, List.of(), 0, List.of());
  }

  /** The overhang at the reference orientation; null where the frame is not known. */
  @Nullable Overhang reference() {
    ArchFrame known = frame;
    Overhang there = reference;
    if (there == null && known != null) {
      there = caster.along(known.z(), limits, Watch.NONE);
      reference = there;
    }
    return there;
  }

  public MeshTopology topology() {
    return topology;
  }

  public AnatomicSurface surface() {
    return surface;
  }

  public @Nullable ArchFrame frame() {
    return frame;
  }

  public SurveyRules rules() {
    return rules;
  }

  /** Normals of all vertices, averaged over the scale of the rules. */
  public VertexNormals normals() {
    return normals;
  }
}
