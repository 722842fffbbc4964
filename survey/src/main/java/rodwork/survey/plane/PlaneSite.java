package rodwork.survey.plane;

import java.util.List;
import java.util.Optional;
import rodwork.anatomy.tooth.Surface;
import rodwork.geometry.Vec3;
import rodwork.rules.Threshold;

/**
 * A surface of a tooth that could guide a denture.
 *
 * @param tooth FDI number
 * @param face which surface
 * @param outward away from the tooth, towards the space [unit vector, scan frame]
 * @param wantedHeight height that a plane there should have
 * @param widthMm width that a plane there should have [mm]
 * @param sections across the width, evenly spaced
 */
public record PlaneSite(
    int tooth,
    Surface face,
    Vec3 outward,
    Threshold wantedHeight,
    double widthMm,
    List<PlaneSection> sections) {

  public PlaneSite {
    sections = List.copyOf(sections);
    if (sections.isEmpty() || !(widthMm > 0)) {
      throw new IllegalArgumentException("a plane of tooth " + tooth + " without width or section");
    }
  }

  /** Where it is: the ridge of its middle section. */
  public Vec3 place() {
    return sections.get(sections.size() / 2).ridge();
  }

  /**
   * What a plane along a path would be, and what it would cost.
   *
   * @return none where no section has room for one
   */
  public Optional<PlaneReading> read(Vec3 axis, PlaneRules rules) {
    Vec3 p = axis.unit();
    List<PlaneSection.Cut> cuts =
        sections.stream()
            .flatMap(
                section ->
                    section
                        .cut(p, outward, rules.belowRidge().value(), wantedHeight.value())
                        .stream())
            .toList();
    return cuts.isEmpty() ? Optional.empty() : Optional.of(PlaneReading.of(this, cuts));
  }
}
