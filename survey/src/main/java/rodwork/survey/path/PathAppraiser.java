package rodwork.survey.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rodwork.geometry.Vec3;
import rodwork.geometry.overhang.PlaceDepths;
import rodwork.survey.Tilt;
import rodwork.survey.plane.PlaneReading;
import rodwork.survey.plane.PlaneRules;
import rodwork.survey.plane.PlaneSection;

/** Reads the sites of a cast at one tilt. Immutable; safe for several threads. */
final class PathAppraiser {
  private final PathSites sites;
  private final PathRules rules;
  private final PlaneRules planeRules;
  private final double shallowMm;

  /** Depth of each place of each terminal site at the reference orientation [mm]. */
  private final List<double[]> reference;

  PathAppraiser(
      PathSites sites,
      PathRules rules,
      PlaneRules planeRules,
      double shallowMm,
      PlaceDepths atReference) {
    this.sites = sites;
    this.rules = rules;
    this.planeRules = planeRules;
    this.shallowMm = shallowMm;
    this.reference =
        sites.terminals().stream()
            .map(site -> site.places().stream().mapToDouble(atReference::depthAt).toArray())
            .toList();
  }

  PathFactors at(Tilt tilt, PlaceDepths depths) {
    Vec3 axis = depths.axis();
    List<Optional<PlaneReading>> planes =
        sites.planes().stream().map(site -> site.read(axis, planeRules)).toList();
    List<Retention.Abutment> abutments = abutments(depths);
    double along = 0;
    for (Optional<PlaneReading> plane : planes) {
      along =
          Math.max(
              along,
              plane.map(read -> read.heightMm() + planeRules.belowRidge().value()).orElse(0.0));
    }
    for (Retention.Abutment abutment : abutments) {
      along = Math.max(along, abutment.riseMm());
    }
    return PathFactors.of(
        tilt,
        axis,
        Guiding.of(sites, planes, rules, planeRules),
        Retention.of(abutments, rules.gauge().value()),
        Interference.of(
            sites.zones().stream().map(zone -> zone(zone, depths)).toList(),
            rules.interference().value()),
        Appearance.of(
            sites.fronts().stream().map(front -> front(front, depths)).toList(),
            rules.deadSpace().value()),
        Travel.of(tilt, along),
        rules);
  }

  private List<Retention.Abutment> abutments(PlaceDepths depths) {
    List<Retention.Abutment> best = new ArrayList<>();
    for (int tooth : sites.abutments()) {
      TerminalSite at = null;
      Vec3 place = Vec3.ZERO;
      double depth = 0;
      double before = 0;
      double credit = -1;
      for (int i = 0; i < sites.terminals().size(); i++) {
        TerminalSite site = sites.terminals().get(i);
        if (site.tooth() != tooth) {
          continue;
        }
        for (int k = 0; k < site.places().size(); k++) {
          double u = depths.depthAt(site.places().get(k));
          double u0 = reference.get(i)[k];
          double c = u0 < rules.holdsAtReference().value() ? 0 : Math.min(u, rules.gauge().value());
          if (c > credit || (c == credit && u > depth)) {
            at = site;
            place = site.places().get(k);
            depth = u;
            before = u0;
            credit = c;
          }
        }
      }
      if (at != null) {
        best.add(
            new Retention.Abutment(tooth, at, place, depth, before, credit, depths.riseMm(place)));
      }
    }
    return best;
  }

  private Interference.Reading zone(Zone zone, PlaceDepths depths) {
    double area = 0;
    double sum = 0;
    double deepest = 0;
    double undercut = 0;
    double volume = 0;
    for (Zone.Sample sample : zone.samples()) {
      Vec3 towards = sample.towards();
      double u =
          towards == null
              ? depths.depthAt(sample.point())
              : depths.depthAlong(sample.point(), towards);
      area += sample.areaMm2();
      sum += u * sample.areaMm2();
      deepest = Math.max(deepest, u);
      undercut += u > shallowMm ? sample.areaMm2() : 0;
      volume += u * sample.areaMm2() * sample.normal().across(depths.axis()).length();
    }
    return new Interference.Reading(zone, area > 0 ? sum / area : 0, deepest, undercut, volume);
  }

  private Appearance.Reading front(FrontSite front, PlaceDepths depths) {
    List<PlaneSection.Spot> line = front.facial().at(depths.axis(), front.facialOutward());
    // The widest place towards the gum is the height of contour of this section. Where the surface
    // below it is hardly undercut there is no survey line, wherever the widest place may be.
    double gum = line.getLast().h();
    double edge = gum;
    double deepest = 0;
    PlaneSection.Spot widest = line.getFirst();
    for (PlaneSection.Spot spot : line) {
      edge = Math.max(edge, spot.h());
      if (spot.t() > widest.t()) {
        widest = spot;
        deepest = 0;
      }
      deepest = Math.max(deepest, widest.t() - spot.t());
    }
    double height = deepest < shallowMm ? 0 : widest.h() - gum;
    double gap = 0;
    for (Vec3 place : front.gaps()) {
      gap = Math.max(gap, depths.depthAt(place));
    }
    return new Appearance.Reading(front.tooth(), height, edge - gum, gap, !front.gaps().isEmpty());
  }
}
