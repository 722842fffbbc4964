package rodwork.design.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rodwork.design.load.RigidDenture.Abutment;
import rodwork.design.load.RigidDenture.Force;
import rodwork.design.load.RigidDenture.Patch;
import rodwork.design.load.RigidDenture.Rest;
import rodwork.design.load.RigidDenture.Tip;

/** Truth: closed forms of statics; then balance and symmetry on random dentures (fixed seed). */
class EquilibriumTest {
  private static final double CONTACT = Equilibrium.CONTACT_N_PER_MM;

  private static double series(double stiffness) {
    return 1 / (1 / stiffness + 1 / CONTACT);
  }

  /** A beam of length L on springs at both ends, each spring doubled to both sides of the beam. */
  @ParameterizedTest
  @CsvSource({"200, 700, 12", "500, 500, 20", "900, 100, 3"})
  void aBeamOnTwoSpringsSharesByTheLever(double k0, double k1, double at) {
    double length = 40;
    double load = 60;
    List<Abutment> teeth = new ArrayList<>();
    List<Rest> rests = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      double x = i / 2 * length;
      double y = i % 2 == 0 ? -5 : 5;
      teeth.add(new Abutment(x, y, i / 2 == 0 ? k0 : k1, 1e4));
      rests.add(new Rest(i, x, y));
    }
    Equilibrium found = solved(new RigidDenture(teeth, rests, List.of(), List.of()), at, 0, load);
    double r0 = load * (length - at) / length;
    double r1 = load * at / length;
    assertThat(found.restN().get(0) + found.restN().get(1)).isCloseTo(r0, within(1e-8));
    assertThat(found.restN().get(2) + found.restN().get(3)).isCloseTo(r1, within(1e-8));
    double sinks0 = r0 / (2 * series(k0));
    double sinks1 = r1 / (2 * series(k1));
    assertThat(found.sinks().mm(0, 0)).isCloseTo(sinks0, within(1e-10));
    assertThat(found.sinks().mm(length, 0)).isCloseTo(sinks1, within(1e-10));
    assertThat(found.sinks().mm(at, 0))
        .isCloseTo(sinks0 + (sinks1 - sinks0) * at / length, within(1e-10));
    assertThat(found.momentNmm(0)).isCloseTo(0, within(1e-7));
  }

  /** A rest beside the centre of resistance gives by 1/k + e²/kθ, and tips the tooth by F·e. */
  @Test
  void aRestBesideTheAxisTipsTheTooth() {
    double e = 3.5;
    double axial = 300;
    double tipping = 9000;
    List<Abutment> teeth = new ArrayList<>();
    List<Rest> rests = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      double x = i / 2 == 0 ? -15 : 15;
      double y = i % 2 == 0 ? -20 : 20;
      teeth.add(new Abutment(x, y, axial, tipping));
      rests.add(new Rest(i, x + Math.signum(x) * e, y));
    }
    Equilibrium found = solved(new RigidDenture(teeth, rests, List.of(), List.of()), 0, 0, 80);
    double gives = 1 / axial + e * e / tipping + 1 / CONTACT;
    assertThat(found.sinks().at()).isCloseTo(20 * gives, within(1e-10));
    assertThat(found.towardsX().get(0)).isCloseTo(-20 * e, within(1e-7));
    assertThat(found.towardsX().get(3)).isCloseTo(20 * e, within(1e-7));
    assertThat(found.towardsY().get(3)).isCloseTo(0, within(1e-7));
  }

  private static final double A = 20;
  private static final double B = 12;

  private static RigidDenture plate(int n, int m, double modulus) {
    List<Patch> bed = new ArrayList<>();
    double cell = A / n * B / m * modulus;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < m; j++) {
        bed.add(new Patch(0, A * ((i + 0.5) / n - 0.5), B * ((j + 0.5) / m - 0.5), cell));
      }
    }
    return new RigidDenture(List.of(), List.of(), List.of(), bed);
  }

  /**
   * A rigid plate a × b on a bed of modulus k, pressed beside its middle: k·s = P/ab·(1 +
   * 12·ex·x/a² + 12·ey·y/b²) while that is nowhere below 0. A plate cut into n × m cells has a²(1 −
   * 1/n²) for a².
   */
  @ParameterizedTest
  @CsvSource({"0, 0", "2, 0", "-1.5, 0.8", "3, 0"})
  void aPlateOnAnElasticBedSinksByTheMiddleThird(double ex, double ey) {
    int n = 40;
    int m = 24;
    double modulus = 0.4;
    double load = 50;
    Equilibrium found = solved(plate(n, m, modulus), ex, ey, load);
    double a2 = A * A * (1 - 1.0 / n / n);
    double b2 = B * B * (1 - 1.0 / m / m);
    for (double x : new double[] {-9, 0, 7}) {
      for (double y : new double[] {-5, 0, 4}) {
        double pressure = load / (A * B) * (1 + 12 * ex * x / a2 + 12 * ey * y / b2);
        assertThat(found.sinks().mm(x, y)).isCloseTo(pressure / modulus, within(1e-9));
        double whole = load / (A * B) * (1 + 12 * ex * x / A / A + 12 * ey * y / B / B);
        assertThat(found.sinks().mm(x, y)).isCloseTo(whole / modulus, within(0.002));
      }
    }
    assertThat(found.bedN()).allMatch(f -> f > 0);
  }

  /**
   * Pressed outside its middle third the plate lifts off: a strip c = 3(a/2 − e) stays in touch,
   * and the edge bears 2P/(bc).
   */
  @ParameterizedTest
  @ValueSource(doubles = {4, 6, 8, 9})
  void aPlatePressedNearItsEdgeLiftsOffAtTheOther(double e) {
    int n = 2000;
    double modulus = 0.4;
    double load = 50;
    Equilibrium found = solved(plate(n, 2, modulus), e, 0, load);
    double touching = 3 * (A / 2 - e);
    assertThat(found.sinks().mm(A / 2, 0))
        .isCloseTo(2 * load / (B * touching) / modulus, Percentage.withPercentage(0.05));
    double zero = -found.sinks().at() / found.sinks().slopeX();
    assertThat(A / 2 - zero).isCloseTo(touching, Percentage.withPercentage(0.05));
    assertThat(found.bedN().stream().filter(f -> f == 0).count()).isGreaterThanOrEqualTo(n / 5);
    assertThat(found.bedN()).allMatch(f -> f >= 0);
  }

  /**
   * A free end turns about its rests: with the tip of an arm at a distance d on the other side, P·l
   * = 2k·φ·l² + kt·φ·d² until it slips at F, and P·l = 2k·φ·l² + F·d from then on.
   */
  @ParameterizedTest
  @CsvSource({"1000, false", "1, true"})
  void aFreeEndTurnsAboutItsRestsAgainstTheTip(double slips, boolean slipped) {
    double l = 25;
    double d = 6;
    double k = 40;
    double tip = 8;
    double load = 60;
    double stiff = 1e8;
    RigidDenture denture =
        new RigidDenture(
            List.of(
                new Abutment(0, -10, stiff, 1e9),
                new Abutment(0, 10, stiff, 1e9),
                new Abutment(d, 0, stiff, 1e9)),
            List.of(new Rest(0, 0, -10), new Rest(1, 0, 10)),
            List.of(new Tip(2, d, 0, tip, slips)),
            List.of(new Patch(0, -l, -10, k), new Patch(0, -l, 10, k)));
    Equilibrium found = solved(denture, -l, 0, load);
    double turn =
        slipped
            ? (load * l - slips * d) / (2 * k * l * l)
            : load * l / (2 * k * l * l + tip * d * d);
    assertThat(found.sinks().mm(-l, 0)).isCloseTo(turn * l, within(1e-4));
    assertThat(found.tipN().getFirst()).isCloseTo(slipped ? slips : tip * turn * d, within(1e-3));
    assertThat(found.restN().getFirst())
        .isCloseTo((load - 2 * k * turn * l + found.tipN().getFirst()) / 2, within(2e-2));
    // The tip pulls its tooth up where it stands: nothing tips.
    assertThat(found.momentNmm(2)).isCloseTo(0, within(1e-6));
  }

  /** A tip that goes down with its base lets go. */
  @Test
  void aTipOnTheSideOfTheBasePullsNothing() {
    RigidDenture denture =
        new RigidDenture(
            List.of(new Abutment(0, -10, 300, 1e4), new Abutment(0, 10, 300, 1e4)),
            List.of(new Rest(0, 0, -10), new Rest(1, 0, 10)),
            List.of(new Tip(0, -3, -10, 5, 5)),
            List.of(new Patch(0, -25, -10, 40), new Patch(0, -25, 10, 40)));
    assertThat(solved(denture, -20, 0, 50).tipN().getFirst()).isZero();
  }

  @Test
  void whatNothingHoldsTipsOver() {
    RigidDenture onTwo =
        new RigidDenture(
            List.of(new Abutment(0, -10, 300, 1e4), new Abutment(0, 10, 300, 1e4)),
            List.of(new Rest(0, 0, -10), new Rest(1, 0, 10)),
            List.of(),
            List.of());
    assertThat(Equilibrium.of(onTwo, List.of(new Force(-20, 0, 50)))).isEmpty();
    // Beyond the edge of its bed, and nothing on the other side.
    assertThat(Equilibrium.of(plate(20, 10, 0.4), List.of(new Force(11, 0, 50)))).isEmpty();
  }

  @Test
  void randomDenturesBalanceAndFollowTheirMirrorImage() {
    Random random = new Random(20);
    int lifted = 0;
    int slipped = 0;
    int held = 0;
    for (int i = 0; i < 300; i++) {
      RigidDenture denture = random(random);
      Force force =
          new Force(
              40 * random.nextDouble() - 20,
              30 * random.nextDouble(),
              20 + 100 * random.nextDouble());
      Equilibrium found = Equilibrium.of(denture, List.of(force)).orElse(null);
      if (found == null) {
        continue;
      }
      held++;
      lifted += found.restN().stream().anyMatch(f -> f == 0) ? 1 : 0;
      double up = 0;
      double mx = 0;
      double my = 0;
      for (int j = 0; j < denture.bed().size(); j++) {
        Patch p = denture.bed().get(j);
        up += found.bedN().get(j);
        mx += found.bedN().get(j) * p.x();
        my += found.bedN().get(j) * p.y();
      }
      for (int j = 0; j < denture.rests().size(); j++) {
        Rest r = denture.rests().get(j);
        up += found.restN().get(j);
        mx += found.restN().get(j) * r.x();
        my += found.restN().get(j) * r.y();
      }
      for (int j = 0; j < denture.tips().size(); j++) {
        Tip t = denture.tips().get(j);
        slipped += found.tipN().get(j) == t.slipsN() ? 1 : 0;
        up -= found.tipN().get(j);
        mx -= found.tipN().get(j) * t.x();
        my -= found.tipN().get(j) * t.y();
      }
      String which = "denture " + i + " of seed 20";
      double f = force.newtons();
      assertThat(up).as(which).isCloseTo(f, within(1e-9 * f));
      assertThat(mx).as(which).isCloseTo(f * force.x(), within(1e-9 * f * 30));
      assertThat(my).as(which).isCloseTo(f * force.y(), within(1e-9 * f * 30));
      Equilibrium mirrored =
          Equilibrium.of(mirror(denture), List.of(new Force(-force.x(), force.y(), f)))
              .orElseThrow();
      for (int j = 0; j < denture.rests().size(); j++) {
        assertThat(mirrored.restN().get(j))
            .as(which)
            .isCloseTo(found.restN().get(j), within(1e-6 * f));
      }
      for (int j = 0; j < denture.teeth().size(); j++) {
        assertThat(mirrored.momentNmm(j)).as(which).isCloseTo(found.momentNmm(j), within(1e-5 * f));
      }
    }
    // Enough of every kind was met.
    assertThat(held).isGreaterThan(150);
    assertThat(lifted).isGreaterThan(50);
    assertThat(slipped).isGreaterThan(20);
  }

  private static RigidDenture random(Random random) {
    List<Abutment> teeth = new ArrayList<>();
    List<Rest> rests = new ArrayList<>();
    List<Tip> tips = new ArrayList<>();
    for (int t = 0; t < 4; t++) {
      double x = (50 * random.nextDouble() - 25);
      double y = 40 * random.nextDouble();
      teeth.add(
          new Abutment(
              x,
              y,
              100 * Math.pow(10, random.nextDouble()),
              3000 * Math.pow(10, random.nextDouble())));
      rests.add(new Rest(t, x + 6 * random.nextDouble() - 3, y + 6 * random.nextDouble() - 3));
      tips.add(
          new Tip(
              t,
              x + 8 * random.nextDouble() - 4,
              y + 8 * random.nextDouble() - 4,
              3 + 30 * random.nextDouble(),
              1 + 9 * random.nextDouble()));
    }
    List<Patch> bed = new ArrayList<>();
    for (int i = 0; i < 80; i++) {
      bed.add(
          new Patch(
              0,
              (22 + 8 * random.nextDouble() - 4),
              25 * random.nextDouble() - 5,
              2 * (0.05 + random.nextDouble())));
    }
    return new RigidDenture(teeth, rests, tips, bed);
  }

  private static RigidDenture mirror(RigidDenture d) {
    return new RigidDenture(
        d.teeth().stream()
            .map(t -> new Abutment(-t.x(), t.y(), t.axialNPerMm(), t.tippingNmm()))
            .toList(),
        d.rests().stream().map(r -> new Rest(r.tooth(), -r.x(), r.y())).toList(),
        d.tips().stream()
            .map(t -> new Tip(t.tooth(), -t.x(), t.y(), t.nPerMm(), t.slipsN()))
            .toList(),
        d.bed().stream().map(p -> new Patch(p.base(), -p.x(), p.y(), p.nPerMm())).toList());
  }

  private static Equilibrium solved(RigidDenture denture, double x, double y, double newtons) {
    return Equilibrium.of(denture, List.of(new Force(x, y, newtons))).orElseThrow();
  }
}
