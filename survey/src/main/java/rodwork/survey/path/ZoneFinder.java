package rodwork.survey.path;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.rules.Wording;

/**
 * Where rigid parts will pass, from anatomy alone, before there is a plan: bases over the ridge of
 * each space to the vestibule, a strip lingual of the lower teeth, the palate away from the upper
 * margins, and a strip below the facial margin of each likely abutment.
 */
final class ZoneFinder {
  private final Arch arch;
  private final Dentition dentition;
  private final Vec3 up;
  private final List<SurfaceCells.Cell> gum;
  private final List<double[]> toMargin;
  private final PathRules.Zones rules;

  ZoneFinder(Arch arch, Dentition dentition, PathRules.Zones rules) {
    this.rules = rules;
    this.arch = arch;
    this.dentition = dentition;
    this.up = arch.frame().z();
    this.gum =
        SurfaceCells.of(
            arch,
            t -> dentition.labels().of(t) == ToothLabels.GUM && !arch.surface().isBase(t),
            Zone.CELL_MM);
    List<Tooth> teeth = List.copyOf(dentition.inOrder());
    this.toMargin = gum.parallelStream().map(cell -> nearestMargin(teeth, cell.point())).toList();
  }

  /** Distance to the nearest margin, and which tooth's: its place in the row; −1 beyond reach. */
  private double[] nearestMargin(List<Tooth> teeth, Vec3 point) {
    double least = rules.palateTo().value();
    int whose = -1;
    for (int i = 0; i < teeth.size(); i++) {
      Tooth tooth = teeth.get(i);
      if (tooth.axes().origin().distance(point) < least + tooth.size().mesiodistalMm()) {
        double distance = tooth.margin().distanceMm(point);
        if (distance < least) {
          least = distance;
          whose = i;
        }
      }
    }
    return new double[] {least, whose};
  }

  List<Zone> find(List<Tooth> abutments) {
    List<Zone> zones = new ArrayList<>();
    for (Space space : dentition.openSpaces()) {
      add(zones, Zone.Kind.BASE, name(space), i -> underBase(space, gum.get(i).point()), null);
    }
    if (arch.frame().jaw() == Jaw.LOWER) {
      add(
          zones,
          Zone.Kind.LINGUAL_STRIP,
          Wording.of(),
          i -> lingual(i, rules.lingualFrom().value(), rules.lingualTo().value()),
          null);
    } else if (arch.frame().jaw() == Jaw.UPPER) {
      add(
          zones,
          Zone.Kind.PALATE,
          Wording.of(),
          i -> lingual(i, rules.palateFrom().value(), rules.palateTo().value()),
          null);
    }
    for (Tooth tooth : abutments) {
      add(
          zones,
          Zone.Kind.FACIAL_STRIP,
          Wording.of(tooth.number()),
          i -> belowFacial(tooth, gum.get(i).point()),
          tooth.axes().facial());
    }
    return zones;
  }

  private static Wording name(Space space) {
    ToothNumber first = space.missing().getFirst();
    return space.missing().size() == 1
        ? Wording.of(first)
        : Wording.of(first, " to ", space.missing().getLast());
  }

  private void add(
      List<Zone> zones,
      Zone.Kind kind,
      Wording name,
      Predicate<Integer> belongs,
      @Nullable Vec3 towards) {
    List<Zone.Sample> samples = new ArrayList<>();
    for (int i = 0; i < gum.size(); i++) {
      if (belongs.test(i)) {
        SurfaceCells.Cell cell = gum.get(i);
        samples.add(new Zone.Sample(cell.point(), cell.areaMm2(), cell.normal(), towards));
      }
    }
    if (!samples.isEmpty()) {
      zones.add(new Zone(kind, name, samples));
    }
  }

  private boolean underBase(Space space, Vec3 point) {
    List<Vec3> crest = space.crest();
    for (int i = 0; i < crest.size(); i++) {
      Vec3 way = point.minus(crest.get(i));
      double down = -way.dot(up);
      if (down > -1
          && down < rules.baseDown().value()
          && way.across(up).length() < rules.baseAcross().value()
          && between(crest, point)) {
        return true;
      }
    }
    return false;
  }

  /** Not beyond the ends of a crest, where the teeth stand. */
  private boolean between(List<Vec3> crest, Vec3 point) {
    Vec3 first = crest.getFirst();
    Vec3 last = crest.getLast();
    Vec3 in = crest.get(Math.min(1, crest.size() - 1)).minus(first).across(up);
    Vec3 out = last.minus(crest.get(Math.max(0, crest.size() - 2))).across(up);
    return point.minus(first).dot(in) >= 0 && point.minus(last).dot(out) <= 0;
  }

  /** On the side of the tongue of the nearest tooth, below its margin. */
  private boolean lingual(int i, double from, double to) {
    double distance = toMargin.get(i)[0];
    int whose = (int) toMargin.get(i)[1];
    if (whose < 0 || distance < from || distance > to) {
      return false;
    }
    Tooth tooth = List.copyOf(dentition.inOrder()).get(whose);
    return tooth.axes().toTooth(gum.get(i).point()).y() < 0;
  }

  private boolean belowFacial(Tooth tooth, Vec3 point) {
    Vec3 q = tooth.axes().toTooth(point);
    if (q.y() <= 0 || q.z() >= 0 || Math.abs(q.x()) > tooth.size().mesiodistalMm() / 3) {
      return false;
    }
    double distance = tooth.margin().distanceMm(point);
    return distance >= rules.facialFrom().value() && distance <= rules.facialTo().value();
  }
}
