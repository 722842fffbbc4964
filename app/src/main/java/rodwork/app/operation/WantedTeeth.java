package rodwork.app.operation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.chart.Torus;
import rodwork.anatomy.teeth.ToothHints;
import rodwork.app.AppRefusal;

/**
 * What a person says about the teeth of a cast.
 *
 * @param missing teeth named as missing beside the chart
 * @param chart null: none was given
 * @param points one point on a tooth each, scan frame [mm]
 * @param tori what is said of tori beside the chart
 */
public record WantedTeeth(
    Set<ToothNumber> missing,
    @Nullable Chart chart,
    List<ToothHints.Point> points,
    Map<Torus.Site, Torus> tori) {
  public WantedTeeth {
    missing = Set.copyOf(missing);
    points = List.copyOf(points);
    tori = Map.copyOf(tori);
  }

  /** With nothing said of tori beside the chart. */
  public WantedTeeth(
      Set<ToothNumber> missing, @Nullable Chart chart, List<ToothHints.Point> points) {
    this(missing, chart, points, Map.of());
  }

  /** The same with this said of tori. */
  public WantedTeeth withTori(Map<Torus.Site, Torus> said) {
    return new WantedTeeth(missing, chart, points, said);
  }

  /**
   * The jaw that all of it speaks of.
   *
   * @param said the jaw as it was said, or unknown
   * @throws rodwork.geometry.Refusal if nothing tells it, or two things tell it differently
   */
  public Jaw jaw(Jaw said) {
    Set<Jaw> told = new TreeSet<>();
    List<String> by = new ArrayList<>();
    if (said != Jaw.UNKNOWN) {
      told.add(said);
      by.add("--jaw says " + name(said));
    }
    Chart given = chart;
    if (given != null) {
      told.add(given.jaw());
      by.add("the chart says " + name(given.jaw()));
    }
    for (ToothNumber tooth : new TreeSet<>(missing)) {
      told.add(tooth.jaw());
      by.add(tooth + " is a " + name(tooth.jaw()) + " tooth");
    }
    for (ToothHints.Point point : points) {
      Jaw jaw = ToothNumber.of(point.fdi()).jaw();
      if (told.add(jaw)) {
        by.add("the point of " + point.fdi() + " is on a " + name(jaw) + " tooth");
      }
    }
    for (Torus.Site site : new TreeSet<>(tori.keySet())) {
      if (told.add(site.jaw())) {
        by.add("a " + site.words() + " is named");
      }
    }
    if (told.isEmpty()) {
      throw AppRefusal.TEETH_NEED_JAW.with();
    }
    if (told.size() > 1) {
      throw AppRefusal.TWO_JAWS.with(String.join(", ", by));
    }
    return told.iterator().next();
  }

  /** The chart with what is named as missing beside it. */
  public Chart chart(Jaw jaw) {
    Chart given = chart;
    Chart all = given == null ? Chart.blank(jaw) : given;
    for (ToothNumber tooth : missing) {
      all = all.change(tooth, entry -> entry.withPresence(ToothEntry.Presence.MISSING));
    }
    return tori.isEmpty() ? all : all.withTori(tori);
  }

  private static String name(Jaw jaw) {
    return jaw == Jaw.UPPER ? "upper" : "lower";
  }
}
