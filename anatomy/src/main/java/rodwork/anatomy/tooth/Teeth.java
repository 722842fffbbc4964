package rodwork.anatomy.tooth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * All teeth of an arch, measured. Immutable.
 *
 * @param byNumber from the patient's right to left
 * @param tooSmall numbers with a label, but with too little surface to be measured
 * @param handedness share of canines and back teeth on the side of the frame where their number
 *     puts them [0 to 1]: about 0 on a mirrored scan, or where upper was taken for lower
 */
public record Teeth(
    SortedMap<ToothNumber, Tooth> byNumber, SortedSet<ToothNumber> tooSmall, double handedness) {
  /** A crown with less surface than this is a slip of the labels [mm²]. */
  public static final double LEAST_AREA_MM2 = 8;

  public Teeth {
    byNumber = Collections.unmodifiableSortedMap(new TreeMap<>(byNumber));
    tooSmall = Collections.unmodifiableSortedSet(new TreeSet<>(tooSmall));
  }

  /**
   * Measures the teeth of one jaw.
   *
   * @param jaw which numbers count; labels of the other jaw are left out
   * @param watch stops the work
   */
  public static Teeth of(Arch arch, ToothLabels labels, Jaw jaw, Watch watch) {
    if (labels.triangleCount() != arch.mesh().triangleCount()) {
      throw new IllegalArgumentException(
          "labels of "
              + labels.triangleCount()
              + " triangles, the cast has "
              + arch.mesh().triangleCount());
    }
    CrownPatch[] patches = CrownPatch.all(arch.topology(), labels);
    SortedMap<ToothNumber, CrownPatch> crowns = new TreeMap<>();
    SortedMap<ToothNumber, Vec3> middles = new TreeMap<>();
    SortedSet<ToothNumber> tooSmall = new TreeSet<>();
    for (int fdi = 0; fdi < patches.length; fdi++) {
      CrownPatch patch = patches[fdi];
      if (patch != null && ToothNumber.of(fdi).jaw() == jaw) {
        if (patch.areaMm2() < LEAST_AREA_MM2) {
          tooSmall.add(ToothNumber.of(fdi));
        } else {
          crowns.put(ToothNumber.of(fdi), patch);
          middles.put(ToothNumber.of(fdi), patch.centroid());
        }
      }
    }
    ArchLine line = new ArchLine(arch.frame(), middles);
    MarginTracer tracer = new MarginTracer(arch.topology(), labels);
    Map<ToothNumber, Tooth> alone = new ConcurrentHashMap<>();
    crowns.entrySet().parallelStream()
        .forEach(
            crown -> {
              watch.check();
              Tooth tooth = measure(crown.getKey(), crown.getValue(), tracer, line, arch.frame());
              if (tooth != null) {
                alone.put(crown.getKey(), tooth);
              }
            });
    for (ToothNumber number : crowns.keySet()) {
      if (!alone.containsKey(number)) {
        tooSmall.add(number);
      }
    }
    return new Teeth(neighboured(new TreeMap<>(alone)), tooSmall, line.handedness());
  }

  public Optional<Tooth> tooth(ToothNumber number) {
    return Optional.ofNullable(byNumber.get(number));
  }

  /** The tooth that a triangle belongs to. */
  public Optional<Tooth> at(int triangle) {
    return byNumber.values().stream().filter(t -> t.has(triangle)).findFirst();
  }

  private static @Nullable Tooth measure(
      ToothNumber number, CrownPatch crown, MarginTracer tracer, ArchLine line, ArchFrame frame) {
    GingivalMargin margin = tracer.of(crown);
    if (margin == null) {
      return null;
    }
    Vec3 outward = line.outward(number);
    Vec3 axis = CrownAxis.of(number, crown, margin, outward, frame.z());
    Vec3 facial = outward.across(axis).unit();
    Vec3 along = axis.cross(facial);
    Vec3 mesial = along.dot(line.mesial(number)) >= 0 ? along : along.times(-1);
    ToothAxes axes = new ToothAxes(crown.centroid(), mesial, facial, axis);

    List<Vec3> outline = outline(crown);
    double[] reach = {1e9, -1e9, 1e9, -1e9};
    for (Vec3 p : outline) {
      Vec3 q = axes.toTooth(p);
      reach[0] = Math.min(reach[0], q.x());
      reach[1] = Math.max(reach[1], q.x());
      reach[2] = Math.min(reach[2], q.y());
      reach[3] = Math.max(reach[3], q.y());
    }
    double width = Math.max(0.5, reach[1] - reach[0]);
    double depth = Math.max(0.5, reach[3] - reach[2]);
    axes = axes.at(axes.toScan(new Vec3((reach[0] + reach[1]) / 2, (reach[2] + reach[3]) / 2, 0)));
    CrownHeights first = heights(axes, width, depth, margin, outline);
    axes = axes.at(axes.toScan(new Vec3(0, 0, first.margin(0, 1))));
    CrownHeights heights = heights(axes, width, depth, margin, outline);
    CrownSize size =
        new CrownSize(
            heights.top(0, 1) - heights.margin(0, 1),
            heights.top(0, -1) - heights.margin(0, -1),
            width,
            depth);
    return new Tooth(
        number, crown, margin, axes, size, heights, Optional.empty(), Optional.empty());
  }

  private static CrownHeights heights(
      ToothAxes axes, double width, double depth, GingivalMargin margin, List<Vec3> outline) {
    return new CrownHeights(
        shares(axes, width, depth, margin.points()), shares(axes, width, depth, outline));
  }

  private static List<Vec3> shares(ToothAxes axes, double width, double depth, List<Vec3> points) {
    List<Vec3> shares = new ArrayList<>(points.size());
    for (Vec3 p : points) {
      Vec3 q = axes.toTooth(p);
      shares.add(new Vec3(q.x() / (width / 2), q.y() / (depth / 2), q.z()));
    }
    return shares;
  }

  /** Vertices inside the crown and middles of its border edges: the zigzag of the border is out. */
  private static List<Vec3> outline(CrownPatch crown) {
    TriangleMesh mesh = crown.topology().mesh();
    List<Vec3> points = new ArrayList<>();
    Arrays.stream(crown.innerVertices()).mapToObj(mesh::vertex).forEach(points::add);
    for (int t : crown.triangles()) {
      for (int k = 0; k < 3; k++) {
        int other = crown.topology().neighbour(t, k);
        if (other < 0 || !crown.within().get(other)) {
          points.add(
              mesh.vertex(mesh.corner(t, k))
                  .plus(mesh.vertex(mesh.corner(t, (k + 1) % 3)))
                  .times(0.5));
        }
      }
    }
    return points;
  }

  private static SortedMap<ToothNumber, Tooth> neighboured(SortedMap<ToothNumber, Tooth> alone) {
    List<Tooth> row = List.copyOf(alone.values());
    Map<ToothNumber, Neighbour> toLeft = new HashMap<>();
    Map<ToothNumber, Neighbour> toRight = new HashMap<>();
    for (int i = 0; i + 1 < row.size(); i++) {
      Tooth a = row.get(i);
      Tooth b = row.get(i + 1);
      Gap gap = Gap.between(a.crown(), b.crown());
      Vec3 at = gap.from().plus(gap.to()).times(0.5);
      toLeft.put(a.number(), new Neighbour(b.number(), gap.touches(), gap.mm(), at));
      toRight.put(b.number(), new Neighbour(a.number(), gap.touches(), gap.mm(), at));
    }
    SortedMap<ToothNumber, Tooth> all = new TreeMap<>();
    for (Tooth tooth : row) {
      Optional<Neighbour> left = Optional.ofNullable(toLeft.get(tooth.number()));
      Optional<Neighbour> right = Optional.ofNullable(toRight.get(tooth.number()));
      boolean onRight = tooth.number().side() == Side.RIGHT;
      all.put(tooth.number(), tooth.withNeighbours(onRight ? left : right, onRight ? right : left));
    }
    return all;
  }
}
