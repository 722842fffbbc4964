package rodwork.design.clasp;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.GingivalMargin;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.rules.Place;
import rodwork.survey.Survey;
import rodwork.survey.standoff.StandOff;
import rodwork.survey.standoff.StandOffRules;

/**
 * The gum below one point of the facial margin, where a bar might cross it.
 *
 * @param across the facial third above it
 * @param edge −1 and 1 at the edges of a bar, to distal and mesial, 0 in its middle
 * @param margin where it crosses the margin, scan frame [mm]
 * @param standOff what was read below
 */
public record BarSection(AcrossThird across, int edge, Vec3 margin, StandOff standOff) {
  /** A margin point this far from where it was looked for does not stand for it [mm]. */
  private static final double MARGIN_NEAR_MM = 0.7;

  /** The middle of the mesial and the distal third between the line angles, in half widths. */
  private static final double THIRD_MIDDLE = 0.45;

  /**
   * No vestibule ends this near to a margin [mm]: there the section ran up a deeply undercut wall,
   * and says nothing of the gum.
   */
  private static final double LEAST_MM = 1;

  /**
   * All sections of a tooth: three to a third.
   *
   * @param tree over the whole cast
   */
  public static List<BarSection> of(
      Survey survey, TriangleTree tree, Tooth tooth, StandOffRules rules) {
    List<BarSection> sections = new ArrayList<>();
    double half = tooth.size().mesiodistalMm() / 2;
    for (AcrossThird across : AcrossThird.values()) {
      double middle =
          switch (across) {
            case MESIAL -> THIRD_MIDDLE * half;
            case MIDDLE -> 0;
            case DISTAL -> -THIRD_MIDDLE * half;
          };
      for (int edge = -1; edge <= 1; edge++) {
        at(survey, tree, tooth, across, edge, middle + edge * rules.barWidth().value() / 2, rules)
            .ifPresent(sections::add);
      }
    }
    return sections;
  }

  /**
   * The section at one place.
   *
   * @param mesialMm where along the tooth, from its middle to mesial [mm]
   * @return none where the margin was not seen there
   */
  public static Optional<BarSection> at(
      Survey survey,
      TriangleTree tree,
      Tooth tooth,
      AcrossThird across,
      int edge,
      double mesialMm,
      StandOffRules rules) {
    Vec3 start = marginAt(tooth, mesialMm);
    return Optional.ofNullable(start)
        .flatMap(p -> tree.closest(p, MARGIN_NEAR_MM))
        .map(
            on ->
                new BarSection(
                    across,
                    edge,
                    on.point(),
                    StandOff.of(survey, on.point(), on.triangle(), tooth.axes().facial(), rules)))
        .filter(section -> section.standOff().line().getLast().fromMarginMm() >= LEAST_MM);
  }

  /** Where a level of it lies, in words and on the scan. */
  Optional<Place> place(ToothNumber tooth, StandOff.Level level) {
    return level
        .place()
        .map(
            p ->
                Place.of(
                    tooth,
                    across.on(Surface.FACIAL)
                        + ", "
                        + Figures.mm(level.fromMarginMm())
                        + " below the margin",
                    new Place.Spot(p.x(), p.y(), p.z())));
  }

  /** The facial margin at a way to mesial of its middle; null where it was not seen. */
  private static @Nullable Vec3 marginAt(Tooth tooth, double mesialMm) {
    Vec3 best = null;
    double least = MARGIN_NEAR_MM;
    GingivalMargin margin = tooth.margin();
    for (int i = 0; i < margin.points().size(); i++) {
      Vec3 q = tooth.axes().toTooth(margin.points().get(i));
      double off = Math.abs(q.x() - mesialMm);
      if (margin.kinds().get(i) == GingivalMargin.Kind.SEEN && q.y() > 0 && off < least) {
        least = off;
        best = margin.points().get(i);
      }
    }
    return best;
  }
}
