package rodwork.app.operation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.casework.rulebook.Rulebook;
import rodwork.demo.DemoCast;
import rodwork.design.abutment.Answers;
import rodwork.design.plan.Choices;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;
import rodwork.design.plan.RigidParts;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.survey.Tilt;
import rodwork.survey.path.Zone;

/**
 * Truth: the areas of the plan's own parts, and that only what hangs over lies outside a border.
 */
class RigidPartsTest {
  @Test
  void zonesOfAPlanAreTheSurfacesUnderItsPartsWithTheirUndercutFlanks() {
    CastTeeth teeth =
        FindTeeth.of(
            OpenDemo.of(Jaw.LOWER, Watch.NONE),
            new WantedTeeth(
                DemoCast.missing(Jaw.LOWER).stream()
                    .map(ToothNumber::of)
                    .collect(Collectors.toSet()),
                null,
                List.of()),
            Watch.NONE);
    JudgeAbutments.Wanted wanted =
        new JudgeAbutments.Wanted(
            new WantedPath.AtTilt(Tilt.REFERENCE), new TreeSet<>(), null, Answers.NONE);
    Plan plan = MakePlan.of(teeth, wanted, Choices.NONE, Rulebook.shipped(), Watch.NONE).plan();
    List<Zone> zones = RigidParts.zones(teeth.arch(), teeth.dentition(), plan);
    Vec3 up = teeth.arch().frame().z();

    List<Zone> bases = zones.stream().filter(z -> z.kind() == Zone.Kind.BASE).toList();
    assertThat(bases).hasSameSizeAs(plan.bases());
    for (int i = 0; i < bases.size(); i++) {
      Part.DentureBase base = plan.bases().get(i);
      double area = bases.get(i).samples().stream().mapToDouble(Zone.Sample::areaMm2).sum();
      assertThat(area).as("base %s", bases.get(i).name()).isGreaterThan(0.98 * base.areaMm2());
      double facing =
          bases.get(i).samples().stream()
              .filter(s -> s.normal().dot(up) > 0)
              .mapToDouble(Zone.Sample::areaMm2)
              .sum();
      assertThat(facing).as("base %s", bases.get(i).name()).isLessThan(1.1 * base.areaMm2());
    }
    Zone connector =
        zones.stream().filter(z -> z.kind() == Zone.Kind.CONNECTOR).findFirst().orElseThrow();
    Part.MajorConnector bar = plan.majorConnector().orElseThrow();
    // No part of it lies far from its own border: a bar is narrow.
    assertThat(connector.samples())
        .allMatch(s -> bar.outline().distanceMm(s.point()) < bar.leastWidthMm() + 3);
    assertThat(zones).extracting(Zone::kind).doesNotContain(Zone.Kind.LINGUAL_STRIP);
    for (Zone zone : zones) {
      assertThat(zone.samples().stream().anyMatch(s -> s.towards() != null))
          .isEqualTo(zone.kind() == Zone.Kind.BAR);
    }
  }
}
