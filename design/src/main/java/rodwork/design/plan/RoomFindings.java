package rodwork.design.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.arm.Arm;
import rodwork.design.plan.Part.RestKind;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;
import rodwork.rules.Place;
import rodwork.rules.Reading;
import rodwork.rules.Threshold;
import rodwork.rules.Wording;

/**
 * Holds the parts of a plan against the room to the opposing teeth; sources stand in the rulebook.
 *
 * <p>Rests and bases are always asked; arms and crossings only where an opposing scan was laid, for
 * a chart tells no place of them.
 */
final class RoomFindings {
  private final Draft draft;
  private final Threshold clearance;
  private final List<Finding> findings = new ArrayList<>();

  RoomFindings(Draft draft) {
    this.draft = draft;
    this.clearance = draft.rules.rests().clearance();
  }

  List<Finding> of() {
    draft.rests.forEach(this::rest);
    if (draft.opposing.clearance().isPresent()) {
      draft.minors.forEach(this::crossing);
      draft.clasps.forEach(this::arms);
    }
    draft.bases.forEach(this::base);
    return findings;
  }

  private ToothEntry entry(ToothNumber tooth) {
    return draft.dentition.chart().tooth(tooth);
  }

  /**
   * Over the floor of the seat once it is cut. What the chart says of the tooth as it stands is
   * deepened by the seat.
   */
  private void rest(Part.Rest rest) {
    ToothEntry entry = entry(rest.tooth());
    Reading room =
        entry.opposing().clearanceMm().isPresent()
            ? Reading.mm(entry.opposing().clearanceMm().getAsDouble() + rest.depthMm(), 0)
            : draft.opposing.over(entry, floor(rest));
    least(
        clearance,
        "room to the opposing tooth over the seat once it is cut",
        Spots.on(rest.tooth(), rest.kind().words(), rest.middle()),
        room);
  }

  /** The floor of a seat in its middle and half way out, as {@code Cut.Seat} cuts it. */
  private List<Vec3> floor(Part.Rest rest) {
    Tooth tooth = draft.dentition.tooth(rest.tooth()).orElseThrow();
    Vec3 axis = tooth.axes().axis();
    Vec3 down =
        rest.kind() == RestKind.CINGULUM
            ? tooth.axes().facial().minus(axis).unit()
            : axis.times(-1);
    List<Vec3> floor = new ArrayList<>();
    floor.add(rest.middle().plus(down.times(rest.depthMm())));
    for (Vec3 p : rest.outline().points()) {
      Vec3 half = rest.middle().plus(p.minus(rest.middle()).times(0.5));
      floor.add(half.plus(down.times(0.75 * rest.depthMm())));
    }
    return floor;
  }

  private void crossing(Part.MinorConnector minor) {
    least(
        clearance,
        "room to the opposing teeth over the minor connector",
        Spots.on(
            minor.tooth(),
            minor.side().name().toLowerCase(Locale.ROOT),
            minor.line().points().getFirst()),
        draft.opposing.measured(minor.line().points()));
  }

  /**
   * Over both faces of both arms: the other one is rigid, and as thick as the first at its root.
   */
  private void arms(Part.Clasp clasp) {
    clasp
        .course()
        .ifPresent(
            course -> {
              Arm arm = course.retentive();
              List<Vec3> places = new ArrayList<>(course.opposing());
              Tooth tooth = draft.dentition.tooth(clasp.tooth()).orElseThrow();
              double thick = arm.root().thicknessMm();
              for (Vec3 p : course.opposing()) {
                Vec3 out = p.minus(tooth.centroid()).across(tooth.axes().axis());
                places.add(out.length() > 0 ? p.plus(out.unit().times(thick)) : p);
              }
              for (Arm.Station station : arm.line()) {
                places.add(station.point());
                places.add(station.point().plus(station.outward().times(thick)));
              }
              least(
                  draft.rules.rests().armClearance(),
                  "room to the opposing teeth over the arms",
                  Spots.on(clasp.tooth(), clasp.judgement().family().name(), arm.end().point()),
                  draft.opposing.measured(places));
            });
  }

  /**
   * From the crest of the ridge; of the teeth that the base replaces the chart's least word goes
   * before.
   */
  private void base(Part.DentureBase base) {
    List<Vec3> crest = base.space().crest();
    Optional<Double> said =
        base.space().missing().stream()
            .map(t -> entry(t).opposing().clearanceMm())
            .filter(OptionalDouble::isPresent)
            .map(OptionalDouble::getAsDouble)
            .min(Double::compare);
    least(
        draft.rules.bases().space(),
        "space from the ridge to the opposing teeth; under it a base all of metal",
        Spots.at(Wording.of("base of ", base.space().missing()), crest.get(crest.size() / 2)),
        said.map(mm -> Reading.mm(mm, 0)).orElseGet(() -> draft.opposing.measured(crest)));
  }

  private void least(Threshold limit, String what, Place place, Reading reading) {
    findings.add(Finding.least(limit, what, place, reading));
  }
}
