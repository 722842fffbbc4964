package rodwork.design.load;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Firmness;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.abutment.Abutment;
import rodwork.design.plan.CoveredGum;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.rules.Range;

/**
 * Where a plan bears on its cast, before anything is said about stiffness. Immutable; places are in
 * the arch frame seen from above [mm].
 *
 * @param teeth that carry, from the patient's right to left
 * @param rests of the plan
 * @param tips of its retentive arms that stand on a mark
 * @param bed the tissue covered, in cells
 * @param bases one an open space that is replaced
 */
public record DentureOnCast(
    List<Carrier> teeth, List<Rest> rests, List<Tip> tips, List<Cell> bed, List<Base> bases) {

  /** Tissue is counted in square cells of this side [mm]. */
  private static final double CELL_MM = 1.5;

  /** On steeper flanks than this a base bears nothing upright: cosine of the slope. */
  private static final double STEEPEST = 0.1;

  /** Index of {@link Cell#base} below the major connector. */
  public static final int CONNECTOR = -1;

  /**
   * A tooth that carries.
   *
   * @param x of the middle of the crown at its margin
   * @param y of the same
   * @param leanX how far the root goes along x for every millimetre down the tooth's axis
   * @param leanY the same along y
   * @param distalX part along x of the way to distal, unit vector
   * @param distalY part along y
   * @param loose whether it is charted as moving 1 mm or more
   */
  public record Carrier(
      ToothNumber tooth,
      double x,
      double y,
      double leanX,
      double leanY,
      double distalX,
      double distalY,
      boolean loose) {}

  public record Rest(ToothNumber tooth, double x, double y) {}

  /**
   * The tip of a retentive arm.
   *
   * @param pullN of its arm as computed on this tooth [N]; empty where it is not
   */
  public record Tip(ToothNumber tooth, double x, double y, Optional<Range> pullN) {}

  /**
   * A piece of tissue.
   *
   * @param base index of the base on it, or {@link #CONNECTOR}
   * @param areaMm2 that bears upright: the area of each triangle times the square of the cosine of
   *     its slope, since tissue gives along its normal and only the upright part is counted
   */
  public record Cell(int base, double x, double y, double areaMm2) {}

  /**
   * A base.
   *
   * @param missing the places of its space
   * @param teeth places of the teeth that it carries: there it is bitten on
   * @param firmness of the tissue, as charted; of bounded spaces nothing is charted
   */
  public record Base(
      List<ToothNumber> missing, List<Place> teeth, boolean freeEnd, Firmness firmness) {
    public Base {
      missing = List.copyOf(missing);
      teeth = List.copyOf(teeth);
      if (missing.isEmpty() || teeth.isEmpty()) {
        throw new IllegalArgumentException("a base that fills or carries nothing");
      }
    }
  }

  public record Place(double x, double y) {}

  public DentureOnCast {
    teeth = List.copyOf(teeth);
    rests = List.copyOf(rests);
    tips = List.copyOf(tips);
    bed = List.copyOf(bed);
    bases = List.copyOf(bases);
  }

  /**
   * Of a plan.
   *
   * @param arch the plan's
   * @param dentition the plan's, with the chart
   * @param abutments as judged: the pull of a clasp's arm is taken from them
   */
  public static DentureOnCast of(
      Plan plan, Arch arch, Dentition dentition, List<Abutment> abutments) {
    return new Reader(arch, dentition, abutments).read(plan);
  }

  private static final class Reader {
    private final Arch arch;
    private final ArchFrame frame;
    private final Dentition dentition;
    private final List<Abutment> abutments;
    private final Set<Integer> underBases = new HashSet<>();

    Reader(Arch arch, Dentition dentition, List<Abutment> abutments) {
      this.arch = arch;
      this.frame = arch.frame();
      this.dentition = dentition;
      this.abutments = abutments;
    }

    private double x(Vec3 point) {
      return point.minus(frame.origin()).dot(frame.x());
    }

    private double y(Vec3 point) {
      return point.minus(frame.origin()).dot(frame.y());
    }

    DentureOnCast read(Plan plan) {
      List<Rest> rests =
          plan.rests().stream()
              .map(r -> new Rest(r.tooth(), x(r.middle()), y(r.middle())))
              .distinct()
              .toList();
      List<Tip> tips = new ArrayList<>();
      for (Part.Clasp c : plan.clasps()) {
        // A tip whose undercut is yet to be made holds nothing.
        c.tip()
            .filter(_ -> c.standsOnMark())
            .ifPresent(t -> tips.add(new Tip(c.tooth(), x(t), y(t), pull(c))));
      }
      List<Carrier> teeth =
          ToothNumber.allOf(plan.jaw())
              .filter(
                  t ->
                      rests.stream().anyMatch(r -> r.tooth().equals(t))
                          || tips.stream().anyMatch(p -> p.tooth().equals(t)))
              .map(this::carrier)
              .toList();
      Map<List<Integer>, double[]> cells = new LinkedHashMap<>();
      List<Base> bases = new ArrayList<>();
      for (Part.DentureBase b : plan.bases()) {
        List<Integer> covered = CoveredGum.within(arch, dentition.labels(), b.outline());
        underBases.addAll(covered);
        cover(cells, bases.size(), covered);
        bases.add(base(b));
      }
      plan.majorConnector()
          .filter(_ -> plan.jaw() == Jaw.UPPER)
          .ifPresent(m -> connector(cells, m));
      List<Cell> bed = new ArrayList<>();
      cells.forEach(
          (at, sums) ->
              bed.add(new Cell(at.getFirst(), sums[1] / sums[0], sums[2] / sums[0], sums[0])));
      return new DentureOnCast(teeth, rests, tips, bed, bases);
    }

    private Optional<Range> pull(Part.Clasp clasp) {
      return abutments.stream()
          .filter(a -> a.tooth().number().equals(clasp.tooth()) && a.side() == clasp.side())
          .flatMap(
              a -> Optional.ofNullable(a.actions().get(clasp.judgement().family().id())).stream())
          .flatMap(a -> a.forces().flatMap(f -> f.pullN()).stream())
          .filter(p -> p.from() > 0)
          .findFirst();
    }

    private Carrier carrier(ToothNumber number) {
      Tooth tooth = dentition.tooth(number).orElseThrow();
      Vec3 axis = tooth.axes().axis();
      double up = Math.max(0.5, axis.dot(frame.z()));
      Vec3 distal = tooth.axes().mesial().times(-1).across(frame.z()).unit();
      ToothEntry.Mobility mobility = dentition.chart().tooth(number).mobility();
      return new Carrier(
          number,
          x(tooth.axes().origin()),
          y(tooth.axes().origin()),
          -axis.dot(frame.x()) / up,
          -axis.dot(frame.y()) / up,
          distal.dot(frame.x()),
          distal.dot(frame.y()),
          mobility == ToothEntry.Mobility.II || mobility == ToothEntry.Mobility.III);
    }

    private Base base(Part.DentureBase base) {
      Space space = base.space();
      List<Vec3> bitten = base.teeth().stream().map(Space.Position::at).toList();
      if (bitten.isEmpty()) {
        bitten = List.of(space.crest().get(space.crest().size() / 2));
      }
      return new Base(
          space.missing(),
          bitten.stream().map(p -> new Place(x(p), y(p))).toList(),
          space.freeEnd(),
          space.freeEnd()
              ? dentition.chart().freeEnd(space.missing().getFirst().side())
              : Firmness.NOT_KNOWN);
    }

    /**
     * Upper connectors lie on the palate without relief; lower ones are relieved and bear nothing.
     */
    private void connector(Map<List<Integer>, double[]> cells, Part.MajorConnector connector) {
      List<Integer> covered =
          new ArrayList<>(CoveredGum.within(arch, dentition.labels(), connector.outline()));
      Set<Integer> elsewhere = new HashSet<>(underBases);
      connector
          .opening()
          .ifPresent(o -> elsewhere.addAll(CoveredGum.within(arch, dentition.labels(), o)));
      covered.removeIf(elsewhere::contains);
      cover(cells, CONNECTOR, covered);
    }

    private void cover(Map<List<Integer>, double[]> cells, int base, List<Integer> triangles) {
      TriangleMesh mesh = arch.mesh();
      for (int t : triangles) {
        Vec3 normal = mesh.doubleAreaNormal(t);
        double length = normal.length();
        double cosine = length > 0 ? normal.dot(frame.z()) / length : 0;
        if (cosine > STEEPEST) {
          double area = length / 2 * cosine * cosine;
          Vec3 middle = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
          double px = x(middle);
          double py = y(middle);
          double[] sums =
              cells.computeIfAbsent(
                  List.of(base, (int) Math.floor(px / CELL_MM), (int) Math.floor(py / CELL_MM)),
                  _ -> new double[3]);
          sums[0] += area;
          sums[1] += area * px;
          sums[2] += area * py;
        }
      }
    }
  }
}
