package rodwork.design.plan;

import java.util.Optional;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.geometry.Vec3;
import rodwork.rules.Place;
import rodwork.rules.Wording;

/** Places of findings that a person can jump to on the cast. */
final class Spots {
  private Spots() {}

  static Place on(ToothNumber tooth, String words, Vec3 p) {
    return Place.of(tooth, words, new Place.Spot(p.x(), p.y(), p.z()));
  }

  static Place at(Wording words, Vec3 p) {
    return new Place(words, Optional.of(new Place.Spot(p.x(), p.y(), p.z())));
  }
}
