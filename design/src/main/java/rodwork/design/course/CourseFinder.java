package rodwork.design.course;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.arm.Arm;
import rodwork.design.arm.ArmMaterial;
import rodwork.design.arm.ArmSections;
import rodwork.design.arm.ArmStock;
import rodwork.design.arm.ToothSurface;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.Family;
import rodwork.geometry.Vec3;
import rodwork.rules.Place;

/**
 * Lays the arms of clasps on one tooth.
 *
 * <p>An arm around the tooth leaves the body beside the middle of the proximal surface, runs with
 * its lower edge on the survey line, over furrows of the line, and goes down to its mark in its
 * terminal third; a wire is below the line by half its width from its middle third on. A second arm
 * lies on the other surface at or above the line, half way up where there is no undercut.
 */
public final class CourseFinder {
  /** An arm leaves the body this far beside the middle of the proximal surface [mm]. */
  private static final double BODY_MM = 1.5;

  /** No arm comes nearer to the top of the crown than this [mm]. */
  private static final double BELOW_TOP_MM = 0.3;

  /** An opposing arm ends this far past the middle of its surface [degrees]. */
  private static final double OPPOSING_END_DEG = 42;

  /**
   * The upper leg of a hairpin turns this far from the middle of the proximal surface [degrees].
   */
  private static final double HAIRPIN_TURN_DEG = 110;

  /** The two legs of a hairpin lie this far apart at least, middle to middle [mm]. */
  private static final double HAIRPIN_GAP_MM = 2;

  /** Points of the turn of a hairpin, and how far it bulges past where it turns [degrees]. */
  private static final int TURN_POINTS = 6;

  private static final double TURN_DEG = 8;

  private final CrownBelt belt;
  private final Tooth tooth;
  private final ToothSurface surface;
  private final BarWay bars;
  private final ArmStock stock;

  public CourseFinder(CrownBeltSource source, Tooth tooth, BarWay bars, ArmStock stock) {
    this.belt = new CrownBelt(source.mesh(), tooth, source.axis());
    this.tooth = tooth;
    this.surface = source.surface();
    this.bars = bars;
    this.stock = stock;
  }

  /** What a belt is read from: the cast, the path and the cast's surface as a tip meets it. */
  public record CrownBeltSource(
      rodwork.geometry.mesh.TriangleMesh mesh, Vec3 axis, ToothSurface surface) {}

  /**
   * Lays a family with its tip in one third.
   *
   * @param shape what a person made of it
   */
  public ClaspCourse.Attempt course(
      Family family, AbutmentFacts facts, AcrossThird tip, ArmShape shape) {
    ArmSections sections = stock.sections(stock.material(family.material()));
    Optional<Vec3> mark = mark(family, facts, tip);
    List<Vec3> line;
    OptionalDouble crossing = OptionalDouble.empty();
    if (family.arm() == Family.ArmShape.BAR) {
      BarWay.Way way =
          bars.shaped(bars.to(tip, mark.orElseGet(() -> wouldBe(family, facts, tip))), shape);
      if (way.line().isEmpty()) {
        return ClaspCourse.Attempt.none(way.why());
      }
      line = way.line();
      crossing = way.crossingDeg();
    } else {
      double width = sections.origin().widthMm();
      boolean wire = stock.material(family.material()).making() == ArmMaterial.Making.WROUGHT;
      line =
          shape.of(
              around(
                  family,
                  facts.space(),
                  mark.orElseGet(() -> wouldBe(family, facts, tip)),
                  width,
                  wire),
              bars::nearest);
      if (line.size() < 3) {
        return ClaspCourse.Attempt.none("the scan does not hold the surface that the arm crosses");
      }
    }
    List<Arm.Station> stations =
        line.stream().map(p -> new Arm.Station(p, surface.normal(p))).toList();
    Arm arm = new Arm(stations, sections.origin(), sections.tip());
    List<Vec3> opposing = opposing(family, facts.space(), sections.origin().widthMm());
    return ClaspCourse.Attempt.of(
        new ClaspCourse(
            arm,
            opposing,
            encirclement(family, facts.space(), line, opposing),
            crossing,
            mark.isPresent() || shape.movesTip(),
            shape));
  }

  private static Optional<Vec3> mark(Family family, AbutmentFacts facts, AcrossThird tip) {
    AbutmentFacts.Third third = facts.thirds().get(new AbutmentFacts.Site(family.surface(), tip));
    return third == null
        ? Optional.empty()
        : third.mark(family.gauge()).flatMap(m -> m.place().spot()).map(CourseFinder::vec);
  }

  private static Vec3 vec(Place.Spot spot) {
    return new Vec3(spot.x(), spot.y(), spot.z());
  }

  /**
   * Where a tip would lie without a mark: where its undercut would be deepened, if there is any.
   */
  private Vec3 wouldBe(Family family, AbutmentFacts facts, AcrossThird tip) {
    AbutmentFacts.Third third = facts.thirds().get(new AbutmentFacts.Site(family.surface(), tip));
    return Optional.ofNullable(third)
        .flatMap(t -> t.clear().place())
        .flatMap(Place::spot)
        .map(CourseFinder::vec)
        .orElseGet(() -> wouldBe(family.surface(), tip));
  }

  /** In its third, a third of the way up. */
  private Vec3 wouldBe(Surface face, AcrossThird tip) {
    double aside = tip == AcrossThird.MIDDLE ? 0 : tip == AcrossThird.MESIAL ? -40 : 40;
    double deg =
        CrownBelt.snapped(
            face == Surface.FACIAL
                ? CrownBelt.middleDeg(face) + aside
                : CrownBelt.middleDeg(face) - aside);
    CrownBelt.Outline outline = belt.at(deg);
    if (outline == null) {
      return tooth.centroid();
    }
    double height = outline.low() + (outline.high() - outline.low()) / 3;
    double radius = outline.radius(height);
    return belt.point(deg, Double.isNaN(radius) ? outline.radiusMm() : radius, height);
  }

  private List<Vec3> around(Family family, Surface near, Vec3 tip, double width, boolean wire) {
    boolean ring = family.arm() == Family.ArmShape.RING;
    Surface start = family.begins(near);
    double turn = turn(start, family.surface()) * (ring ? -1 : 1);
    double base = CrownBelt.middleDeg(start);
    double sweep = Math.floorMod(Math.round((belt.angleDeg(tip) - base) * turn), 360L);
    double tipHeight = belt.height(tip);
    if (family.arm() == Family.ArmShape.HAIRPIN) {
      return hairpin(base, turn, sweep, tip, tipHeight, width);
    }
    double begin = bodyDeg(base);
    BeltRun run = new BeltRun(belt, base, turn, begin, sweep);
    BeltRun.Heights rigid =
        family.runs() == Family.Runs.ON_THE_LINE ? onLine(run, width) : rigid(run, width);
    BeltRun.Heights middle = wire ? below(run, width) : rigid;
    List<Vec3> line = new ArrayList<>();
    for (double s = begin; s < sweep; s += CrownBelt.stepDeg()) {
      double share = (s - begin) / (sweep - begin);
      double height =
          share < 1 / 3.0
              ? rigid.at(s)
              : share < 2 / 3.0
                  ? mix(rigid.at(s), middle.at(s), smooth(3 * share - 1))
                  : mix(middle.at(s), tipHeight, smooth(3 * share - 2));
      add(line, CrownBelt.snapped(base + turn * s), height);
    }
    line.add(tip);
    return line;
  }

  private List<Vec3> hairpin(
      double base, double turn, double sweep, Vec3 tip, double tipHeight, double width) {
    List<Vec3> line = new ArrayList<>();
    double turnAt = Math.max(sweep + 30, HAIRPIN_TURN_DEG);
    double begin = bodyDeg(base);
    BeltRun run = new BeltRun(belt, base, turn, begin, turnAt + TURN_DEG + CrownBelt.stepDeg());
    BeltRun.Heights rigid = rigid(run, width);
    BeltRun.Heights lowest = run.over(outline -> outline.low() + width / 2);
    for (double s = begin; s < turnAt; s += CrownBelt.stepDeg()) {
      add(
          line,
          CrownBelt.snapped(base + turn * s),
          Math.max(rigid.at(s), tipHeight + HAIRPIN_GAP_MM));
    }
    for (int i = 1; i < TURN_POINTS; i++) {
      double share = (double) i / TURN_POINTS;
      double s = turnAt + TURN_DEG * Math.sin(Math.PI * share);
      double upper = Math.max(rigid.at(s), tipHeight + HAIRPIN_GAP_MM);
      add(
          line,
          CrownBelt.snapped(base + turn * s),
          mix(upper, Math.max(tipHeight, lowest.at(s)), share));
    }
    for (double s = turnAt; s > sweep; s -= CrownBelt.stepDeg()) {
      add(line, CrownBelt.snapped(base + turn * s), Math.max(tipHeight, lowest.at(s)));
    }
    line.add(tip);
    return line;
  }

  private void add(List<Vec3> line, double deg, double height) {
    CrownBelt.Outline outline = belt.at(deg);
    double radius = outline == null ? Double.NaN : outline.radius(height);
    if (!Double.isNaN(radius)) {
      line.add(belt.point(deg, radius, height));
    }
  }

  /** Middle of an arm with its lower edge on the survey line; half way up where that lies low. */
  private static BeltRun.Heights rigid(BeltRun run, double width) {
    BeltRun.Heights above =
        run.over(o -> Math.max(o.contour() + width / 2, o.low() + (o.high() - o.low()) / 2));
    BeltRun.Heights top = top(run, width);
    return s -> Math.min(above.at(s), top.at(s));
  }

  /** Middle of an arm on the survey line, as far as the crown has room for it. */
  private static BeltRun.Heights onLine(BeltRun run, double width) {
    BeltRun.Heights line = run.along(CrownBelt.Outline::contour);
    BeltRun.Heights lowest = run.over(o -> o.low() + width / 2);
    BeltRun.Heights top = top(run, width);
    return s -> Math.min(Math.max(line.at(s), lowest.at(s)), top.at(s));
  }

  private static BeltRun.Heights below(BeltRun run, double width) {
    BeltRun.Heights line = run.under(o -> o.contour() - width / 2);
    BeltRun.Heights lowest = run.over(o -> o.low() + width / 2);
    return s -> Math.max(line.at(s), lowest.at(s));
  }

  private static BeltRun.Heights top(BeltRun run, double width) {
    return run.under(o -> Math.max(o.wall() - width / 2 - BELOW_TOP_MM, o.low() + width / 2));
  }

  /** Which way round a surface lies from a proximal one: 1 with rising angles, −1 against. */
  private static double turn(Surface proximal, Surface face) {
    return (proximal == Surface.MESIAL) == (face == Surface.FACIAL) ? 1 : -1;
  }

  /** How far beside the middle of the proximal surface an arm begins [degrees]. */
  private double bodyDeg(double base) {
    CrownBelt.Outline outline = belt.at(base);
    double radius = outline == null ? tooth.size().mesiodistalMm() / 2 : outline.radiusMm();
    return Math.toDegrees(BODY_MM / Math.max(1, radius));
  }

  private List<Vec3> opposing(Family family, Surface near, double width) {
    Optional<Surface> from =
        switch (family.opposing()) {
          case ARM -> Optional.of(near);
          case FAR_ARM -> Optional.of(near.opposite());
          case ITSELF, PLATE -> Optional.empty();
        };
    if (from.isEmpty()) {
      return List.of();
    }
    Surface start = from.get();
    Surface face = family.surface().opposite();
    double turn = turn(start, face);
    double base = CrownBelt.middleDeg(start);
    double begin = bodyDeg(base);
    double end = 90 + OPPOSING_END_DEG;
    BeltRun.Heights rigid =
        rigid(new BeltRun(belt, base, turn, begin, end + CrownBelt.stepDeg()), width);
    List<Vec3> line = new ArrayList<>();
    for (double s = begin; s <= end; s += CrownBelt.stepDeg()) {
      add(line, CrownBelt.snapped(base + turn * s), rigid.at(s));
    }
    return line;
  }

  /** 360° less the widest gap between what touches: arms, plate or rest, minor connector. */
  private double encirclement(Family family, Surface near, List<Vec3> arm, List<Vec3> opposing) {
    List<Double> touched = new ArrayList<>();
    if (family.arm() == Family.ArmShape.BAR) {
      touched.add(belt.angleDeg(arm.getLast()));
    } else {
      arm.forEach(p -> touched.add(belt.angleDeg(p)));
    }
    opposing.forEach(p -> touched.add(belt.angleDeg(p)));
    touched.add(CrownBelt.middleDeg(near));
    if (family.opposing() == Family.Opposing.PLATE) {
      // The minor connector of the far rest lies at the far lingual line angle.
      touched.add(near == Surface.DISTAL ? 315.0 : 225.0);
    }
    touched.sort(null);
    double widest = touched.getFirst() + 360 - touched.getLast();
    for (int i = 1; i < touched.size(); i++) {
      widest = Math.max(widest, touched.get(i) - touched.get(i - 1));
    }
    return 360 - widest;
  }

  private static double smooth(double t) {
    double x = Math.clamp(t, 0, 1);
    return x * x * (3 - 2 * x);
  }

  private static double mix(double a, double b, double share) {
    return a + share * (b - a);
  }
}
