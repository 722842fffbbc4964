package rodwork.app.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rodwork.anatomy.chart.Notation;
import rodwork.anatomy.tooth.Surface;
import rodwork.app.operation.JudgeAbutments;
import rodwork.design.abutment.Abutment;
import rodwork.design.abutment.GuidingPlane;
import rodwork.design.abutment.Retention;
import rodwork.design.arm.ArmForces;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.Clause;
import rodwork.design.clasp.Fact;
import rodwork.design.clasp.Judgement;
import rodwork.design.cut.PlaneCut;
import rodwork.rules.Finding;
import rodwork.rules.Limit;
import rodwork.rules.Range;
import rodwork.rules.Reading;
import rodwork.rules.Verdict;
import rodwork.survey.tooth.CrownZone;

/** Judged abutments for a person: each with what was measured, what serves, and why not. */
public final class AbutmentsTable {
  private AbutmentsTable() {}

  /** The lines of the table. */
  public static List<String> of(JudgeAbutments.Judged judged, Notation notation) {
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format(
            Locale.ROOT,
            "%s, %s, at %s; %s (%s)",
            judged.surveyed().cast().name(),
            judged.teeth().dentition().kennedy().title(),
            judged.surveyed().path().tilt() == null
                ? "the axis given"
                : SurveyTable.angles(judged.surveyed().path().tilt())
                    + "total "
                    + SurveyTable.degrees(judged.surveyed().path().tilt().totalDeg()),
            judged.rulebook().title(),
            judged.rulebook().hash().substring(0, 12)));
    judged.surveyed().notes().forEach(note -> lines.add("Note: " + note));
    for (Abutment abutment : judged.abutments()) {
      lines.add("");
      abutment(lines, abutment, notation);
    }
    lines.add("");
    retention(lines, judged.retention(), notation);
    lines.add("Guiding planes count in pairs: one alone guides nothing.");
    lines.add("An aid: the prescriber examines the patient, decides and signs.");
    return lines;
  }

  private static void abutment(List<String> lines, Abutment abutment, Notation notation) {
    AbutmentFacts facts = abutment.judgement().facts();
    String beside =
        abutment
            .space()
            .map(
                s ->
                    (s.freeEnd() ? "free end " : "space ")
                        + s.missing().stream()
                            .map(t -> t.in(notation))
                            .collect(Collectors.joining(" "))
                        + " on its "
                        + AbutmentsJson.word(abutment.side())
                        + " side")
            .orElse("no space; embrasure on its " + AbutmentsJson.word(abutment.side()) + " side");
    lines.add(abutment.tooth().number().in(notation) + ", " + beside);
    row(
        lines,
        "crown",
        facts.reading(Fact.CROWN_HEIGHT).words()
            + " high facially; survey line "
            + facts.reading(Fact.SURVEY_LINE).words());
    row(lines, "undercut", undercut(facts, Surface.FACIAL));
    row(lines, "", undercut(facts, Surface.LINGUAL));
    abutment.planes().forEach(p -> row(lines, "plane", plane(p)));
    row(
        lines,
        "gum",
        told(facts, Fact.TOTAL_STAND_OFF_3)
            + "; "
            + told(facts, Fact.TOTAL_STAND_OFF_6)
            + "; "
            + told(facts, Fact.TISSUE_UNDERCUT_3)
            + "; vestibule "
            + facts.reading(Fact.VESTIBULE_DEPTH).words());
    int place = 0;
    List<String> notHere = new ArrayList<>();
    for (Judgement j : abutment.judgement().inOrder()) {
      switch (j.answer()) {
        case SERVES, SERVES_AFTER -> {
          row(lines, ++place + ".", family(j));
          arm(abutment, j).ifPresent(text -> row(lines, "", text));
        }
        case NOT_DECIDED -> {
          row(lines, "?", family(j));
          arm(abutment, j).ifPresent(text -> row(lines, "", text));
        }
        case DOES_NOT_SERVE -> {
          Judgement.Step why = why(j);
          if (why.finding().limit() instanceof Limit.OneOf) {
            notHere.add(j.family().name() + " (" + held(why.finding()) + ")");
          } else {
            row(lines, "no", family(j));
          }
        }
      }
    }
    if (!notHere.isEmpty()) {
      row(lines, "not here", words(notHere));
    }
    if (!abutment.judgement().couldReorder().isEmpty()) {
      row(
          lines,
          "order",
          "could change with: "
              + words(
                  abutment.judgement().couldReorder().stream()
                      .sorted()
                      .map(facts::words)
                      .toList()));
    }
  }

  /** Length of the arm, and what it does. */
  private static Optional<String> arm(Abutment abutment, Judgement j) {
    return Optional.ofNullable(abutment.actions().get(j.family().id()))
        .map(
            action -> {
              String length =
                  String.format(
                      Locale.ROOT,
                      "arm of %.1f mm, %.0f° round the tooth",
                      action.course().retentive().lengthMm(),
                      action.course().encirclementDeg());
              return length + action.forces().map(AbutmentsTable::forces).orElse("");
            });
  }

  private static String forces(ArmForces forces) {
    String pull =
        forces
            .pullN()
            .map(p -> "pull " + range(p, "%.1f to %.1f N"))
            .orElse("locks itself, no pull frees it");
    return "; "
        + pull
        + "; "
        + range(forces.stressMpa(), "%.0f to %.0f MPa")
        + " of "
        + range(forces.material().proofMpa(), "%.0f to %.0f MPa")
        + " proof stress of "
        + forces.material().name();
  }

  private static String range(Range range, String format) {
    return String.format(Locale.ROOT, format, range.from(), range.to());
  }

  private static void retention(List<String> lines, Retention retention, Notation notation) {
    for (Finding finding : retention.findings()) {
      lines.add(finding.sentence(notation));
    }
    List<String> out =
        retention.shares().stream()
            .filter(s -> !s.credited())
            .map(s -> s.tooth().in(notation))
            .toList();
    if (retention.sumN().to() > 0) {
      lines.add(
          String.format(
              Locale.ROOT,
              "The first clasps hold %.1f to %.1f N together.",
              retention.sumN().from(),
              retention.sumN().to()));
    }
    if (!out.isEmpty()) {
      lines.add("Not credited in that sum: " + String.join(", ", out) + ".");
    }
  }

  private static String undercut(AbutmentFacts facts, Surface surface) {
    List<String> parts = new ArrayList<>();
    for (CrownZone zone : CrownZone.THIRDS) {
      AbutmentFacts.Third third =
          facts.thirds().get(new AbutmentFacts.Site(zone.surface(), zone.across()));
      if (zone.surface() == surface && third != null) {
        String marks =
            third.marks().stream()
                .map(
                    m ->
                        String.format(
                            Locale.ROOT,
                            "%.2f at %s from the margin",
                            m.gaugeMm(),
                            shortly(m.fromMargin())))
                .collect(Collectors.joining(", "));
        parts.add(
            zone.label()
                + " "
                + shortly(third.deepest())
                + clear(third)
                + (marks.isEmpty() ? "" : " (" + marks + ")"));
      }
    }
    return String.join("; ", parts);
  }

  /** What of an undercut without a mark lies where a tip may lie. */
  private static String clear(AbutmentFacts.Third third) {
    String clear = shortly(third.clear().depth());
    return third.marks().isEmpty() && !clear.equals(shortly(third.deepest()))
        ? ", " + clear + " clear of the margin"
        : "";
  }

  private static String shortly(Reading reading) {
    return reading instanceof Reading.Measured m
        ? String.format(Locale.ROOT, "%.2f mm", m.value())
        : reading.words();
  }

  private static String plane(GuidingPlane plane) {
    String there =
        plane
            .there()
            .map(
                p ->
                    String.format(
                        Locale.ROOT,
                        "%.1f mm high, %.1f mm wide, %.1f° as it is",
                        p.heightMm(),
                        p.widthMm(),
                        // No "-0.0".
                        Math.round(p.angleDeg() * 10) / 10.0 + 0.0))
            .orElse("nothing parallel as it is");
    String could =
        plane
            .asWanted()
            .map(
                cut ->
                    String.format(
                            Locale.ROOT,
                            "%.1f mm would take %.2f mm off the tooth",
                            cut.made().heightMm(),
                            cut.enamelMm())
                        + rather(plane, cut))
            .orElse("no room to cut one");
    return AbutmentsJson.word(plane.face()) + ": " + there + "; " + could;
  }

  /** Where the plane that is wanted takes too much: the one that would be cut in its place. */
  private static String rather(GuidingPlane plane, PlaneCut wanted) {
    if (plane.within().filter(wanted::equals).isPresent()) {
      return "";
    }
    return plane
        .within()
        .map(
            cut ->
                String.format(
                    Locale.ROOT,
                    ", %.1f mm from %.1f mm below the ridge %.2f mm",
                    cut.made().heightMm(),
                    cut.belowMm(),
                    cut.enamelMm()))
        .orElseGet(
            () ->
                wanted.made().heightMm() >= plane.least().value()
                    ? String.format(
                        Locale.ROOT, ": at most %.2f mm, so none is cut", plane.most().value())
                    : String.format(
                        Locale.ROOT,
                        ": less than %.1f mm high, so none is cut",
                        plane.least().value()));
  }

  private static String family(Judgement j) {
    String name = j.family().name();
    return switch (j.answer()) {
      case SERVES -> name + ": serves. " + j.rankedBy() + warned(j);
      case SERVES_AFTER -> name + ": serves after: " + before(j) + ". " + j.rankedBy() + warned(j);
      case NOT_DECIDED ->
          name
              + ": not decided; hangs on "
              + words(
                  j.steps().stream()
                      .filter(s -> !s.finding().verdict().decided())
                      .filter(s -> s.otherwise().decides())
                      .map(s -> held(s.finding()))
                      .toList())
              + ". "
              + (j.preparations().isEmpty() && j.changes().isEmpty()
                  ? ""
                  : "Before it serves: " + before(j) + ".")
              + warned(j);
      case DOES_NOT_SERVE -> name + ": " + reason(j);
    };
  }

  /** What is done first. */
  private static String before(Judgement j) {
    return Stream.concat(
            j.preparations().stream().map(Judgement.Preparation::words),
            j.changes().stream().map(Judgement.Change::what))
        .collect(Collectors.joining("; "));
  }

  private static String warned(Judgement j) {
    return j.warnings().isEmpty()
        ? ""
        : " Mind: "
            + j.warnings().stream()
                .flatMap(id -> j.step(id).stream())
                .map(s -> s.because() + " (" + held(s.finding()) + ")")
                .collect(Collectors.joining("; "))
            + ".";
  }

  /** What rules it out: the kind of tooth or space before any number. */
  private static Judgement.Step why(Judgement j) {
    List<Judgement.Step> against =
        j.steps().stream()
            .filter(s -> s.otherwise() instanceof Clause.Consequence.RulesOut)
            .filter(s -> s.finding().verdict() != Verdict.MET)
            .sorted(Comparator.comparing(s -> s.finding().verdict() != Verdict.NOT_MET))
            .toList();
    return against.stream()
        .filter(s -> s.finding().limit() instanceof Limit.OneOf)
        // What was not asked yet rules nothing out.
        .filter(s -> s.finding().verdict() == Verdict.NOT_MET)
        .findFirst()
        .orElseGet(against::getFirst);
  }

  /** What rules it out, with number, limit and source. */
  private static String reason(Judgement j) {
    Judgement.Step step = why(j);
    Finding finding = step.finding();
    int at = j.steps().indexOf(step);
    // A preparation that goes too far is told with what wanted it, the step before.
    Judgement.Step before = at > 0 ? j.steps().get(at - 1) : step;
    boolean prepared =
        switch (before.otherwise()) {
          case Clause.Consequence.Prepares wanted -> wanted.most().id().equals(finding.rule());
          case Clause.Consequence.Changes wanted -> wanted.most().id().equals(finding.rule());
          default -> false;
        };
    return String.format(
        Locale.ROOT,
        "%s%s: %s (%s: %s)",
        prepared ? held(before.finding()) + "; " : "",
        step.because(),
        held(finding),
        finding.standing().words(),
        finding.source());
  }

  private static String told(AbutmentFacts facts, Fact fact) {
    return facts.words(fact) + " " + facts.reading(fact).words();
  }

  private static String held(Finding finding) {
    return finding.what() + " " + finding.reading().words() + ", wanted " + finding.limit().words();
  }

  private static String words(List<String> parts) {
    return String.join("; ", parts);
  }

  private static void row(List<String> lines, String name, String text) {
    lines.add(String.format(Locale.ROOT, "  %-9s %s", name, text));
  }
}
