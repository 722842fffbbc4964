package rodwork.anatomy.space;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.space.Space.Position;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.anatomy.tooth.Teeth;
import rodwork.anatomy.tooth.Tooth;
import rodwork.anatomy.tooth.ToothGap;
import rodwork.geometry.Vec3;

/** Finds the spaces between the teeth that stand, and at the ends of the row. */
public final class SpaceFinder {
  private final Jaw jaw;
  private final Teeth teeth;
  private final CrestTracer tracer;
  private final SpaceRules rules;

  public SpaceFinder(Arch arch, ToothLabels labels, Teeth teeth, Jaw jaw, SpaceRules rules) {
    this.rules = rules;
    this.jaw = jaw;
    this.teeth = teeth;
    this.tracer = new CrestTracer(arch, labels);
  }

  /**
   * All spaces, closed ones among them, from the patient's right to left.
   *
   * @param standing the teeth that will stand; others of the scan count as missing
   * @param ignored missing places that make no space of their own at the ends of the row, such as
   *     third molars
   */
  public List<Space> find(SortedSet<ToothNumber> standing, SortedSet<ToothNumber> ignored) {
    List<Space> spaces = new ArrayList<>();
    List<ToothNumber> run = new ArrayList<>();
    Tooth before = null;
    for (int i = 0; i < ToothNumber.PLACES; i++) {
      ToothNumber number = ToothNumber.inOrder(jaw, i);
      Tooth tooth = standing.contains(number) ? teeth.tooth(number).orElse(null) : null;
      if (tooth == null) {
        if (!ignored.contains(number)) {
          run.add(number);
        }
        continue;
      }
      if (!run.isEmpty()) {
        spaces.add(before == null ? freeRight(run, tooth) : between(before, run, tooth));
        run.clear();
      }
      before = tooth;
    }
    if (!run.isEmpty() && before != null) {
      spaces.add(freeLeft(before, run));
    }
    return List.copyOf(spaces);
  }

  private Space between(Tooth right, List<ToothNumber> missing, Tooth left) {
    ToothGap gap = ToothGap.between(right, left);
    boolean occupied = missing.stream().anyMatch(n -> teeth.tooth(n).isPresent());
    boolean closed = gap.mm() < rules.closed().value();
    List<Vec3> crest = occupied || closed ? List.of() : tracer.between(gap.from(), gap.to());
    return new Space(
        missing,
        Optional.of(right.number()),
        Optional.of(left.number()),
        gap.mm(),
        crest,
        positions(missing, crest),
        closed);
  }

  private Space freeRight(List<ToothNumber> missing, Tooth left) {
    List<Vec3> crest = free(missing, left).reversed();
    return free(missing, Optional.empty(), Optional.of(left.number()), crest);
  }

  private Space freeLeft(Tooth right, List<ToothNumber> missing) {
    return free(missing, Optional.of(right.number()), Optional.empty(), free(missing, right));
  }

  private static Space free(
      List<ToothNumber> missing,
      Optional<ToothNumber> right,
      Optional<ToothNumber> left,
      List<Vec3> crest) {
    double length = length(crest);
    return new Space(
        missing, right, left, length, crest, freePositions(missing, crest, right), false);
  }

  private List<Vec3> free(List<ToothNumber> missing, Tooth last) {
    boolean occupied = missing.stream().anyMatch(n -> teeth.tooth(n).isPresent());
    return occupied ? List.of() : tracer.behind(last);
  }

  /** Missing teeth share the room between two teeth in the proportion of their usual widths. */
  private static List<Position> positions(List<ToothNumber> missing, List<Vec3> crest) {
    if (crest.size() < 2) {
      return List.of();
    }
    double all = missing.stream().mapToDouble(UsualWidths::of).sum();
    double scale = length(crest) / all;
    List<Position> positions = new ArrayList<>();
    double at = 0;
    for (ToothNumber tooth : missing) {
      double width = UsualWidths.of(tooth) * scale;
      positions.add(new Position(tooth, along(crest, at + width / 2)));
      at += width;
    }
    return positions;
  }

  /**
   * At a free end teeth of usual width follow the last one that stands, as far as the crest goes.
   */
  private static List<Position> freePositions(
      List<ToothNumber> missing, List<Vec3> crest, Optional<ToothNumber> right) {
    if (crest.size() < 2) {
      return List.of();
    }
    boolean onward = right.isPresent();
    List<Vec3> way = onward ? crest : crest.reversed();
    double length = length(crest);
    List<Position> positions = new ArrayList<>();
    double at = 0;
    for (ToothNumber tooth : onward ? missing : missing.reversed()) {
      double width = UsualWidths.of(tooth);
      if (at + width / 2 <= length) {
        positions.add(new Position(tooth, along(way, at + width / 2)));
      }
      at += width;
    }
    return onward ? positions : positions.reversed();
  }

  private static double length(List<Vec3> line) {
    double sum = 0;
    for (int i = 1; i < line.size(); i++) {
      sum += line.get(i - 1).distance(line.get(i));
    }
    return sum;
  }

  private static Vec3 along(List<Vec3> line, double way) {
    double left = way;
    for (int i = 1; i < line.size(); i++) {
      double step = line.get(i - 1).distance(line.get(i));
      if (left <= step && step > 0) {
        return line.get(i - 1).plus(line.get(i).minus(line.get(i - 1)).times(left / step));
      }
      left -= step;
    }
    return line.getLast();
  }
}
