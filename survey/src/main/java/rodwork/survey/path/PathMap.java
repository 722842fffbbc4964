package rodwork.survey.path;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rodwork.survey.Tilt;

/**
 * What every tilt within a cone offers.
 *
 * @param tilts all tilts tried, the reference orientation among them
 * @param coneDeg widest total tilt tried [degrees]
 * @param stepDeg distance between neighbours [degrees]
 * @param rules what they were weighed by
 */
public record PathMap(List<PathFactors> tilts, double coneDeg, double stepDeg, PathRules rules) {
  /** Most choices laid before a person. */
  public static final int MOST_CHOICES = 7;

  private static final Comparator<PathFactors> BY_WORTH =
      Comparator.comparingDouble((PathFactors tilt) -> tilt.worth())
          .thenComparingDouble(tilt -> -tilt.tilt().totalDeg());

  public PathMap {
    tilts = List.copyOf(tilts);
    if (tilts.isEmpty()) {
      throw new IllegalArgumentException("a map of no tilts");
    }
  }

  /** The best tilt under the rules; of equals the one nearest to the reference orientation. */
  public PathFactors best() {
    return tilts.stream().max(BY_WORTH).orElseThrow();
  }

  /** The best tilt for one factor; of equals the one of greater worth. */
  public PathFactors best(PathFactors.Factor factor) {
    return tilts.stream()
        .max(Comparator.comparingDouble((PathFactors t) -> t.worth(factor)).thenComparing(BY_WORTH))
        .orElseThrow();
  }

  /** The tilt tried that lies nearest to another. */
  public PathFactors nearest(Tilt tilt) {
    return tilts.stream()
        .min(
            Comparator.comparingDouble(
                t ->
                    Math.hypot(
                        t.tilt().anteriorDeg() - tilt.anteriorDeg(),
                        t.tilt().rightDeg() - tilt.rightDeg())))
        .orElseThrow();
  }

  /**
   * The few tilts that no other beats in every factor, by steps that mean something; at most {@link
   * #MOST_CHOICES}: the best, the best in each factor, then what lies farthest from those chosen.
   */
  public List<PathFactors> choices() {
    List<PathFactors> left = unbeaten();
    List<PathFactors> chosen = new ArrayList<>();
    left.stream().max(BY_WORTH).ifPresent(chosen::add);
    for (PathFactors.Factor factor : PathFactors.Factor.values()) {
      left.stream()
          .min(
              Comparator.comparingInt((PathFactors t) -> step(t, factor))
                  .thenComparing(BY_WORTH.reversed()))
          .ifPresent(tilt -> addIfNew(chosen, tilt));
    }
    while (chosen.size() < MOST_CHOICES) {
      PathFactors farthest =
          left.stream()
              .max(Comparator.comparingDouble(tilt -> apart(chosen, tilt)))
              .filter(tilt -> apart(chosen, tilt) > 2 * stepDeg)
              .orElse(null);
      if (farthest == null) {
        break;
      }
      chosen.add(farthest);
    }
    return chosen.stream().sorted(BY_WORTH.reversed()).toList();
  }

  private void addIfNew(List<PathFactors> chosen, PathFactors tilt) {
    if (chosen.size() < MOST_CHOICES && apart(chosen, tilt) > stepDeg / 2) {
      chosen.add(tilt);
    }
  }

  private static double apart(List<PathFactors> chosen, PathFactors tilt) {
    return chosen.stream()
        .mapToDouble(other -> Math.toDegrees(angle(other, tilt)))
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  private static double angle(PathFactors a, PathFactors b) {
    return Math.atan2(a.axis().cross(b.axis()).length(), a.axis().dot(b.axis()));
  }

  /** All tilts that no other beats: as good in every factor, and better in one. */
  List<PathFactors> unbeaten() {
    // Of tilts that are alike in every step only the worthiest can be a choice, which leaves few.
    Map<List<Integer>, PathFactors> kinds = new HashMap<>();
    for (PathFactors tilt : tilts) {
      kinds.merge(steps(tilt), tilt, (a, b) -> BY_WORTH.compare(a, b) >= 0 ? a : b);
    }
    return kinds.entrySet().stream()
        .filter(kind -> kinds.keySet().stream().noneMatch(other -> beats(other, kind.getKey())))
        .map(Map.Entry::getValue)
        .sorted(BY_WORTH.reversed())
        .toList();
  }

  private static boolean beats(List<Integer> other, List<Integer> mine) {
    boolean better = false;
    for (int i = 0; i < mine.size(); i++) {
      if (other.get(i) > mine.get(i)) {
        return false;
      }
      better |= other.get(i) < mine.get(i);
    }
    return better;
  }

  private List<Integer> steps(PathFactors tilt) {
    List<Integer> steps = new ArrayList<>();
    for (PathFactors.Factor factor : PathFactors.Factor.values()) {
      steps.add(step(tilt, factor));
    }
    return steps;
  }

  private int step(PathFactors tilt, PathFactors.Factor factor) {
    double step =
        factor == PathFactors.Factor.TILT ? rules.angleStep().value() : rules.lengthStep().value();
    return (int) Math.round(tilt.figure(factor) / step);
  }

  /**
   * Teeth that reach the gauge wanted at no tilt, each with the most that is to be had. A tilt
   * moves undercuts about; it cannot make retention against the path of displacement.
   */
  public Map<Integer, Double> neverHeld(double fitsMm) {
    Map<Integer, Double> most = new TreeMap<>();
    for (PathFactors tilt : tilts) {
      for (Retention.Abutment abutment : tilt.retention().abutments()) {
        most.merge(abutment.tooth(), abutment.creditMm(), Math::max);
      }
    }
    most.values().removeIf(credit -> credit >= rules.gauge().value() - fitsMm);
    return most;
  }
}
