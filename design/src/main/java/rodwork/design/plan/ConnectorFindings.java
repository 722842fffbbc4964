package rodwork.design.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.chart.Torus;
import rodwork.design.plan.Part.ConnectorKind;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.rules.Wording;

/** Asks every rule of a major connector, whatever the answer. */
final class ConnectorFindings {
  private final Draft draft;
  private final PlanRules rules;
  private final Part.MajorConnector connector;
  private final List<Finding> findings = new ArrayList<>();

  ConnectorFindings(Draft draft, Part.MajorConnector connector) {
    this.draft = draft;
    this.rules = draft.rules;
    this.connector = connector;
  }

  /** Asks them all. */
  List<Finding> of(List<TorusMark> tori) {
    border();
    kind(tori);
    tori.forEach(this::torus);
    return findings;
  }

  private void border() {
    boolean upper = connector.kind().isUpper();
    Threshold margin = upper ? rules.upper().border() : rules.lower().border();
    if (connector.kind() != ConnectorKind.LINGUAL_PLATE) {
      Vec3 nearest = null;
      double least = Double.POSITIVE_INFINITY;
      for (Vec3 p : connector.outline().points()) {
        double d = draft.border.fromMargins(p);
        if (d < least && !nearSpace(p, margin)) {
          least = d;
          nearest = p;
        }
      }
      if (nearest != null) {
        least(
            margin,
            "border of the " + connector.kind().words() + " from the gingival margins",
            Spots.at(Wording.of("at its nearest to a margin"), nearest),
            Reading.mm(least, PlanFindings.BORDER_MM));
      }
    }
  }

  private void kind(List<TorusMark> tori) {
    Place whole = Place.of(connector.kind().words());
    switch (connector.kind()) {
      case LINGUAL_BAR -> {
        least(
            rules.lower().room(),
            "room from the lingual margins to the raised floor of the mouth",
            whole,
            connector.room());
        height(whole);
        frena();
      }
      case SUBLINGUAL_BAR -> {
        least(
            rules.lower().sublingualRoom(),
            "room from the lingual margins to the raised floor of the mouth",
            whole,
            connector.room());
        height(whole);
        frena();
        toriUnder(tori);
      }
      case PALATAL_STRAP ->
          least(
              rules.upper().strapWidth(),
              "least width of the palatal strap",
              whole,
              Reading.mm(connector.leastWidthMm(), 2 * PlanFindings.BORDER_MM));
      case ANTERIOR_POSTERIOR_STRAP, U_SHAPED -> {
        if (connector.kind() == ConnectorKind.U_SHAPED) {
          reasons();
        }
        least(
            rules.upper().anteriorStrap(),
            "least width of the " + connector.kind().words(),
            whole,
            Reading.mm(connector.leastWidthMm(), 2 * PlanFindings.BORDER_MM));
        Straps.of(draft.ground, connector)
            .ifPresent(
                straps ->
                    least(
                        rules.upper().posteriorStrap(),
                        "least width of the strap behind the opening",
                        whole,
                        Reading.mm(straps.behindMm(), 2 * PlanFindings.BORDER_MM)));
        connector
            .opening()
            .ifPresent(
                o ->
                    least(
                        rules.upper().opening(),
                        "opening from front to back",
                        whole,
                        Reading.mm(draft.ground.depthMm(o.points()), 2 * PlanFindings.BORDER_MM)));
      }
      case LINGUAL_PLATE ->
          least(
              rules.lower().plateEnds(),
              "ends of the lingual plate that lie on a tooth with a rest",
              whole,
              PlanFindings.count(restedEnds()));
      case PALATAL_PLATE -> {}
    }
  }

  private void height(Place whole) {
    least(
        rules.lower().barHeight(),
        "least height of the " + connector.kind().words(),
        whole,
        Reading.mm(connector.leastWidthMm(), 2 * PlanFindings.BORDER_MM));
  }

  /** Teeth at the ends of a plate that carry rests; one tooth alone is one end. */
  private long restedEnds() {
    return connector.towardsTeeth().stream()
        .flatMap(edge -> Stream.of(edge.points().getFirst(), edge.points().getLast()))
        .map(this::nearestTooth)
        .flatMap(Optional::stream)
        .distinct()
        .filter(tooth -> draft.rests.stream().anyMatch(r -> r.tooth().equals(tooth)))
        .count();
  }

  private Optional<ToothNumber> nearestTooth(Vec3 point) {
    return draft.border.stations.stream()
        .filter(s -> s.tooth().isPresent())
        .min(Comparator.comparingDouble(s -> s.at().point().distance(point)))
        .flatMap(Station::tooth);
  }

  /** Why the least stiff of the palatal connectors may be taken. */
  private void reasons() {
    long lost =
        draft.bases.stream()
            .flatMap(b -> b.space().missing().stream())
            .filter(ToothNumber::isAnterior)
            .count();
    int many = lost >= rules.upper().manyAnterior().value() ? 1 : 0;
    boolean unknown = !draft.tori.notKnown().isEmpty();
    int torus = draft.tori.there().isEmpty() ? 0 : 1;
    least(
        rules.upper().openReasons(),
        "reasons for a U, the least stiff palatal connector: a torus that stays, many front teeth"
            + " lost",
        Place.of(connector.kind().words()),
        unknown && many == 0
            ? new Reading.NotKnown("the chart does not say whether there is a palatal torus")
            : PlanFindings.count(torus + many));
  }

  /** Tori that lie, or may lie, where a sublingual bar runs; nobody knows of some. */
  private void toriUnder(List<TorusMark> tori) {
    long there =
        tori.stream()
            .filter(
                t ->
                    t.roomMm().isEmpty()
                        || t.roomMm().getAsDouble() < rules.tissue().torusClear().value())
            .count();
    most(
        rules.lower().toriUnder(),
        "mandibular tori where the sublingual bar runs",
        Place.of(connector.kind().words()),
        there == 0 && !draft.tori.notKnown().isEmpty()
            ? new Reading.NotKnown(
                "the chart does not say whether there is a "
                    + draft.tori.notKnown().stream()
                        .map(Torus.Site::words)
                        .collect(Collectors.joining(" or a ")))
            : PlanFindings.count(there));
  }

  /** High lingual frena where a bar runs; while nobody told of any the plan asks. */
  private void frena() {
    List<ToothNumber> high =
        ToothNumber.allOf(draft.dentition.chart().jaw())
            .filter(t -> draft.dentition.chart().place(t).lingualFrenum() == Answer.YES)
            .toList();
    if (!high.isEmpty()) {
      most(
          rules.lower().frena(),
          "high lingual frena where the " + connector.kind().words() + " runs",
          new Place(Wording.of("at ", high), Optional.empty()),
          PlanFindings.count(high.size()));
    }
  }

  private void torus(TorusMark torus) {
    String words = torus.site().words();
    least(
        rules.tissue().torusClear(),
        "room between the " + connector.kind().words() + " and the " + words,
        torus
            .edge()
            .map(e -> Spots.at(Wording.of(words), e.points().get(e.points().size() / 2)))
            .orElse(Place.of(words)),
        torus.roomMm().isPresent()
            ? Reading.mm(torus.roomMm().getAsDouble(), PlanFindings.BORDER_MM)
            : new Reading.NotKnown("place and size of the torus are not on chart or scan"));
  }

  /** Where a base begins, the connector enters it and comes near the margin beside it. */
  private boolean nearSpace(Vec3 p, Threshold border) {
    double reach = border.value() + rules.bases().finishLine().value();
    return draft.dentition.openSpaces().stream()
        .anyMatch(s -> !s.crest().isEmpty() && Line.open(s.crest()).distanceMm(p) < reach);
  }

  private void least(Threshold limit, String what, Place place, Reading reading) {
    findings.add(Finding.least(limit, what, place, reading));
  }

  private void most(Threshold limit, String what, Place place, Reading reading) {
    findings.add(Finding.most(limit, what, place, reading));
  }
}
