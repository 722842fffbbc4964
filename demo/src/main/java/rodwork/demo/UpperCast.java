package rodwork.demo;

import java.util.List;
import java.util.Map;
import rodwork.demo.ArchLayout.Entry;
import rodwork.demo.ArchLayout.Entry.Space;
import rodwork.demo.ArchLayout.Entry.Stands;

/**
 * The upper demo cast: Kennedy class III, modification 1.
 *
 * <p>14, 15 and 25, 26 are missing. 27 leans to the cheek and has a high survey line, 16 a low one;
 * 13 has no undercut to use at the reference orientation; at 24 a bar would do.
 */
final class UpperCast {
  static final double CELL_MM = 0.29;

  private static final double ARCH_MM = 17.4;

  private UpperCast() {}

  static ArchLayout layout() {
    ArchLayout layout = new ArchLayout(new ArchCurve(ARCH_MM));
    CrownSize first = new CrownSize(10.5, 8.5, 7.0, 7.0, 6.0);
    CrownSize second = new CrownSize(9.0, 6.5, 5.0, 6.0, 5.0);
    CrownSize third = new CrownSize(10.0, 7.5, 5.5, 8.0, 7.0);
    CrownSize stout = new CrownSize(10.0, 7.5, 6.3, 8.0, 7.6);
    CrownSize fourth = new CrownSize(8.5, 7.0, 5.0, 9.0, 8.0);
    CrownSize sixth = new CrownSize(7.5, 10.0, 8.0, 11.0, 10.0);
    CrownSize seventh = new CrownSize(7.0, 9.0, 7.0, 11.0, 10.0);
    Crown incisor1 = Incisor.upper(first, 0.03);
    Crown incisor2 = Incisor.upper(second, 0.07);
    // Left (+X): 21 22 23 24, space, 27. Right: 11 12 13, space, 16 17.
    List<Entry> left =
        List.of(
            new Stands(21, incisor1, 2, 8, 0, 0.4, 0),
            new Stands(22, incisor2, 4, 7, 0, 0.3, -0.6),
            new Stands(23, Canine.of(third, 0.5), 4, 2, 2, 1.5, 0.3),
            new Stands(24, Premolar.upperFirst(fourth, 0.5, 0.5), 3, 1, 0, 0.1, 0.0),
            new Space(15.6, List.of(25, 26)),
            new Stands(27, Molar.upper(seventh, 0.2, 0.67, 0.7), 3, 12, 0, -1.0, -0.6));
    List<Entry> right =
        List.of(
            new Stands(11, incisor1, 2, 8, 0, 0.4, 0),
            new Stands(12, incisor2, 4, 7, 1, 0.3, -0.6),
            new Stands(13, Canine.of(stout, 0.1), 7, -4, 2, 1.8, 0.2),
            new Space(13.4, List.of(14, 15)),
            new Stands(16, Molar.upper(sixth, 0.45, 0.22, 0), -4, -2, 0, -0.9, 0.1),
            new Stands(17, Molar.upper(seventh, 0.5, 0.28, 0.6), 1, 2, 0, -1.0, -0.4));
    layout.place(1, left);
    layout.place(-1, right);
    return layout;
  }

  static CastField field(ArchLayout layout) {
    GumShape shape =
        new GumShape(
            Curve.through(-5, -1.5, 0, 0, 2, 0.25, 5, 0.4, 9, 0.6, 16, 1.4),
            Curve.through(-5, -1.5, 0, 0, 2, 0.7, 5, 2.0, 8, 4.0, 14, 9.0),
            Curve.through(0, -20.5, 20, -20.5, 45, -19, 60, -17),
            Curve.through(0, -8.0, 4, -7.6, 8, -7.9, 12, -9.2, 16, -12, 20, -14),
            2.2,
            0.7,
            new double[] {0, 24, -24.5},
            Map.of());
    Gum gum = new Gum(layout, shape);
    InnerSurface palate = new Palate(-11.3, 11.0, 23.2, -38, 4.5);
    Base base = Base.about(gum, new double[] {0, 180, 30, 150, 62, 118, -55, -125}, -50.5, -31);
    return new CastField(gum, palate, base, layout.teeth());
  }
}
