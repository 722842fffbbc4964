package rodwork.survey.plane;

import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What a guiding plane along one path would be at one place. The prepared plane is the ruled
 * surface of the least-cutting upright lines, so it is curved across like the tooth.
 *
 * @param site the surface
 * @param cuts one a section, across the width
 * @param angleDeg mean angle of what is there against the path [degrees]; positive: convergent to
 *     the occlusal side
 * @param heightMm mean height to be had [mm]
 * @param greatestMm greatest enamel taken [mm]
 * @param meanMm mean enamel taken [mm]
 * @param volumeMm3 enamel taken [mm³]
 */
public record PlaneReading(
    PlaneSite site,
    List<PlaneSection.Cut> cuts,
    double angleDeg,
    double heightMm,
    double greatestMm,
    double meanMm,
    double volumeMm3) {

  static PlaneReading of(PlaneSite site, List<PlaneSection.Cut> cuts) {
    double mean = mean(cuts, PlaneSection.Cut::meanMm);
    double height = mean(cuts, PlaneSection.Cut::heightMm);
    return new PlaneReading(
        site,
        List.copyOf(cuts),
        mean(cuts, PlaneSection.Cut::angleDeg),
        height,
        cuts.stream().mapToDouble(PlaneSection.Cut::greatestMm).max().orElse(0),
        mean,
        mean(cuts, cut -> cut.meanMm() * cut.heightMm())
            * site.widthMm()
            * cuts.size()
            / site.sections().size());
  }

  private static double mean(
      List<PlaneSection.Cut> cuts, ToDoubleFunction<PlaneSection.Cut> figure) {
    return cuts.stream().mapToDouble(figure).average().orElse(0);
  }
}
