package rodwork.survey.strip;

import java.util.List;
import rodwork.geometry.Vec3;
import rodwork.survey.plane.PlaneSection;

/**
 * A section with an upright rod against it. Depths are u_d of the section itself: the tooth alone,
 * in this one direction.
 *
 * @param line from the occlusal side to the gum; t outward, h along the path, from the ridge [mm]
 * @param rodMm where the rod stands, t [mm]
 * @param footMm how far down the rod comes free, h [mm]
 * @param contact where it touches
 * @param deepest the deepest place below the contact; the contact itself where nothing is undercut
 * @param gapMm from there to the rod [mm]
 */
public record RodSection(
    List<PlaneSection.Spot> line,
    double rodMm,
    double footMm,
    PlaneSection.Spot contact,
    PlaneSection.Spot deepest,
    double gapMm) {

  public RodSection {
    line = List.copyOf(line);
  }

  /**
   * The section at a path.
   *
   * @param axis the path [unit vector]
   * @param outward away from the tooth; its part across the path counts
   */
  public static RodSection of(PlaneSection section, Vec3 axis, Vec3 outward) {
    List<PlaneSection.Spot> line = section.at(axis, outward);
    PlaneSection.Spot most = line.getFirst();
    PlaneSection.Spot contact = most;
    PlaneSection.Spot deepest = most;
    double gap = 0;
    int at = 0;
    for (int i = 1; i < line.size(); i++) {
      PlaneSection.Spot spot = line.get(i);
      if (spot.t() >= most.t()) {
        most = spot;
      } else if (most.t() - spot.t() > gap && spot.h() < most.h()) {
        gap = most.t() - spot.t();
        contact = most;
        deepest = spot;
        at = i;
      }
    }
    if (gap == 0) {
      return new RodSection(line, most.t(), most.h(), most, most, 0);
    }
    double foot = line.getLast().h();
    for (int i = at; i < line.size(); i++) {
      if (line.get(i).t() > contact.t()) {
        foot = line.get(i).h();
        break;
      }
    }
    return new RodSection(line, contact.t(), foot, contact, deepest, gap);
  }

  /** How far the deepest place lies below the contact, along the path [mm]. */
  public double belowMm() {
    return contact.h() - deepest.h();
  }
}
