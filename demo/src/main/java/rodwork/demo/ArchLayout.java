package rodwork.demo;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rodwork.geometry.Vec3;

/**
 * Sets crowns along the arch from the midline to the back, each side on its own.
 *
 * <p>A crown next to another is moved until the two touch, 0.06 mm into each other, as closed
 * contacts show on a cast; a space keeps the length it was given.
 */
final class ArchLayout {
  private static final double CONTACT_MM = 0.06;

  /** One thing in the row: a crown, or a space where teeth are missing. */
  sealed interface Entry {
    /**
     * A crown.
     *
     * @param tipDeg lean of its axis to mesial [degrees]
     * @param torqueDeg lean of its axis to facial [degrees]
     * @param turnDeg turn about its axis, mesial side to facial [degrees]
     * @param outMm its place outwards of the arch line [mm]
     * @param reachMm height of its cusp tip or incisal edge over the occlusal plane [mm]
     */
    record Stands(
        int fdi,
        Crown crown,
        double tipDeg,
        double torqueDeg,
        double turnDeg,
        double outMm,
        double reachMm)
        implements Entry {}

    /**
     * A space.
     *
     * @param lengthMm along the arch [mm]
     * @param fdis the teeth that are missing, from the front
     */
    record Space(double lengthMm, List<Integer> fdis) implements Entry {}
  }

  /**
   * A space in its place.
   *
   * @param from its end nearer to the midline, as arc length [mm]
   * @param to its other end
   */
  record PlacedSpace(double from, double to, List<Integer> fdis) {}

  private final ArchCurve curve;
  private final List<Tooth> teeth = new ArrayList<>();
  private final List<PlacedSpace> spaces = new ArrayList<>();

  ArchLayout(ArchCurve curve) {
    this.curve = curve;
  }

  ArchCurve curve() {
    return curve;
  }

  /** Teeth in the order of growing arc length. */
  List<Tooth> teeth() {
    return teeth.stream().sorted(Comparator.comparingDouble(Tooth::s)).toList();
  }

  List<PlacedSpace> spaces() {
    return List.copyOf(spaces);
  }

  /** Sets one side of the arch, from the midline; {@code side} +1 towards +X, −1 towards −X. */
  void place(int side, List<Entry> row) {
    Tooth last = teeth.stream().filter(t -> Math.abs(t.s()) < 6).findFirst().orElse(null);
    double end = 0;
    boolean touching = true;
    for (Entry entry : row) {
      switch (entry) {
        case Entry.Space space -> {
          spaces.add(
              side > 0
                  ? new PlacedSpace(end, end + space.lengthMm, space.fdis)
                  : new PlacedSpace(-end - space.lengthMm, -end, space.fdis));
          end += space.lengthMm;
          touching = false;
        }
        case Entry.Stands stands -> {
          double s = end + stands.crown.size.md() / 2;
          Tooth tooth = stand(side, s, stands);
          if (touching && last != null) {
            double low = s - 1.5;
            double high = s + 1.5;
            for (int i = 0; i < 9; i++) {
              s = (low + high) / 2;
              tooth = stand(side, s, stands);
              if (overlap(last, tooth) > CONTACT_MM) {
                low = s;
              } else {
                high = s;
              }
            }
          }
          teeth.add(tooth);
          last = tooth;
          end = s + stands.crown.size.md() / 2;
          touching = true;
        }
      }
    }
  }

  private Tooth stand(int side, double s, Entry.Stands e) {
    Vec3 out = curve.outward(side * s);
    Vec3 mesial = curve.along(side * s).times(-side);
    double turn = Math.toRadians(e.turnDeg);
    Vec3 m = mesial.times(Math.cos(turn)).plus(out.times(Math.sin(turn)));
    Vec3 f = out.times(Math.cos(turn)).minus(mesial.times(Math.sin(turn)));
    double tip = Math.tan(Math.toRadians(e.tipDeg));
    double torque = Math.tan(Math.toRadians(e.torqueDeg));
    Vec3 axis = Vec3.Z.plus(m.times(tip)).plus(f.times(torque)).unit();
    Vec3 facial = f.minus(axis.times(f.dot(axis))).unit();
    Vec3 toMesial = m.minus(axis.times(m.dot(axis))).minus(facial.times(m.dot(facial))).unit();
    // The crown turns about its middle at the height of the contacts, which stays on the line.
    double pivot = 0.62 * e.crown.size.length();
    Vec3 middle = curve.point(side * s, e.outMm, 0);
    Vec3 base = middle.minus(axis.times(pivot));
    Tooth flat = new Tooth(e.fdi, e.crown, base, toMesial, facial, axis, side * s);
    double lift = e.reachMm - highest(flat);
    return new Tooth(
        e.fdi, e.crown, base.plus(Vec3.Z.times(lift)), toMesial, facial, axis, side * s);
  }

  /** Height of the highest point of a crown [mm], to 0.05 mm. */
  private static double highest(Tooth tooth) {
    double best = -1e9;
    CrownSize size = tooth.crown().size;
    for (double m = -size.md() / 2; m <= size.md() / 2; m += 0.4) {
      for (double f = -size.bl() / 2; f <= size.bl() / 2; f += 0.3) {
        double z = size.length() + 0.3;
        while (z > size.length() / 2 && tooth.crown().at(m, f, z) > 0) {
          z -= 0.05;
        }
        if (z > size.length() / 2) {
          best = Math.max(best, tooth.point(m, f, z).z());
        }
      }
    }
    return best;
  }

  /** How far two neighbours reach into each other [mm]; negative: the gap between them. */
  private static double overlap(Tooth a, Tooth b) {
    Vec3 from = a.point(0, 0, 0.62 * a.crown().size.length());
    Vec3 to = b.point(0, 0, 0.62 * b.crown().size.length());
    Vec3 along = to.minus(from).unit();
    Vec3 out = along.cross(Vec3.Z);
    double deepest = 1e9;
    Vec3 middle =
        from.plus(to).times(0.5).plus(along.times((a.crown().size.md() - b.crown().size.md()) / 4));
    for (double u = -2.5; u <= 2.5; u += 0.5) {
      for (double w = -3; w <= 3; w += 0.4) {
        for (double v = -0.8; v <= 0.8; v += 0.2) {
          double x = middle.x() + out.x() * u + along.x() * v;
          double y = middle.y() + out.y() * u + along.y() * v;
          double z = middle.z() + w;
          deepest = Math.min(deepest, Math.max(a.at(x, y, z), b.at(x, y, z)));
        }
      }
    }
    return -2 * deepest;
  }
}
