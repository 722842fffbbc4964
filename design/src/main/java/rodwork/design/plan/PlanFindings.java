package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.kennedy.KennedyClass;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.clasp.Clause;
import rodwork.design.clasp.Judgement;
import rodwork.design.plan.Part.RestKind;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.rules.Wording;
import rodwork.survey.plane.PlanePatch;

/** Asks every rule of a plan, whatever the answer. */
final class PlanFindings {
  /** A border drawn on the triangles is known to about this [mm]. */
  static final double BORDER_MM = 0.1;

  private final Draft draft;
  private final Dentition dentition;
  private final PlanRules rules;
  private final List<Finding> findings = new ArrayList<>();

  PlanFindings(Draft draft) {
    this.draft = draft;
    this.dentition = draft.dentition;
    this.rules = draft.rules;
  }

  /**
   * Asks them all.
   *
   * @param tori that are there
   * @param levers where a base can turn about a fulcrum line
   */
  List<Finding> of(
      Optional<Part.MajorConnector> connector,
      List<TorusMark> tori,
      List<Part.IndirectRetainer> indirect,
      Optional<Levers> levers) {
    draft.rests.forEach(this::rest);
    findings.addAll(new RoomFindings(draft).of());
    draft.plates.forEach(this::plate);
    draft.clasps.forEach(this::clasp);
    apart(draft.minors);
    counts();
    connector.ifPresent(c -> findings.addAll(new ConnectorFindings(draft, c).of(tori)));
    for (Part.IndirectRetainer i : indirect) {
      least(
          rules.bases().leverRatio(),
          "distance from the fulcrum line over that of the base end",
          Spots.on(i.rest().tooth(), "indirect retainer", i.rest().middle()),
          new Reading.Measured(i.ratio(), 0.02, "1"));
    }
    levers.ifPresent(l -> retainers(indirect, l.kennedy()));
    return findings;
  }

  /** What the denture wants in all. */
  private void counts() {
    if (draft.bases.isEmpty()) {
      return;
    }
    PlanRules.Counts counts = rules.counts();
    Place whole = Place.of("whole denture");
    least(counts.rests(), "rests", whole, count(draft.rests.size()));
    least(counts.planes(), "surfaces with a guiding plate", whole, count(draft.plates.size()));
    dentition
        .kennedy()
        .kennedy()
        .flatMap(
            kennedy ->
                switch (kennedy) {
                  case I -> Optional.of(counts.claspsClassOne());
                  case II -> Optional.of(counts.claspsClassTwo());
                  case III -> Optional.of(counts.claspsClassThree());
                  case IV -> Optional.empty();
                })
        .ifPresent(wanted -> least(wanted, "clasps", whole, count(draft.clasps.size())));
    long facial =
        draft.clasps.stream()
            .filter(c -> c.judgement().family().surface() == Surface.FACIAL)
            .count();
    most(
        counts.mixedRetention(),
        "clasps that hold on another surface than the others",
        whole,
        count(Math.min(facial, draft.clasps.size() - facial)));
  }

  static Reading count(long number) {
    return new Reading.Measured(number, 0, "count");
  }

  /**
   * How many of them lie across the fulcrum line, against what the class wants: McCracken, from
   * memory.
   */
  private void retainers(List<Part.IndirectRetainer> indirect, KennedyClass kennedy) {
    long across = indirect.stream().filter(i -> i.ratio() > 0).count();
    least(
        kennedy == KennedyClass.I
            ? rules.bases().indirectClassOne()
            : rules.bases().indirectOther(),
        "indirect retainers across the fulcrum line from the bases",
        Place.of("whole denture"),
        count(across));
  }

  private void rest(Part.Rest rest) {
    if (rest.kind() == RestKind.OCCLUSAL || rest.kind() == RestKind.EXTENDED) {
      least(
          rules.rests().widthLeast(),
          "width of the rest at the marginal ridge",
          Spots.on(rest.tooth(), rest.kind().words(), rest.middle()),
          Reading.mm(rest.widthMm(), 0));
    }
  }

  private void plate(Part.GuidingPlate plate) {
    Vec3 middle = plate.line().points().get(plate.line().points().size() / 2);
    least(
        plate.plane().wantedHeight(),
        "height of the guiding plane as it is",
        Spots.on(plate.tooth(), plate.side().name().toLowerCase(java.util.Locale.ROOT), middle),
        Reading.mm(plate.plane().there().map(PlanePatch::heightMm).orElse(0.0), 0.3));
  }

  /** What the clasp was chosen by, and what it breaks all the same. */
  private void clasp(Part.Clasp clasp) {
    for (Judgement.Step step : clasp.judgement().steps()) {
      // What is shown alone and not known decides nothing; the ledger tells it.
      boolean open =
          step.otherwise() instanceof Clause.Consequence.Shows
              && !step.finding().verdict().decided();
      if (!open) {
        findings.add(step.finding());
      }
    }
  }

  private void apart(List<Part.MinorConnector> minors) {
    for (int i = 0; i < minors.size(); i++) {
      for (int j = i + 1; j < minors.size(); j++) {
        Line a = minors.get(i).line();
        Line b = minors.get(j).line();
        double gap = a.points().stream().mapToDouble(b::distanceMm).min().orElse(0);
        if (gap < 3 * rules.bases().spacing().value()) {
          least(
              rules.bases().spacing(),
              "distance of upright parts",
              Spots.at(
                  Wording.of(
                      "tooth ",
                      minors.get(i).tooth(),
                      ", to that of tooth ",
                      minors.get(j).tooth()),
                  a.points().getLast()),
              Reading.mm(gap, BORDER_MM));
        }
      }
    }
  }

  private void least(Threshold limit, String what, Place place, Reading reading) {
    findings.add(Finding.least(limit, what, place, reading));
  }

  private void most(Threshold limit, String what, Place place, Reading reading) {
    findings.add(Finding.most(limit, what, place, reading));
  }
}
