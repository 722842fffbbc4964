package rodwork.design.plan;

import java.util.Optional;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.plan.Part.RestKind;
import rodwork.geometry.Vec3;

/** Lays rests on crowns at the sizes of the rules. */
final class RestMaker {
  private static final int POINTS = 32;

  /** Where the marginal ridge is sought, in half widths from the middle, outermost first. */
  private static final double[] RIDGE = {0.9, 0.84, 0.78, 0.7, 0.6};

  private final PlanRules.Rests rules;

  RestMaker(PlanRules.Rests rules) {
    this.rules = rules;
  }

  /** The kind that a tooth of this place is given without a choice. */
  static RestKind usual(CrownBoard crown) {
    return crown.tooth.number().isAnterior() ? RestKind.CINGULUM : RestKind.OCCLUSAL;
  }

  /** A rest; empty where the crown has no room for its outline. */
  Optional<Part.Rest> make(CrownBoard crown, RestKind kind, Surface side, String because) {
    return switch (kind) {
      case OCCLUSAL -> occlusal(crown, kind, side, rules.lengthShare().value(), because);
      case EXTENDED -> occlusal(crown, kind, side, rules.extendedShare().value(), because);
      case CINGULUM -> cingulum(crown, because);
      case INCISAL -> incisal(crown, side, because);
    };
  }

  /** A rounded triangle: its base at the marginal ridge, its apex towards the middle. */
  private Optional<Part.Rest> occlusal(
      CrownBoard crown, RestKind kind, Surface side, double share, String because) {
    double length = share * 2 * crown.halfWidth();
    double width =
        Math.max(rules.widthLeast().value(), rules.widthShare().value() * 2 * crown.halfDepth());
    int e = side == Surface.DISTAL ? -1 : 1;
    for (double ridge : RIDGE) {
      double at = ridge * crown.halfWidth();
      Optional<Line> outline =
          CrownBoard.outline(
              POINTS,
              i -> {
                double turn = 2 * Math.PI * i / POINTS;
                double along = (1 - Math.cos(turn)) / 2;
                double half = width / 2 * Math.sqrt(Math.max(0, 1 - along * along));
                return crown.fromAbove(
                    e * (at - along * length), Math.sin(turn) >= 0 ? half : -half);
              });
      Optional<Vec3> middle = crown.fromAbove(e * (at - 0.45 * length), 0);
      if (outline.isPresent() && middle.isPresent()) {
        return Optional.of(
            new Part.Rest(
                crown.tooth.number(),
                kind,
                side,
                outline.get(),
                middle.get(),
                length,
                width,
                rules.depth().value(),
                because));
      }
    }
    return Optional.empty();
  }

  /** An ellipse on the lingual surface where its gingival third ends. */
  private Optional<Part.Rest> cingulum(CrownBoard crown, String because) {
    double length = Math.min(rules.cingulumLength().value(), 1.2 * crown.halfWidth());
    double width = rules.cingulumWidth().value();
    double height = crown.heightAt(0, false, 1 / 3.0);
    Optional<Line> outline =
        CrownBoard.outline(
            POINTS,
            i -> {
              double turn = 2 * Math.PI * i / POINTS;
              return crown.fromSide(
                  length / 2 * Math.cos(turn), height + width / 2 * Math.sin(turn), false);
            });
    Optional<Vec3> middle = crown.fromSide(0, height, false);
    if (outline.isEmpty() || middle.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Part.Rest(
            crown.tooth.number(),
            RestKind.CINGULUM,
            Surface.LINGUAL,
            outline.get(),
            middle.get(),
            length,
            width,
            rules.cingulumDepth().value(),
            because));
  }

  /** A notch in the edge beside its proximal angle. */
  private Optional<Part.Rest> incisal(CrownBoard crown, Surface side, String because) {
    int e = side == Surface.DISTAL ? -1 : 1;
    double width = Math.min(rules.incisalWidth().value(), crown.halfWidth());
    double middleX = e * Math.max(0, crown.halfWidth() - rules.incisalFromAngle().value());
    double depth = rules.incisalAcross().value() * 2 * crown.halfDepth();
    Optional<Vec3> middle = crown.fromAbove(middleX, 0);
    Optional<Line> outline =
        CrownBoard.outline(
            POINTS,
            i -> {
              double turn = 2 * Math.PI * i / POINTS;
              double x = middleX + width / 2 * Math.cos(turn);
              return crown.fromAbove(x, depth / 2 * Math.sin(turn)).or(() -> crown.fromAbove(x, 0));
            });
    if (outline.isEmpty() || middle.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Part.Rest(
            crown.tooth.number(),
            RestKind.INCISAL,
            side,
            outline.get(),
            middle.get(),
            width,
            depth,
            rules.incisalDepth().value(),
            because));
  }
}
