package rodwork.design.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.occlusion.OpposingRoom;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.rules.Wording;

/** A plan in the making: what it is made on, and the parts laid so far. Mutable. */
final class Draft {
  /** Distances from the margins are needed this far beyond the widest border [mm]. */
  private static final double BEYOND_MM = 8;

  final Dentition dentition;
  final PlanRules rules;
  final Choices choices;
  final OpposingRoom opposing;
  final Ground ground;
  final Border border;
  final Tori tori;
  final List<Part.Rest> rests = new ArrayList<>();
  final List<Part.Clasp> clasps = new ArrayList<>();
  final List<Part.GuidingPlate> plates = new ArrayList<>();
  final List<Part.DentureBase> bases = new ArrayList<>();
  final List<Part.MinorConnector> minors = new ArrayList<>();
  final List<Wording> questions = new ArrayList<>();
  private final Map<ToothNumber, CrownBoard> crowns = new HashMap<>();

  Draft(Arch arch, Dentition dentition, PlanRules rules, Choices choices, OpposingRoom opposing) {
    this.dentition = dentition;
    this.rules = rules;
    this.choices = choices;
    this.opposing = opposing;
    this.ground = new Ground(arch, dentition.labels(), TriangleTree.of(arch.mesh()));
    this.border =
        new Border(
            ground,
            dentition,
            Math.max(rules.upper().border().value(), rules.lower().border().value()) + BEYOND_MM);
    this.tori = new Tori(ground, dentition, border, rules);
  }

  CrownBoard crown(Tooth tooth) {
    return crowns.computeIfAbsent(tooth.number(), _ -> new CrownBoard(ground.mesh(), tooth));
  }

  /**
   * Whether a tooth may carry the denture: neither a person nor the chart takes it out of that, and
   * it is no implant.
   */
  boolean mayCarry(ToothNumber tooth) {
    ToothEntry entry = dentition.chart().tooth(tooth);
    return !choices.notUsed().contains(tooth)
        && !dentition.isImplant(tooth)
        && entry.abutment() != Answer.NO
        && (entry.abutment() == Answer.YES || !tooLoose(tooth));
  }

  /** Whether a tooth is charted as looser than what carries; a person may say that it shall. */
  boolean tooLoose(ToothNumber tooth) {
    return dentition.chart().tooth(tooth).mobility().grade() > rules.counts().mobility().value();
  }

  /** Leaves a question; teeth are given as themselves, so that every notation can tell them. */
  void ask(Object... parts) {
    questions.add(Wording.of(parts));
  }

  /** Whether a space gets a base. */
  boolean filled(Space space) {
    return bases.stream().anyMatch(b -> b.space().equals(space));
  }
}
