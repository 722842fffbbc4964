package rodwork.survey.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import rodwork.geometry.Watch;
import rodwork.rules.Threshold;
import rodwork.survey.SurveyRules;
import rodwork.survey.Tilt;
import rodwork.survey.plane.PlaneRules;

/** Truth: casts whose walls are parallel to a known axis, and brute force over a fine grid. */
class PathSearchTest {
  private static final PathRules RULES = PathRules.SHIPPED;

  private static PathSearch search(BlockCast cast, PathRules rules) {
    return PathSearch.of(cast.arch, cast.sites(), rules, PlaneRules.SHIPPED, SurveyRules.SHIPPED);
  }

  private static double apart(Tilt a, Tilt b) {
    return Math.hypot(a.anteriorDeg() - b.anteriorDeg(), a.rightDeg() - b.rightDeg());
  }

  private static Threshold weight(double value) {
    return new Threshold("test-weight", value, "1", "test", RULES.guidingWeight().standing());
  }

  /** The shipped rules with guiding planes alone, and fewer tilts. */
  private static PathRules guidingAlone() {
    return new PathRules(
        RULES.cone(),
        new Threshold("path-step", 2, "degrees", "test", RULES.step().standing()),
        weight(1),
        weight(0),
        weight(0),
        weight(0),
        weight(0),
        RULES.enamel(),
        RULES.gauge(),
        RULES.holdsAtReference(),
        RULES.interference(),
        RULES.deadSpace(),
        RULES.reciprocal(),
        RULES.fromMargin(),
        RULES.lengthStep(),
        RULES.areaStep(),
        RULES.angleStep(),
        RULES.zones(),
        RULES.lastShown());
  }

  @Test
  void wallsParallelToAnAxisGiveThatAxis() {
    for (Tilt walls : List.of(new Tilt(0, 0), new Tilt(5, -3), new Tilt(-7.3, 4.1))) {
      BlockCast cast = new BlockCast(walls);
      PathSearch search = search(cast, guidingAlone());
      PathMap map = search.map(15, Watch.NONE);
      PathFactors best = search.refined(map.best(), 15, Watch.NONE);
      assertThat(apart(best.tilt(), walls)).as("%s for %s", best.tilt(), walls).isLessThan(0.25);
      assertThat(best.guiding().enamelMm()).isLessThan(0.02);
      assertThat(best.guiding().parallel()).isEqualTo(4);
    }
  }

  @Test
  void underTheShippedWeightsTheAxisIsFoundWithinADegree() {
    Tilt walls = new Tilt(4, 2.5);
    PathSearch search = search(new BlockCast(walls), RULES);
    PathMap map = search.map(8, Watch.NONE);
    assertThat(apart(search.refined(map.best(), 8, Watch.NONE).tilt(), walls)).isLessThan(1);
    PathComparison comparison = PathComparison.of(map.nearest(Tilt.REFERENCE), map.best(), RULES);
    assertThat(comparison.better())
        .isNotEmpty()
        .allMatch(change -> change.factor() == PathFactors.Factor.GUIDING);
    assertThat(comparison.worse())
        .isNotEmpty()
        .allMatch(change -> change.factor() == PathFactors.Factor.TILT);
  }

  @Test
  void noTiltOfAFineGridIsBetterThanTheRefinedOne() {
    Tilt walls = new Tilt(-2, 3);
    PathSearch search = search(new BlockCast(walls), guidingAlone());
    PathFactors best = search.refined(search.map(6, Watch.NONE).best(), 6, Watch.NONE);
    for (double a = -3; a <= -1; a += 0.25) {
      for (double r = 2; r <= 4; r += 0.25) {
        assertThat(search.at(new Tilt(a, r), Watch.NONE).worth())
            .isLessThanOrEqualTo(best.worth() + 1e-6);
      }
    }
  }

  @Test
  void aSymmetricCastGivesASymmetricMap() {
    PathMap map = search(new BlockCast(Tilt.REFERENCE), guidingAlone()).map(10, Watch.NONE);
    for (PathFactors tilt : map.tilts()) {
      Tilt mirrored = new Tilt(tilt.tilt().anteriorDeg(), -tilt.tilt().rightDeg());
      assertThat(map.nearest(mirrored).worth())
          .as("worth at %s against %s", mirrored, tilt.tilt())
          .isCloseTo(tilt.worth(), within(0.01 * tilt.worth()));
    }
  }

  @Test
  void theGridCoversTheConeAndStartsAtTheReferenceOrientation() {
    List<Tilt> grid = PathSearch.grid(15, RULES.step().value());
    assertThat(grid).hasSizeGreaterThanOrEqualTo(1000).doesNotHaveDuplicates();
    assertThat(grid.getFirst()).isEqualTo(Tilt.REFERENCE);
    assertThat(grid).allMatch(tilt -> tilt.totalDeg() <= 15 + 1e-9);
  }

  @Test
  void aCoarseMapHasFewTiltsAndASearchCanBeStopped() {
    PathSearch search = search(new BlockCast(Tilt.REFERENCE), guidingAlone());
    assertThat(search.coarse(15, Watch.NONE).tilts().size()).isBetween(20, 40);
    PathMap map = search.map(15, Watch.NONE);
    assertThat(map.tilts()).hasSizeGreaterThan(150);
    AtomicInteger asked = new AtomicInteger();
    Watch stops =
        new Watch() {
          @Override
          public void progress(String what, double share) {}

          @Override
          public boolean cancelled() {
            return asked.incrementAndGet() > 50;
          }
        };
    assertThatThrownBy(() -> search.map(15, stops)).isInstanceOf(CancellationException.class);
  }

  @Test
  void choicesAreFewAndNoneIsBeatenInEveryFactor() {
    PathSearch search = search(new BlockCast(new Tilt(5, 1)), RULES);
    PathMap map = search.map(10, Watch.NONE);
    List<PathFactors> choices = map.choices();
    assertThat(choices).hasSizeBetween(2, PathMap.MOST_CHOICES).contains(map.best());
    for (PathFactors choice : choices) {
      assertThat(map.tilts())
          .noneMatch(
              other -> {
                boolean all = true;
                boolean one = false;
                for (PathFactors.Factor factor : PathFactors.Factor.values()) {
                  double step = factor == PathFactors.Factor.TILT ? 1 : 0.05;
                  long mine = Math.round(choice.figure(factor) / step);
                  long its = Math.round(other.figure(factor) / step);
                  all &= its <= mine;
                  one |= its < mine;
                }
                return all && one;
              });
    }
  }

  @Test
  void theWayOutLeadsWhereThePathLeans() {
    // Front down under an upright rod: on the way out the denture moves backward.
    Travel travel = Travel.of(new Tilt(10, 0), 5);
    assertThat(travel.forwardMm()).isCloseTo(-5 * Math.sin(Math.toRadians(10)), within(1e-9));
    assertThat(travel.roomMm()).isCloseTo(5 * Math.cos(Math.toRadians(10)), within(1e-9));
    // Patient's right down: it moves to the left.
    assertThat(Travel.of(new Tilt(0, 10), 5).rightMm()).isNegative();
    assertThat(Travel.of(Tilt.REFERENCE, 5).shiftMm()).isZero();
  }
}
