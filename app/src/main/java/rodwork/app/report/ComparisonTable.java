package rodwork.app.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.operation.ComparePlans;
import rodwork.design.compare.PlanComparison;
import rodwork.design.load.LoadComparison;
import rodwork.rules.Finding;
import rodwork.rules.Range;

/** Two plans beside each other for a person. */
public final class ComparisonTable {
  private final Notation notation;
  private final List<String> lines = new ArrayList<>();

  private ComparisonTable(Notation notation) {
    this.notation = notation;
  }

  /** The lines of the table. */
  public static List<String> of(List<ComparePlans.Compared> compared, Notation notation) {
    ComparisonTable table = new ComparisonTable(notation);
    for (ComparePlans.Compared c : compared) {
      table.lines.add(c.other().name() + " (other) against " + c.first().name() + " (first)");
      table.comparison(c.comparison());
    }
    table.lines.add(ComparisonJson.CAUTION);
    table.lines.add("An aid: the prescriber examines the patient, decides and signs.");
    return table.lines;
  }

  private void comparison(PlanComparison c) {
    for (PlanComparison.PartChange p : c.parts()) {
      row(p.kind().words(), tooth(p.tooth()) + words(p.first()) + " → " + words(p.other()));
    }
    for (PlanComparison.MeasureChange m : c.measures()) {
      row(
          m.kind().words(),
          String.format(
              Locale.ROOT,
              "%s%s: %s → %s",
              tooth(m.tooth()),
              m.what(),
              value(m.first(), m.unit()),
              value(m.other(), m.unit())));
    }
    for (PlanComparison.Turn turn : PlanComparison.Turn.values()) {
      for (PlanComparison.FindingChange f : c.findings()) {
        if (f.turn() == turn) {
          row("rule " + turn.words(), finding(f));
        }
      }
    }
    c.firstOpen().forEach(q -> row("open in the first", q.in(notation)));
    c.otherOpen().forEach(q -> row("open in the other", q.in(notation)));
    if (c.parts().isEmpty() && c.measures().isEmpty() && c.findings().isEmpty()) {
      row("same", "parts, measures and rules are the same");
    }
    loads(c.loads());
  }

  private void loads(LoadComparison loads) {
    List<ToothNumber> bitten = List.of();
    for (LoadComparison.Ratio r : loads.ratios()) {
      if (!r.bitten().equals(bitten)) {
        bitten = r.bitten();
        lines.add(
            "  bitten on at "
                + bitten.stream().map(t -> t.in(notation)).collect(Collectors.joining(" "))
                + ", the other plan against the first:");
      }
      if (r.answer() != LoadComparison.Answer.NEITHER) {
        row(r.measure().words(), tooth(r.tooth()) + ratio(r));
      }
    }
    loads.remarks().forEach(r -> row("remark", r.in(notation)));
  }

  private static String ratio(LoadComparison.Ratio r) {
    String text = r.answer().words();
    if (r.interval().isPresent()) {
      Range i = r.interval().get();
      text += String.format(Locale.ROOT, ", %.2f to %.2f times", i.from(), i.to());
    }
    if (r.firstToDistal().isPresent() && r.otherToDistal().isPresent()) {
      text +=
          "; first "
              + direction(r.firstToDistal().get())
              + ", other "
              + direction(r.otherToDistal().get());
    }
    return text;
  }

  private static String direction(double toDistal) {
    long percent = Math.round(100 * toDistal);
    return percent >= 90
        ? "tips to distal"
        : percent <= 10 ? "tips to mesial" : "to distal in " + percent + " % of draws";
  }

  private String finding(PlanComparison.FindingChange f) {
    Finding either = f.either();
    if (f.first().isPresent() && f.other().isPresent()) {
      return String.format(
          "%s, %s: %s (%s) → %s (%s); wanted %s",
          either.what(),
          either.place().in(notation),
          f.first().get().reading().words(),
          f.first().get().verdict().words(),
          f.other().get().reading().words(),
          f.other().get().verdict().words(),
          either.limit().words());
    }
    return String.format(
        "%s, %s: %s (%s); wanted %s",
        either.what(),
        either.place().in(notation),
        either.reading().words(),
        either.verdict().words(),
        either.limit().words());
  }

  private String tooth(Optional<ToothNumber> tooth) {
    return tooth.map(t -> t.in(notation) + " ").orElse("");
  }

  private static String words(List<String> parts) {
    return parts.isEmpty() ? "none" : String.join(" and ", parts);
  }

  private static String value(double value, String unit) {
    return switch (unit) {
      case "mm" -> String.format(Locale.ROOT, "%.1f mm", value);
      case "1" -> String.format(Locale.ROOT, "%.2f", value);
      default -> String.format(Locale.ROOT, "%.0f %s", value, unit);
    };
  }

  private void row(String name, String text) {
    lines.add(String.format(Locale.ROOT, "  %-22s %s", name, text));
  }
}
