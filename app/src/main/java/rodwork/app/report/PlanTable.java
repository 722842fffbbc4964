package rodwork.app.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import rodwork.anatomy.chart.Notation;
import rodwork.app.operation.MakePlan;
import rodwork.casework.prescription.PutRight;
import rodwork.design.clasp.Judgement;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;
import rodwork.design.plan.TorusMark;
import rodwork.design.preparation.MouthPreparation;
import rodwork.design.preparation.Step;
import rodwork.rules.Finding;
import rodwork.rules.Verdict;

/** A plan for a person: part by part, then what it breaks and what is open. */
public final class PlanTable {
  private final Notation notation;
  private final List<String> lines = new ArrayList<>();

  private PlanTable(Notation notation) {
    this.notation = notation;
  }

  /** The lines of the table. */
  public static List<String> of(MakePlan.Planned planned, Notation notation) {
    PlanTable table = new PlanTable(notation);
    table.lines.add(
        planned.judged().surveyed().cast().name()
            + ", "
            + planned.plan().kennedy()
            + "; "
            + planned.judged().rulebook().title());
    table.plan(planned.plan(), planned.preparation());
    table.preparation(planned.preparation());
    table.lines.add("An aid: the prescriber examines the patient, decides and signs.");
    return table.lines;
  }

  private void plan(Plan plan, MouthPreparation preparation) {
    row(
        "replaces",
        plan.replaced().isEmpty()
            ? "nothing"
            : plan.replaced().stream().map(t -> t.in(notation)).collect(Collectors.joining(" ")));
    for (Part.Rest r : plan.rests()) {
      row(
          "rest",
          String.format(
              Locale.ROOT,
              "%s %s, %s: %.1f × %.1f mm, %.1f mm deep; %s",
              r.tooth().in(notation),
              r.kind().words(),
              AbutmentsJson.word(r.side()),
              r.lengthMm(),
              r.widthMm(),
              r.depthMm(),
              r.because()));
    }
    for (Part.GuidingPlate p : plan.plates()) {
      row("plate", p.tooth().in(notation) + " " + AbutmentsJson.word(p.side()));
    }
    for (Part.Clasp c : plan.clasps()) {
      Judgement j = c.judgement();
      row(
          "clasp",
          String.format(
              Locale.ROOT,
              "%s %s, %.2f mm: %s%s%s%s",
              c.tooth().in(notation),
              j.family().name(),
              c.gaugeMm(),
              j.answer().words(),
              c.retentive()
                  .map(
                      l ->
                          String.format(
                              Locale.ROOT,
                              ", arm %.1f mm long%s",
                              l.lengthMm(),
                              c.standsOnMark() ? "" : ", its tip where an undercut is to be made"))
                  .orElse(", no arm can be laid"),
              j.warnings().isEmpty() ? "" : "; warned of " + String.join(", ", j.warnings()),
              c.chosen() ? "; chosen" : ""));
    }
    for (Part.MinorConnector m : plan.minorConnectors()) {
      row(
          "minor",
          String.format(
              Locale.ROOT, "%s, %.1f mm long", m.tooth().in(notation), m.line().lengthMm()));
    }
    plan.majorConnector()
        .ifPresent(
            m ->
                row(
                    "major",
                    String.format(
                        Locale.ROOT,
                        "%s, %.0f mm², %.1f mm wide at least%s; %s",
                        m.kind().words(),
                        m.areaMm2(),
                        m.leastWidthMm(),
                        m.opening().isPresent() ? ", with an opening" : "",
                        m.because())));
    for (Part.DentureBase b : plan.bases()) {
      row(
          "base",
          String.format(
              Locale.ROOT,
              "%s%s: %.0f mm²",
              b.teeth().stream().map(t -> t.tooth().in(notation)).collect(Collectors.joining(" ")),
              b.space().freeEnd() ? " (free end)" : "",
              b.areaMm2()));
    }
    plan.fulcrum()
        .ifPresent(f -> row("fulcrum", f.right().in(notation) + " to " + f.left().in(notation)));
    for (Part.IndirectRetainer i : plan.indirectRetainers()) {
      row(
          "indirect",
          String.format(
              Locale.ROOT,
              "%s, %.1f mm from the fulcrum line, %.2f of the base end's distance",
              i.rest().tooth().in(notation),
              i.distanceMm(),
              i.ratio()));
    }
    for (TorusMark torus : plan.tori()) {
      row(
          "torus",
          torus.site().words()
              + (torus.roomMm().isEmpty()
                  ? plan.majorConnector().isEmpty()
                      ? ", no major connector to hold it against"
                      : ", place and size not known"
                  : torus.mayBeCovered()
                      ? ", under the major connector: relief"
                      : String.format(
                          Locale.ROOT,
                          ", %.1f mm from the major connector",
                          torus.roomMm().getAsDouble())));
    }
    for (Verdict verdict : Verdict.values()) {
      for (Finding finding : plan.findings()) {
        if (finding.verdict() == verdict
            && verdict != Verdict.MET
            && PutRight.of(finding, preparation).isEmpty()) {
          row(verdict.words(), finding.sentence(notation));
        }
      }
    }
    // What stays open was told first: what the preparation puts right is no more than work.
    for (Finding finding : plan.findings()) {
      PutRight.of(finding, preparation)
          .ifPresent(
              right ->
                  row(
                      "put right",
                      "by step "
                          + right.step().number()
                          + ", to "
                          + right.after().reading().words()
                          + ": "
                          + finding.sentence(notation)));
    }
    long met = plan.findings().stream().filter(f -> f.verdict() == Verdict.MET).count();
    row("met", met + " of " + plan.findings().size() + " rules asked");
    plan.questions().forEach(q -> row("open", q.in(notation)));
  }

  private void preparation(MouthPreparation preparation) {
    for (Step step : preparation.steps()) {
      row(
          "prepare",
          String.format(
              Locale.ROOT,
              "%d. %s %s: %s%s%s",
              step.number(),
              step.tooth().in(notation),
              step.kind().words(),
              step.what(),
              Double.isNaN(step.amountMm())
                  ? ""
                  : String.format(Locale.ROOT, ", %.2f mm deep at most", step.amountMm()),
              step.cautions().isEmpty() ? "" : "; mind: " + String.join("; ", step.cautions())));
    }
    preparation.refused().forEach(r -> row("not cut", r.tooth().in(notation) + ": " + r.why()));
  }

  private void row(String name, String text) {
    lines.add(String.format(Locale.ROOT, "  %-9s %s", name, text));
  }
}
