package rodwork.app.operation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Surface;
import rodwork.casework.rulebook.Rulebook;
import rodwork.geometry.Watch;
import rodwork.survey.Tilt;
import rodwork.survey.path.PathComparison;
import rodwork.survey.path.PathFactors;
import rodwork.survey.path.PathMap;
import rodwork.survey.path.PathRules;
import rodwork.survey.plane.PlaneReading;

/** Truth: how the demo casts are made (docs/demo.md), and every tilt of a fine grid. */
class SearchPathTest {
  /** No proximal surface of a crown has more enamel than this to give, with its dentine [mm]. */
  private static final double MOST_ENAMEL_MM = 2;

  private static SearchPath.Prepared demo(Jaw jaw, Integer... missing) {
    Set<ToothNumber> gone = Stream.of(missing).map(ToothNumber::of).collect(Collectors.toSet());
    CastTeeth teeth =
        FindTeeth.of(
            OpenDemo.of(jaw, Watch.NONE), new WantedTeeth(gone, null, List.of()), Watch.NONE);
    return SearchPath.prepare(teeth, Rulebook.shipped(), SearchPath.InTheWay.ANATOMY, Watch.NONE);
  }

  private static PlaneReading plane(PathFactors at, int tooth, Surface face) {
    return at.guiding().planes().stream()
        .flatMap(Optional::stream)
        .filter(read -> read.site().tooth() == tooth && read.site().face() == face)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void onTheLowerDemoCastTheBestIsNoWorseThanTheReferenceAndPlanesAreHumanlyPossible() {
    SearchPath.Prepared search = demo(Jaw.LOWER, 35, 36, 37, 45, 46);
    PathMap coarse = search.search().coarse(10, Watch.NONE);
    PathFactors best = search.search().refined(coarse.best(), 10, Watch.NONE);
    PathFactors reference = search.search().at(Tilt.REFERENCE, Watch.NONE);
    // 47 leans to the front: the back of the cast goes down, and every proximal surface gains.
    assertThat(best.worth()).isGreaterThan(reference.worth() + 0.003);
    assertThat(best.tilt().anteriorDeg()).isBetween(-6.0, -1.0);
    PathComparison why = PathComparison.of(reference, best, PathRules.SHIPPED);
    assertThat(why.better())
        .extracting(change -> change.what().fdi())
        .contains("47 mesial, enamel for a guiding plane", "34 distal, enamel for a guiding plane");
    assertThat(why.worse())
        .as("what it costs: the tilt itself, and a little dead space")
        .allMatch(
            change ->
                change.factor() == PathFactors.Factor.TILT
                    || change.factor() == PathFactors.Factor.APPEARANCE);
    // What a tilt could gain in guiding planes alone is on the map, whatever the whole says.
    assertThat(coarse.best(PathFactors.Factor.GUIDING).guiding().worth())
        .isGreaterThan(reference.guiding().worth());
    for (PathFactors at : List.of(best, reference)) {
      assertThat(at.guiding().planes()).isNotEmpty();
      assertThat(at.guiding().planes().stream().flatMap(Optional::stream))
          .allSatisfy(read -> assertThat(read.greatestMm()).isLessThan(MOST_ENAMEL_MM));
    }
    // 47 leans to the front by 16°: its mesial wall is undercut, and front teeth going up help it.
    assertThat(plane(reference, 47, Surface.MESIAL).angleDeg()).isNegative();
    PathFactors back = search.search().at(new Tilt(-8, 0), Watch.NONE);
    PathFactors front = search.search().at(new Tilt(8, 0), Watch.NONE);
    double turn =
        plane(back, 47, Surface.MESIAL).angleDeg() - plane(front, 47, Surface.MESIAL).angleDeg();
    assertThat(Math.abs(turn)).as("16° of tilt turn the wall by as much").isBetween(11.0, 17.0);
    assertThat(best.retention().abutments())
        .extracting(abutment -> abutment.tooth())
        .containsExactly(34, 44, 47);
  }

  @Test
  void noTiltOfAGridOnTheUpperDemoCastIsBetterThanTheBest() {
    SearchPath.Prepared search = demo(Jaw.UPPER, 14, 15, 25, 26);
    PathMap map = search.search().map(4, Watch.NONE);
    PathFactors best = search.search().refined(map.best(), 4, Watch.NONE);
    for (double a = -4; a <= 4; a += 2) {
      for (double r = -4; r <= 4; r += 2) {
        Tilt tilt = new Tilt(a, r);
        if (tilt.totalDeg() <= 4) {
          // The map is made on a thinned copy: what it passes over is within its error.
          assertThat(search.search().at(tilt, Watch.NONE).worth())
              .as("worth at %s against %s", tilt, best.tilt())
              .isLessThanOrEqualTo(best.worth() + 0.01);
        }
      }
    }
    // 27 leans to the front as well; the weaker side gains what 13 has to give.
    PathFactors reference = search.search().at(Tilt.REFERENCE, Watch.NONE);
    assertThat(best.tilt().anteriorDeg()).isNegative();
    assertThat(best.worth()).isGreaterThan(reference.worth() + 0.005);
    assertThat(best.retention().worth()).isGreaterThan(reference.retention().worth());
    assertThat(plane(best, 27, Surface.MESIAL).greatestMm())
        .isLessThan(plane(reference, 27, Surface.MESIAL).greatestMm() - 0.1);
    // 13 is made without undercut to use at the reference orientation: no tilt gives it any.
    assertThat(map.neverHeld(search.teeth().cast().surveyor().rules().fits().value()))
        .containsKey(13);
  }
}
