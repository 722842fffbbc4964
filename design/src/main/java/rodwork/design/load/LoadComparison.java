package rodwork.design.load;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.rules.Range;
import rodwork.rules.Wording;

/**
 * Two plans of one mouth under the same loads: the ratio of each measure with its interval over the
 * draws of what is unknown. Both plans meet the same draw each time, so what they share cancels.
 *
 * @param ratios base by base, measure by measure
 * @param remarks what cannot be compared, one sentence each
 */
public record LoadComparison(List<Ratio> ratios, List<Wording> remarks) {

  /** What is compared. */
  public enum Measure {
    SINKING("sinking of the base"),
    TISSUE("force on the tissue"),
    REST("force on the rests"),
    MOMENT("tipping moment");

    private final String words;

    Measure(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** What a ratio says. */
  public enum Answer {
    LESS("less"),
    MORE("more"),
    /** The whole interval is too near to 1 to matter. */
    ALIKE("alike"),
    /** The interval holds 1: what is unknown weighs more than the choice. */
    NOT_SEPARABLE("not separable"),
    /**
     * So little with either plan, in the share of draws that an interval holds, that a ratio would
     * mean nothing.
     */
    NEITHER("hardly loaded in either"),
    ONLY_FIRST("only in the first"),
    ONLY_OTHER("only in the other");

    private final String words;

    Answer(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * A measure of the other plan over that of the first.
   *
   * @param bitten places of the space whose base is bitten on
   * @param tooth whose; empty for the base itself
   * @param middle half of the draws lie below; NaN where only one of the plans has the tooth
   * @param interval holds the share of the draws that the rules say; empty where only one has it
   * @param answer what it says
   * @param firstToDistal share of the draws in which the moment tips the crown to distal, with the
   *     first plan; for moments alone
   * @param otherToDistal the same with the other plan
   */
  public record Ratio(
      Measure measure,
      List<ToothNumber> bitten,
      Optional<ToothNumber> tooth,
      double middle,
      Optional<Range> interval,
      Answer answer,
      Optional<Double> firstToDistal,
      Optional<Double> otherToDistal) {
    public Ratio {
      bitten = List.copyOf(bitten);
    }
  }

  /** Under this share of the load a part is said to bear nothing. */
  private static final double NOTHING = 0.01;

  /** Under this lever of the load a tooth is said not to be tipped [mm]. */
  private static final double NO_LEVER_MM = 0.05;

  /** Under this a base does not sink: far below what a mouth feels [mm]. */
  private static final double NO_SINKING_MM = 1e-4;

  public LoadComparison {
    ratios = List.copyOf(ratios);
    remarks = List.copyOf(remarks);
  }

  /** Compares. */
  public static LoadComparison of(LoadStudy first, LoadStudy other, LoadRules rules) {
    List<Ratio> ratios = new ArrayList<>();
    List<Wording> remarks = new ArrayList<>();
    for (LoadStudy.UnderLoad a : first.loads()) {
      Optional<LoadStudy.UnderLoad> same =
          other.loads().stream().filter(b -> b.base().equals(a.base())).findFirst();
      if (same.isEmpty()) {
        remarks.add(Wording.of("Only the first plan has a base at ", a.base().missing(), "."));
        continue;
      }
      new Pair(a, same.get(), rules).compare(ratios, remarks);
    }
    for (LoadStudy.UnderLoad b : other.loads()) {
      if (first.loads().stream().noneMatch(a -> a.base().equals(b.base()))) {
        remarks.add(Wording.of("Only the other plan has a base at ", b.base().missing(), "."));
      }
    }
    return new LoadComparison(ratios, remarks);
  }

  private record Pair(LoadStudy.UnderLoad first, LoadStudy.UnderLoad other, LoadRules rules) {

    void compare(List<Ratio> ratios, List<Wording> remarks) {
      tips(remarks, "first", first);
      tips(remarks, "other", other);
      double[] force = values(first.force(), 0);
      double[] floor = Arrays.stream(force).map(f -> NOTHING * f).toArray();
      double[] lever = Arrays.stream(force).map(f -> NO_LEVER_MM * f).toArray();
      double[] depth = Arrays.stream(force).map(_ -> NO_SINKING_MM).toArray();
      add(ratios, Measure.SINKING, first.sinking(), other.sinking(), depth);
      add(ratios, Measure.TISSUE, first.tissue(), other.tissue(), floor);
      SortedSet<ToothNumber> teeth = new TreeSet<>(first.teeth().keySet());
      teeth.addAll(other.teeth().keySet());
      for (ToothNumber tooth : teeth) {
        LoadStudy.OnTooth a = first.teeth().get(tooth);
        LoadStudy.OnTooth b = other.teeth().get(tooth);
        if (a == null || b == null) {
          Answer answer = b == null ? Answer.ONLY_FIRST : Answer.ONLY_OTHER;
          for (Measure m : List.of(Measure.REST, Measure.MOMENT)) {
            ratios.add(
                new Ratio(
                    m,
                    first.base().missing(),
                    Optional.of(tooth),
                    Double.NaN,
                    Optional.empty(),
                    answer,
                    Optional.empty(),
                    Optional.empty()));
          }
          continue;
        }
        ratio(Measure.REST, Optional.of(tooth), a.restN(), b.restN(), floor).ifPresent(ratios::add);
        ratio(Measure.MOMENT, Optional.of(tooth), a.momentNmm(), b.momentNmm(), lever)
            .map(
                r ->
                    new Ratio(
                        r.measure,
                        r.bitten,
                        r.tooth,
                        r.middle,
                        r.interval,
                        r.answer,
                        Optional.of(positive(a.toDistalNmm())),
                        Optional.of(positive(b.toDistalNmm()))))
            .ifPresent(ratios::add);
      }
    }

    private static void tips(List<Wording> remarks, String plan, LoadStudy.UnderLoad load) {
      if (load.tipsOver() > 0) {
        remarks.add(
            Wording.of(
                "Bitten on at ",
                load.base().missing(),
                " the %s plan tips over in %d of %d draws: rests, tips and tissue do not hold it."
                    .formatted(plan, load.tipsOver(), load.force().count())));
      }
    }

    private void add(
        List<Ratio> ratios,
        Measure measure,
        LoadStudy.Values a,
        LoadStudy.Values b,
        double[] floor) {
      ratio(measure, Optional.empty(), a, b, floor).ifPresent(ratios::add);
    }

    /** Empty where half of the draws or more hold no denture. */
    private Optional<Ratio> ratio(
        Measure measure,
        Optional<ToothNumber> tooth,
        LoadStudy.Values a,
        LoadStudy.Values b,
        double[] floor) {
      double[] x = values(a, floor);
      double[] y = values(b, floor);
      double[] sorted = new double[x.length];
      int n = 0;
      int neither = 0;
      for (int i = 0; i < x.length; i++) {
        double r = y[i] / x[i];
        if (!Double.isNaN(r)) {
          sorted[n++] = r;
          neither += a.of(i) <= floor[i] && b.of(i) <= floor[i] ? 1 : 0;
        }
      }
      if (2 * n <= x.length) {
        return Optional.empty();
      }
      Arrays.sort(sorted, 0, n);
      int cut = (int) Math.floor((1 - rules.share().value()) / 2 * n);
      Range interval = new Range(sorted[cut], sorted[n - 1 - cut]);
      return Optional.of(
          new Ratio(
              measure,
              first.base().missing(),
              tooth,
              (sorted[(n - 1) / 2] + sorted[n / 2]) / 2,
              Optional.of(interval),
              neither >= rules.share().value() * n ? Answer.NEITHER : answer(interval),
              Optional.empty(),
              Optional.empty()));
    }

    private Answer answer(Range interval) {
      double alike = rules.alike().value();
      if (interval.from() >= 1 / alike && interval.to() <= alike) {
        return Answer.ALIKE;
      }
      if (interval.from() > 1) {
        return Answer.MORE;
      }
      return interval.to() < 1 ? Answer.LESS : Answer.NOT_SEPARABLE;
    }

    private static double[] values(LoadStudy.Values v, double[] floor) {
      double[] values = new double[v.count()];
      for (int i = 0; i < values.length; i++) {
        values[i] = Math.max(v.of(i), floor[i]);
      }
      return values;
    }

    private static double[] values(LoadStudy.Values v, double floor) {
      double[] all = new double[v.count()];
      Arrays.fill(all, floor);
      return values(v, all);
    }

    private static double positive(LoadStudy.Values v) {
      int n = 0;
      int all = 0;
      for (int i = 0; i < v.count(); i++) {
        if (!Double.isNaN(v.of(i))) {
          all++;
          n += v.of(i) > 0 ? 1 : 0;
        }
      }
      return all == 0 ? 0 : (double) n / all;
    }
  }
}
