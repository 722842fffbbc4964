package rodwork.design.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.chart.Torus;
import rodwork.anatomy.kennedy.KennedyClass;
import rodwork.anatomy.tooth.Neighbour;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.plan.Part.ConnectorKind;
import rodwork.design.plan.Part.RestKind;
import rodwork.geometry.Vec3;
import rodwork.rules.Reading;

/** Chooses the kind of the major connector, and joins rests to it. */
final class ConnectorParts {
  private final Draft draft;
  private final boolean upper;

  /** Whether a question already tells why there is no connector. */
  private boolean told;

  ConnectorParts(Draft draft) {
    this.draft = draft;
    this.upper = draft.ground.frame.jaw() == Jaw.UPPER;
  }

  Optional<Part.MajorConnector> major() {
    Set<ToothNumber> spaces = new HashSet<>();
    draft.bases.forEach(b -> spaces.addAll(b.space().missing()));
    Set<ToothNumber> teeth = new HashSet<>();
    draft.rests.forEach(r -> teeth.add(r.tooth()));
    if (draft.bases.isEmpty() || teeth.isEmpty()) {
      return Optional.empty();
    }
    ConnectorMaker maker = new ConnectorMaker(draft);
    ConnectorMaker.Reach reach = new ConnectorMaker.Reach(spaces, teeth);
    Optional<Part.MajorConnector> made =
        upper ? roundTorus(maker, reach, spaces) : lower(maker, reach);
    if (made.isEmpty() && !told) {
      draft.ask(
          "No major connector could be laid: the scan does not show the surface between the sides;"
              + " scan palate or lingual slope to the fold. Until then the plan is not whole, and"
              + " nothing is cut or made by it.");
    }
    return made;
  }

  /**
   * The upper connector that is wanted, or where a torus lies in its way, and nobody chose, one
   * that goes round it.
   */
  private Optional<Part.MajorConnector> roundTorus(
      ConnectorMaker maker, ConnectorMaker.Reach reach, Set<ToothNumber> spaces) {
    Optional<Part.MajorConnector> wanted = upper(maker, reach, spaces);
    if (wanted.isEmpty() || !draft.tori.there().contains(Torus.Site.PALATAL)) {
      return wanted;
    }
    OptionalDouble room = draft.tori.roomMm(Torus.Site.PALATAL, wanted.get());
    if (room.isEmpty()) {
      draft.ask(
          "There is a palatal torus, and chart or scan do not tell where: name the teeth between"
              + " which it reaches and its width, so that the connector can go round it.");
      return wanted;
    }
    if (keepsClear(wanted.get()) || draft.choices.connector().isPresent()) {
      return wanted;
    }
    boolean front = spaces.stream().anyMatch(ToothNumber::isAnterior);
    // Taught: two straps go round a torus; a U only where it reaches too far back and stays
    // (McCracken, from memory).
    Optional<Part.MajorConnector> frame =
        maker
            .upper(
                reach,
                ConnectorKind.ANTERIOR_POSTERIOR_STRAP,
                front,
                "a torus lies in the middle of the palate: two straps go round it")
            .filter(m -> m.opening().isPresent());
    Optional<Part.MajorConnector> open =
        maker.upper(
            reach,
            ConnectorKind.U_SHAPED,
            front,
            "a torus reaches too far back for a strap behind it; the least stiff kind, for a torus"
                + " that is not removed");
    for (Optional<Part.MajorConnector> other : List.of(frame, open)) {
      if (other.filter(this::keepsClear).filter(this::wideEnough).isPresent()) {
        return other;
      }
    }
    draft.ask(
        String.format(
            Locale.ROOT,
            "No upper connector keeps %.0f mm clear of the palatal torus and %.1f mm wide (%s; %s): it"
                + " is passed over with relief, or removed before the impression.",
            draft.rules.tissue().torusClear().value(),
            narrowestMm(),
            tried("two straps", frame),
            tried("a U", open)));
    return wanted;
  }

  /** How near one that was tried comes. */
  private String tried(String kind, Optional<Part.MajorConnector> made) {
    if (made.isEmpty()) {
      return kind + " find no way round it";
    }
    double room = draft.tori.roomMm(Torus.Site.PALATAL, made.get()).orElse(0);
    return kind
        + (room > 0 ? String.format(Locale.ROOT, " %.1f mm from it", room) : " would lie over it")
        + String.format(Locale.ROOT, ", %.1f mm wide", made.get().leastWidthMm());
  }

  /** Narrower than a band may get beside a torus the frame gives way to the next kind. */
  private boolean wideEnough(Part.MajorConnector connector) {
    return connector.leastWidthMm() >= narrowestMm();
  }

  private double narrowestMm() {
    return draft.rules.bases().keptShare().value() * draft.rules.upper().posteriorStrap().value();
  }

  private boolean keepsClear(Part.MajorConnector connector) {
    OptionalDouble room = draft.tori.roomMm(Torus.Site.PALATAL, connector);
    return room.isPresent() && room.getAsDouble() >= draft.rules.tissue().torusClear().value();
  }

  private Optional<Part.MajorConnector> upper(
      ConnectorMaker maker, ConnectorMaker.Reach reach, Set<ToothNumber> spaces) {
    boolean front = spaces.stream().anyMatch(ToothNumber::isAnterior);
    KennedyClass kennedy = draft.dentition.kennedy().kennedy().orElse(KennedyClass.III);
    long lost = draft.bases.stream().mapToLong(b -> b.space().missing().size()).sum();
    ConnectorKind kind;
    String because;
    if (lost >= draft.rules.upper().plateFromLost().value()) {
      kind = ConnectorKind.PALATAL_PLATE;
      because = lost + " teeth are lost: the palate has to carry";
    } else if (kennedy == KennedyClass.III && !front) {
      kind = ConnectorKind.PALATAL_STRAP;
      because = "bounded spaces behind: teeth carry, and a strap joins the sides";
    } else {
      kind = ConnectorKind.ANTERIOR_POSTERIOR_STRAP;
      because =
          front
              ? "a space in front and support behind: a frame of two straps is stiff and leaves the"
                  + " palate free"
              : "a free end carried by teeth and ridge: a frame of two straps is stiff";
    }
    if (draft.choices.connector().isPresent()) {
      kind = draft.choices.connector().get();
      because = "chosen by a person; proposed would be otherwise where: " + because;
    }
    if (kind == ConnectorKind.ANTERIOR_POSTERIOR_STRAP) {
      Optional<Part.MajorConnector> made = maker.upper(reach, kind, front, because);
      if (made.filter(m -> m.opening().isEmpty()).isPresent()
          && draft.choices.connector().isEmpty()) {
        return maker.upper(
            reach,
            ConnectorKind.PALATAL_STRAP,
            front,
            because + "; the opening would be shorter than the rules want, so it is closed");
      }
      return made;
    }
    draft.ask(
        "Where the vibrating line lies is not on the chart: no connector lies on it; look at the"
            + " back border in the mouth.");
    return maker.upper(reach, kind, front, because);
  }

  private Optional<Part.MajorConnector> lower(ConnectorMaker maker, ConnectorMaker.Reach reach) {
    OptionalDouble room =
        ToothNumber.allOf(draft.ground.frame.jaw())
            .filter(t -> draft.dentition.standing().contains(t))
            .map(t -> draft.dentition.chart().place(t).floorDepthMm())
            .filter(OptionalDouble::isPresent)
            .mapToDouble(OptionalDouble::getAsDouble)
            .min();
    Reading reading =
        room.isPresent()
            ? Reading.mm(room.getAsDouble(), 0)
            : new Reading.NotKnown("the chart does not tell the depth of the floor of the mouth");
    double wanted = draft.rules.lower().room().value();
    List<ToothNumber> frena =
        ToothNumber.allOf(draft.ground.frame.jaw())
            .filter(t -> draft.dentition.chart().place(t).lingualFrenum() == Answer.YES)
            .toList();
    boolean small = room.isPresent() && room.getAsDouble() < wanted;
    boolean torus = torusUnderBar();
    // Taught (freezingblue 338316; cram.com): a torus or a high lingual frenum wants a plate, no
    // bar.
    ConnectorKind kind =
        small || torus || !frena.isEmpty()
            ? ConnectorKind.LINGUAL_PLATE
            : ConnectorKind.LINGUAL_BAR;
    String because =
        small
            ? "the room to the raised floor of the mouth is too little for a bar"
            : torus
                ? "a torus leaves no room for a bar above it"
                : !frena.isEmpty()
                    ? "a lingual frenum comes near the margin where a bar would cross it"
                    : room.isEmpty()
                        ? "taken until the room to the raised floor of the mouth is measured"
                        : "the room to the raised floor of the mouth suffices";
    if (!frena.isEmpty()) {
      draft.ask(
          "A lingual frenum comes near the margin at ",
          frena,
          ": the lower border of the connector is notched there; look at it with the tongue"
              + " raised.");
    }
    if (draft.choices.connector().isPresent()) {
      kind = draft.choices.connector().get();
      because = "chosen by a person";
    }
    Optional<Part.MajorConnector> made =
        shown(maker, reach, kind) ? maker.lower(reach, kind, reading, because) : Optional.empty();
    if (room.isEmpty()) {
      draft.ask(
          String.format(
              Locale.ROOT,
              "How far is it from the lingual margins to the raised floor of the mouth? A lingual"
                  + " bar wants %.0f mm%s.",
              wanted,
              made.isPresent() ? "; it is drawn as if there were" : ""));
    }
    return made;
  }

  /**
   * Whether a lower connector may be laid: a bar that nobody chose is not where the scan ends
   * before its lower edge. Where it does, the plan asks.
   */
  private boolean shown(ConnectorMaker maker, ConnectorMaker.Reach reach, ConnectorKind kind) {
    List<ConnectorMaker.TooShort> tooShort = maker.tooShort(reach, kind);
    if (tooShort.isEmpty()) {
      return true;
    }
    boolean plate = kind == ConnectorKind.LINGUAL_PLATE;
    boolean laid = plate || draft.choices.connector().isPresent();
    List<Object> words = new ArrayList<>();
    words.add("The scan ends too early below the lingual margins for a " + kind.words() + ": ");
    for (ConnectorMaker.TooShort at : tooShort) {
      words.add(words.size() > 1 ? ", at " : "at ");
      words.add(at.place());
      words.add(String.format(Locale.ROOT, " after %.1f of %.1f mm", at.shownMm(), at.wantedMm()));
    }
    words.add(
        laid
            ? ". There its lower border is drawn over what is not shown: scan deeper, or look at it"
                + " in the mouth."
            : ". Scan deeper there; a sublingual bar lies deeper still. Or choose a lingual plate."
                + " Until then no major connector is laid, the plan is not whole, and nothing is"
                + " cut or made by it.");
    draft.ask(words.toArray());
    told = !laid;
    return laid;
  }

  /** Whether a mandibular torus lies, or may lie, where a lingual bar would run. */
  private boolean torusUnderBar() {
    double wanted =
        draft.rules.lower().border().value()
            + draft.rules.lower().barHeight().value()
            + draft.tori.clearMm();
    List<String> unplaced =
        draft.tori.there().stream()
            .filter(site -> !draft.tori.placed(site))
            .map(Torus.Site::words)
            .toList();
    if (!unplaced.isEmpty()) {
      draft.ask(
          "There is a "
              + String.join(" and a ", unplaced)
              + ", and the chart does not tell where: name the teeth along which it reaches and how"
              + " far below their margins it begins, so that the connector can be held against"
              + " it.");
    }
    OptionalDouble least = draft.tori.leastBelowMm();
    if (least.isPresent()
        && least.getAsDouble()
            < draft.rules.lower().border().value() + draft.rules.tissue().torusClear().value()) {
      draft.ask(
          "A mandibular torus begins so near to the margins that every lower connector passes over"
              + " it: with relief, or removed before the impression, or a labial bar, which Rodwork"
              + " does not lay.");
    }
    return !unplaced.isEmpty() || (least.isPresent() && least.getAsDouble() < wanted);
  }

  /** From each rest that no base holds, across the margin to the connector. */
  void minor(Part.MajorConnector connector) {
    double from =
        upper ? draft.rules.upper().border().value() : draft.rules.lower().border().value();
    for (Part.Rest rest : draft.rests) {
      boolean held =
          rest.kind() != RestKind.CINGULUM
              && draft
                  .dentition
                  .spaceBeside(rest.tooth(), rest.side())
                  .filter(draft::filled)
                  .isPresent();
      if (held || joined(rest)) {
        continue;
      }
      draft
          .border
          .beside(rest)
          .ifPresent(
              s -> {
                List<Vec3> line =
                    new ArrayList<>(draft.ground.laidStraight(rest.middle(), s.at().point()));
                Optional<Vec3> end =
                    connector.kind() == ConnectorKind.LINGUAL_PLATE
                        ? Optional.of(s.at().point())
                        : draft.border.at(s, from, from, 0);
                end.ifPresent(
                    e -> {
                      line.addAll(
                          draft
                              .ground
                              .across(s.at().point(), e)
                              .orElseGet(() -> draft.ground.laidStraight(s.at().point(), e)));
                      draft.minors.add(
                          new Part.MinorConnector(rest.tooth(), rest.side(), Line.open(line)));
                    });
              });
    }
  }

  /** Whether the minor connector of the rest across the same embrasure carries this one too. */
  private boolean joined(Part.Rest rest) {
    return draft.minors.stream()
        .anyMatch(
            m ->
                beside(rest.tooth(), rest.side()).filter(m.tooth()::equals).isPresent()
                    && beside(m.tooth(), m.side()).filter(rest.tooth()::equals).isPresent());
  }

  private Optional<ToothNumber> beside(ToothNumber tooth, Surface side) {
    return side.isProximal()
        ? draft.dentition.tooth(tooth).flatMap(t -> t.neighbour(side)).map(Neighbour::number)
        : Optional.empty();
  }
}
