package rodwork.demo;

import java.util.List;
import java.util.Map;
import rodwork.demo.ArchLayout.Entry;
import rodwork.demo.ArchLayout.Entry.Space;
import rodwork.demo.ArchLayout.Entry.Stands;

/**
 * The lower demo cast: Kennedy class II, modification 1.
 *
 * <p>35, 36, 37 are missing without a tooth behind, 45 and 46 between 44 and a 47 that leans to the
 * front and to the tongue. 44 is bulbous over a hollow gum, so that a bar would stand out too far;
 * 34 has a place with 0.50 mm of undercut mesiofacially.
 */
final class LowerCast {
  static final double CELL_MM = 0.28;

  private static final double ARCH_MM = 13.6;

  private LowerCast() {}

  static ArchLayout layout() {
    ArchLayout layout = new ArchLayout(new ArchCurve(ARCH_MM));
    CrownSize first = new CrownSize(9.0, 5.0, 3.5, 6.0, 5.3);
    CrownSize second = new CrownSize(9.5, 5.5, 4.0, 6.5, 5.8);
    CrownSize third = new CrownSize(11.0, 7.0, 5.5, 7.5, 7.0);
    CrownSize fourth = new CrownSize(8.5, 7.0, 5.0, 7.5, 6.5);
    CrownSize seventh = new CrownSize(7.0, 10.5, 8.0, 10.0, 9.0);
    Crown incisor1 = Incisor.lower(first, 0.0);
    Crown incisor2 = Incisor.lower(second, 0.03);
    Crown canine = Canine.of(third, 0.35);
    // Right: 41 42 43 44, space, 47. Left: 31 32 33 34, free end.
    List<Entry> right =
        List.of(
            new Stands(41, incisor1, 1, 4, 0, 0.3, 0),
            new Stands(42, incisor2, 1, 3, 1, 0.2, -0.1),
            new Stands(43, canine, 4, -2, 2, 0.8, 0.3),
            new Stands(44, Premolar.lowerFirst(fourth, 0.85, 0.31, 0), 3, -4, 0, 0.1, -0.7),
            new Space(16.2, List.of(45, 46)),
            new Stands(47, Molar.lowerSecond(seventh, 0.45), 16, -13, 0, 0.2, -0.6));
    List<Entry> left =
        List.of(
            new Stands(31, incisor1, 1, 4, -1, 0.3, 0),
            new Stands(32, incisor2, 1, 3, 0, 0.2, -0.05),
            new Stands(33, canine, 4, -2, 3, 0.8, 0.3),
            new Stands(34, Premolar.lowerFirst(fourth, 0.42, 0.27, 0.7), 8, -3, 5, 0.1, -0.7),
            new Space(28, List.of(35, 36, 37)));
    layout.place(1, right);
    layout.place(-1, left);
    return layout;
  }

  static CastField field(ArchLayout layout) {
    GumShape shape =
        new GumShape(
            Curve.through(-5, -1.5, 0, 0, 2, 0.35, 5, 0.55, 9, 0.8, 16, 1.6),
            Curve.through(-5, -1.5, 0, 0, 2, 0.5, 6, 1.4, 10, 1.8, 16, 2.0),
            Curve.through(0, -19.5, 20, -20, 45, -18.5, 60, -15),
            Curve.through(0, -9.5, 4, -8.8, 8, -7.2, 12, -5.6, 16, -4.8, 24, -5),
            2.6,
            0.6,
            new double[] {0, 27, -20},
            Map.of(44, 2.3));
    Gum gum = new Gum(layout, shape);
    InnerSurface floor = new MouthFloor(-22.5, 5.5, 19, -30, 4.5);
    Base base =
        Base.about(gum, new double[] {0, 180, 24, 156, 50, 130, 70, 110, 90, -55, -125}, -51, -30);
    return new CastField(gum, floor, base, layout.teeth());
  }
}
