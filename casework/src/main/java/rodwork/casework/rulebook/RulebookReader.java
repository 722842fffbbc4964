package rodwork.casework.rulebook;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import rodwork.anatomy.space.SpaceRules;
import rodwork.casework.prescription.LaboratoryRules;
import rodwork.design.abutment.AbutmentRules;
import rodwork.design.arm.ArmMaterial;
import rodwork.design.arm.ArmRules;
import rodwork.design.arm.ArmSections;
import rodwork.design.arm.Section;
import rodwork.design.load.LoadRules;
import rodwork.design.plan.PlanRules;
import rodwork.design.preparation.PreparationRules;
import rodwork.survey.SurveyRules;
import rodwork.survey.path.PathRules;
import rodwork.survey.plane.PlaneRules;
import rodwork.survey.seating.SeatingRules;
import rodwork.survey.standoff.StandOffRules;
import rodwork.survey.tripod.TripodRules;

/** Turns the tree of a rulebook into typed records. */
final class RulebookReader {
  private final String name;
  private final Entry root;

  RulebookReader(String name, Entry root) {
    this.name = name;
    this.root = root;
  }

  Rulebook read(String text, String hash) {
    List<Conflict> conflicts =
        root.at("conflicts").items().stream().map(RulebookReader::conflict).toList();
    ThresholdTable thresholds = new ThresholdTable(name, root.at("thresholds"), conflicts);
    List<ArmMaterial> materials =
        root.at("materials").items().stream().map(RulebookReader::material).toList();
    Rulebook book =
        new Rulebook(
            name,
            root.at("title").text(),
            hash,
            text,
            SpaceRules.from(thresholds),
            SurveyRules.from(thresholds),
            TripodRules.from(thresholds),
            PlaneRules.from(thresholds),
            PathRules.from(thresholds),
            SeatingRules.from(thresholds),
            StandOffRules.from(thresholds),
            ArmRules.from(thresholds),
            new ClaspReader(thresholds, materials).read(root),
            AbutmentRules.Limits.from(thresholds),
            PlanRules.from(thresholds),
            PreparationRules.from(thresholds),
            LaboratoryRules.from(thresholds),
            LoadRules.from(thresholds),
            conflicts,
            materials,
            sections(root.at("sections")));
    thresholds.refuseUnused();
    return book;
  }

  private static Conflict conflict(Entry e) {
    List<Conflict.Side> sides =
        e.at("sides").items().stream()
            .map(
                s -> {
                  Entry value = s.find("value");
                  return new Conflict.Side(
                      s.at("id").text(),
                      value == null ? Double.NaN : value.number(),
                      s.at("source").text(),
                      s.at("standing").standing());
                })
            .toList();
    Entry taken = e.at("taken");
    return taken.make(
        () ->
            new Conflict(
                e.at("id").text(),
                e.at("topic").text(),
                e.at("unit").text(),
                sides,
                taken.text(),
                e.at("because").text()));
  }

  private static ArmMaterial material(Entry e) {
    return e.make(
        () ->
            new ArmMaterial(
                e.at("id").text(),
                e.at("name").text(),
                making(e.at("making"), e.at("making").text()),
                e.at("modulus").range(),
                e.at("proof").range(),
                e.at("poisson").number(),
                e.at("source").text(),
                e.at("standing").standing(),
                e.at("cautions").items().stream().map(Entry::text).toList()));
  }

  private static ArmMaterial.Making making(Entry e, String word) {
    return e.make(() -> ArmMaterial.Making.valueOf(word.toUpperCase(Locale.ROOT)));
  }

  private static Map<ArmMaterial.Making, ArmSections> sections(Entry e) {
    Map<ArmMaterial.Making, ArmSections> sections = new EnumMap<>(ArmMaterial.Making.class);
    e.fields()
        .forEach(
            (word, s) ->
                sections.put(
                    making(s, word),
                    new ArmSections(
                        section(s, s.at("origin")),
                        section(s, s.at("tip")),
                        s.at("source").text(),
                        s.at("standing").standing())));
    return sections;
  }

  private static Section section(Entry shape, Entry e) {
    return e.make(
        () ->
            shape.at("shape").text().equals("round")
                ? new Section.Round(e.at("diameter").number())
                : new Section.HalfRound(e.at("width").number(), e.at("thickness").number()));
  }
}
