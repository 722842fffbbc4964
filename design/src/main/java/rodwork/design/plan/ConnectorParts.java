package rodwork.design.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.kennedy.KennedyClass;
import rodwork.design.plan.Part.ConnectorKind;
import rodwork.design.plan.Part.RestKind;
import rodwork.geometry.Vec3;
import rodwork.rules.Reading;

/** Chooses the kind of the major connector, and joins rests to it. */
final class ConnectorParts {
  private final Draft draft;
  private final boolean upper;

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
    ConnectorMaker maker =
        new ConnectorMaker(draft.ground, draft.dentition, draft.rules, draft.border, draft.choices);
    ConnectorMaker.Reach reach = new ConnectorMaker.Reach(spaces, teeth);
    Optional<Part.MajorConnector> made = upper ? upper(maker, reach, spaces) : lower(maker, reach);
    if (made.isEmpty()) {
      draft.ask(
          "No major connector could be laid: the scan does not show the surface between the sides;"
              + " scan palate or lingual slope to the fold.");
    }
    return made;
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
              ? "a space in front and support behind: a frame of two straps is stiff and leaves the palate free"
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
        "Where the vibrating line and a torus lie is not on the chart: no connector lies on either;"
            + " look at the back border in the mouth.");
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
    // Taught (handbook 5.18, 5.20): a high lingual frenum wants a plate in place of a bar.
    ConnectorKind kind =
        small || !frena.isEmpty() ? ConnectorKind.LINGUAL_PLATE : ConnectorKind.LINGUAL_BAR;
    String because =
        small
            ? "the room to the raised floor of the mouth is too little for a bar"
            : !frena.isEmpty()
                ? "a lingual frenum comes near the margin where a bar would cross it"
                : room.isEmpty()
                    ? "taken until the room to the raised floor of the mouth is measured"
                    : "the room to the raised floor of the mouth suffices";
    if (!frena.isEmpty()) {
      draft.ask(
          "A lingual frenum comes near the margin at ",
          frena,
          ": notch the lower border of the connector there, and look at it with the tongue raised.");
    }
    if (room.isEmpty()) {
      draft.ask(
          String.format(
              java.util.Locale.ROOT,
              "How far is it from the lingual margins to the raised floor of the mouth? A lingual bar"
                  + " wants %.0f mm; it is drawn as if there were.",
              wanted));
    }
    if (draft.choices.connector().isPresent()) {
      kind = draft.choices.connector().get();
      because = "chosen by a person";
    }
    return maker.lower(reach, kind, reading, because);
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
      if (held) {
        continue;
      }
      draft.border.stations.stream()
          .filter(s -> s.tooth().filter(rest.tooth()::equals).isPresent())
          .min(
              Comparator.comparingDouble(
                  s -> s.at().point().minus(rest.middle()).across(draft.ground.frame.z()).length()))
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
}
