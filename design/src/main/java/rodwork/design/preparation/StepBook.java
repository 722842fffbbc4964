package rodwork.design.preparation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.cut.CutFrame;
import rodwork.design.cut.PreparedCast;
import rodwork.design.cut.PreparedCast.Applied;
import rodwork.design.cut.PreparedCast.Taken;
import rodwork.design.plan.Plan;
import rodwork.design.preparation.MouthPreparation.Refused;
import rodwork.design.preparation.Step.Kind;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;
import rodwork.rules.Limit;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;

/** The list as it grows: steps, what was refused, and what no cut could serve. Mutable. */
final class StepBook {
  /** Less than this no hand can cut [mm]. */
  static final double LEAST_CUT_MM = 0.05;

  final Arch arch;
  final Dentition dentition;
  final Plan plan;
  final Preparer.Rules rules;
  final List<Step> steps = new ArrayList<>();
  final List<Refused> refused = new ArrayList<>();
  final Map<ToothNumber, List<String>> unserved = new LinkedHashMap<>();

  StepBook(Arch arch, Dentition dentition, Plan plan, Preparer.Rules rules) {
    this.arch = arch;
    this.dentition = dentition;
    this.plan = plan;
    this.rules = rules;
  }

  Tooth tooth(ToothNumber number) {
    return dentition.tooth(number).orElseThrow();
  }

  Threshold enamelMost(ToothNumber tooth) {
    return rules.own().cuts().enamel(tooth);
  }

  List<String> unserved(ToothNumber tooth) {
    return unserved.computeIfAbsent(tooth, _ -> new ArrayList<>());
  }

  /** The greatest depth of a cut, on the vertices and along the lines that it was laid by. */
  double enamel(Applied applied, double alongLines) {
    return PreparedCast.enamel(arch.mesh(), applied, alongLines);
  }

  void step(
      Kind kind,
      Tooth tooth,
      Surface surface,
      String what,
      Vec3 place,
      double height,
      Applied applied,
      double amount,
      CutFrame frame,
      List<Finding> more,
      List<String> cautions) {
    Taken taken = PreparedCast.taken(arch.mesh(), applied);
    double greatest = Math.max(amount, taken.greatestMm());
    List<Finding> findings = new ArrayList<>();
    List<String> all = new ArrayList<>(cautions);
    if (kind == Kind.GUIDING_PLANE || kind == Kind.SURVEY_LINE) {
      Threshold most = enamelMost(tooth.number());
      findings.add(
          Finding.of(
              most.id(),
              "enamel taken",
              at(tooth, word(surface), place),
              Reading.mm(greatest, rules.scanAccuracy().value()),
              new Limit.Most(most.value(), most.unit()),
              most.source(),
              most.standing()));
      if (greatest > rules.own().enamelWarn().value()) {
        all.add(
            String.format(
                Locale.ROOT,
                "over %.2f mm: check on a radiograph that enough enamel is there",
                rules.own().enamelWarn().value()));
      }
    }
    if (dentition.chart().tooth(tooth.number()).restoration() == ToothEntry.Restoration.CROWN) {
      all.add("the tooth carries a crown: it is its wall that is cut; know its thickness");
    }
    findings.addAll(more);
    CutFrame through = new CutFrame(place, frame.out(), frame.axis());
    steps.add(
        new Step(
            0,
            kind,
            tooth.number(),
            surface,
            what,
            place,
            greatest,
            height,
            taken.volumeMm3(),
            findings,
            all,
            Optional.of(applied),
            Optional.of(PreparedCast.section(arch.mesh(), applied, through))));
  }

  void refuse(Tooth tooth, Kind kind, String why) {
    refused.add(new Refused(tooth.number(), kind, why));
    unserved(tooth.number()).add(why);
  }

  static Place at(Tooth tooth, String words, Vec3 p) {
    return Place.of(tooth.number(), words, new Place.Spot(p.x(), p.y(), p.z()));
  }

  static String word(Enum<?> kind) {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
