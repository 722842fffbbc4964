package rodwork.demo;

import java.util.List;
import rodwork.geometry.Vec3;
import rodwork.geometry.solid.Blend;
import rodwork.geometry.solid.Box;
import rodwork.geometry.solid.Field;

/** The whole cast: teeth in gum, over the palate or the floor of the mouth, cut to its base. */
final class CastField implements Field {
  private static final double MARGIN_SEAM_MM = 0.45;
  private static final double CONTACT_SEAM_MM = 0.25;

  /** How far the edge between land and cut sides is broken [mm]. */
  private static final double RIM_MM = 0.7;

  private static final double SPARE_MM = 1.0;

  private final Gum gum;
  private final InnerSurface inner;
  private final Base base;
  private final List<Tooth> teeth;
  private final Box[] boxes;

  CastField(Gum gum, InnerSurface inner, Base base, List<Tooth> teeth) {
    this.gum = gum;
    this.inner = inner;
    this.base = base;
    this.teeth = teeth;
    this.boxes = teeth.stream().map(t -> t.box(SPARE_MM)).toArray(Box[]::new);
  }

  @Override
  public double at(double x, double y, double z) {
    return Blend.intersection(base.at(x, y, z), anatomy(x, y, z), RIM_MM);
  }

  /** Gum and teeth without the base's cuts. */
  double anatomy(double x, double y, double z) {
    double soft = soft(x, y, z);
    double hard = 1e3;
    for (int i = 0; i < boxes.length; i++) {
      if (boxes[i].holds(x, y, z)) {
        hard = Blend.union(hard, teeth.get(i).at(x, y, z), CONTACT_SEAM_MM);
      }
    }
    return Blend.union(soft, hard, MARGIN_SEAM_MM);
  }

  /** Gum, palate or floor alone. */
  double soft(double x, double y, double z) {
    double s = gum.curve().nearest(x, y);
    double t = gum.curve().across(s, x, y);
    double ridge = gum.at(s, t, z);
    if (t > 0) {
      return ridge;
    }
    // Inside the ridge the inner surface has no business; it sinks away there.
    double lingual = gum.lingualT(s);
    double underRidge = Blend.step(lingual - 0.5, lingual + 3, t);
    return Blend.union(ridge, 0.8 * (z - inner.height(x, y)) + 9 * underRidge, 3.5);
  }

  /** Whether a cube may hold anatomy, which needs fine cells; elsewhere is only plaster. */
  boolean detail(double x, double y, double z, double half) {
    Box cube = Box.about(new Vec3(x, y, z), half);
    for (Box box : boxes) {
      if (box.meets(cube)) {
        return true;
      }
    }
    return anatomy(x, y, z) > -2 * half;
  }

  double bottomZ() {
    return base.bottomZ();
  }

  /** Of a point on the surface: the number of its tooth, or gum, or base. */
  int labelAt(double x, double y, double z) {
    double least = soft(x, y, z);
    int label = DemoCast.GUM;
    for (int i = 0; i < boxes.length; i++) {
      if (boxes[i].holds(x, y, z)) {
        double value = teeth.get(i).at(x, y, z);
        if (value < least) {
          least = value;
          label = teeth.get(i).fdi();
        }
      }
    }
    return base.at(x, y, z) > least ? DemoCast.BASE : label;
  }

  @Override
  public Field within(Box box) {
    List<Tooth> near = new java.util.ArrayList<>();
    for (int i = 0; i < boxes.length; i++) {
      if (boxes[i].meets(box)) {
        near.add(teeth.get(i));
      }
    }
    return near.size() == teeth.size() ? this : new CastField(gum, inner, base, near);
  }
}
