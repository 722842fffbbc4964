package rodwork.casework.prescription;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.abutment.Abutment;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.Family;
import rodwork.design.clasp.Judgement;
import rodwork.rules.Reading;
import rodwork.survey.Gauges;

/** One abutment as it is prescribed: the clasp that stands first, its gauge, place and material. */
final class AbutmentRow {
  /** A mark is the one of a gauge within this [mm]. */
  private static final double SAME_GAUGE_MM = 1e-6;

  private AbutmentRow() {}

  static ObjectNode of(Abutment abutment) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("tooth", abutment.tooth().number().fdi());
    json.put("spaceSide", PrescriptionContent.word(abutment.side()));
    json.put("besideSpace", abutment.space().isPresent());
    Judgement first = abutment.judgement().inOrder().getFirst();
    Family family = first.family();
    json.put("answer", first.answer().words());
    if (first.answer() == Judgement.Answer.DOES_NOT_SERVE) {
      json.putNull("clasp");
      return json;
    }
    ObjectNode clasp = json.putObject("clasp");
    clasp.put("family", family.id());
    clasp.put("name", family.name());
    clasp.put("material", family.material());
    Figures.put(clasp, "gaugeMm", family.gauge().value(), Figures.MM);
    Figures.put(clasp, "gaugeInch", Gauges.nominalInch(family.gauge().value()), 3);
    clasp.put("place", first.tip().map(tip -> place(family, tip)).orElse(null));
    Optional<AbutmentFacts.Mark> mark = first.tip().flatMap(tip -> mark(abutment, family, tip));
    number(clasp, "undercutMm", mark.map(AbutmentFacts.Mark::depth));
    number(clasp, "undercutAtReferenceMm", mark.map(AbutmentFacts.Mark::atReference));
    number(clasp, "fromMarginMm", mark.map(AbutmentFacts.Mark::fromMargin));
    number(clasp, "belowSurveyLineMm", mark.map(AbutmentFacts.Mark::belowLine));
    ArrayNode undecided = clasp.putArray("notKnown");
    first.undecided().stream().map(PrescriptionContent::word).sorted().forEach(undecided::add);
    return json;
  }

  private static void number(ObjectNode json, String name, Optional<Reading> reading) {
    double value =
        reading.orElse(null) instanceof Reading.Measured measured ? measured.value() : Double.NaN;
    Figures.put(json, name, value, Figures.MM);
  }

  private static Optional<AbutmentFacts.Mark> mark(
      Abutment abutment, Family family, AcrossThird tip) {
    AbutmentFacts.Third third =
        abutment.judgement().facts().thirds().get(new AbutmentFacts.Site(family.surface(), tip));
    return third == null
        ? Optional.empty()
        : third.marks().stream()
            .filter(m -> Math.abs(m.gaugeMm() - family.gauge().value()) < SAME_GAUGE_MM)
            .findFirst();
  }

  /** Such as {@code mesio-facial}. */
  private static String place(Family family, AcrossThird third) {
    String side =
        switch (third) {
          case MESIAL -> "mesio-";
          case MIDDLE -> "mid-";
          case DISTAL -> "disto-";
        };
    return side + (family.surface() == Surface.FACIAL ? "facial" : "lingual");
  }
}
