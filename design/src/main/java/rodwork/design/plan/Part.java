package rodwork.design.plan;

import java.util.List;
import java.util.Optional;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.abutment.GuidingPlane;
import rodwork.design.clasp.Family;
import rodwork.design.clasp.Judgement;
import rodwork.design.course.ClaspCourse;
import rodwork.geometry.Vec3;
import rodwork.rules.Reading;

/** One part of a planned denture. Curves lie on the cast, in the scan frame [mm]. */
public sealed interface Part {

  /** Kinds of rest. */
  enum RestKind {
    OCCLUSAL("occlusal rest"),
    EXTENDED("extended occlusal rest"),
    CINGULUM("cingulum rest"),
    INCISAL("incisal rest");

    private final String words;

    RestKind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * A rest.
   *
   * @param tooth that carries it
   * @param kind what it is
   * @param side mesial or distal; lingual for a cingulum rest
   * @param outline of its seat, closed
   * @param middle the middle of the seat on the tooth
   * @param lengthMm along the arch
   * @param widthMm across the arch
   * @param depthMm of the seat where it is deepest, from the rules
   * @param because one sentence
   */
  record Rest(
      ToothNumber tooth,
      RestKind kind,
      Surface side,
      Line outline,
      Vec3 middle,
      double lengthMm,
      double widthMm,
      double depthMm,
      String because)
      implements Part {}

  /**
   * A guiding plate: metal against a proximal plane.
   *
   * @param line its foot, along the surface across the tooth
   * @param plane what was measured there
   */
  record GuidingPlate(ToothNumber tooth, Surface side, Line line, GuidingPlane plane)
      implements Part {}

  /** How an arm reaches its tip. */
  enum Approach {
    /** Around the tooth from above the survey line. */
    CIRCUMFERENTIAL,
    /** From below, across the gingival margin. */
    BAR
  }

  /**
   * A clasp with both arms, as they are laid on the tooth for the judgement of abutments.
   *
   * @param tooth that it holds
   * @param side of the space or embrasure it comes from
   * @param judgement its family, with every step that was asked and every warning
   * @param course its arms; empty where none can be laid
   * @param why why there are none; empty where there are
   * @param chosen whether a person chose the family
   */
  record Clasp(
      ToothNumber tooth,
      Surface side,
      Judgement judgement,
      Optional<ClaspCourse> course,
      String why,
      boolean chosen)
      implements Part {

    /** How the retentive arm runs. */
    public Approach approach() {
      return judgement.family().arm() == Family.ArmShape.BAR
          ? Approach.BAR
          : Approach.CIRCUMFERENTIAL;
    }

    /** The retentive arm, from its origin to its tip. */
    public Optional<Line> retentive() {
      return course.map(c -> Line.open(c.retentiveLine()));
    }

    /**
     * The arm on the other side, from its origin to its end; empty where something else opposes.
     */
    public Optional<Line> reciprocal() {
      return course.map(ClaspCourse::opposing).filter(l -> l.size() > 1).map(Line::open);
    }

    /** Undercut that the tip takes [mm]. */
    public double gaugeMm() {
      return judgement.family().gauge().value();
    }

    /** The tip of the retentive arm. */
    public Optional<Vec3> tip() {
      return course.map(c -> c.retentive().end().point());
    }

    /** Whether a person shaped the retentive arm. */
    public boolean byHand() {
      return course.filter(c -> !c.shape().pulls().isEmpty()).isPresent();
    }

    /** Whether the tip lies on its gauge mark, or where a person put it. */
    public boolean standsOnMark() {
      return course.filter(ClaspCourse::standsOnMark).isPresent();
    }
  }

  /**
   * A minor connector, from a rest or plate to the major connector or the base.
   *
   * @param line from the tooth across the margin
   */
  record MinorConnector(ToothNumber tooth, Surface side, Line line) implements Part {}

  /** Kinds of major connector. */
  enum ConnectorKind {
    LINGUAL_BAR("lingual bar"),
    SUBLINGUAL_BAR("sublingual bar"),
    LINGUAL_PLATE("lingual plate"),
    PALATAL_STRAP("palatal strap"),
    ANTERIOR_POSTERIOR_STRAP("anterior-posterior strap"),
    PALATAL_PLATE("palatal plate"),
    U_SHAPED("U-shaped palatal connector");

    private final String words;

    ConnectorKind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    /** Whether it lies in the upper jaw. */
    public boolean isUpper() {
      return switch (this) {
        case LINGUAL_BAR, SUBLINGUAL_BAR, LINGUAL_PLATE -> false;
        case PALATAL_STRAP, ANTERIOR_POSTERIOR_STRAP, PALATAL_PLATE, U_SHAPED -> true;
      };
    }
  }

  /**
   * The major connector.
   *
   * @param outline its outer border, closed
   * @param opening border of the opening in it, closed; empty where there is none
   * @param towardsTeeth the piece of the outline that runs along the teeth, from the patient's
   *     right to left; in several pieces where spaces interrupt it
   * @param areaMm2 of the cast that it covers
   * @param leastWidthMm least distance straight across, as a calliper takes it, between its two
   *     long borders: front and back of a strap or plate, both edges of a bar or U, outer border
   *     and opening of a frame
   * @param room measured room that the kind rests on; not known where the chart does not say
   * @param because one sentence
   * @param chosen whether a person chose the kind
   */
  record MajorConnector(
      ConnectorKind kind,
      Line outline,
      Optional<Line> opening,
      List<Line> towardsTeeth,
      double areaMm2,
      double leastWidthMm,
      Reading room,
      String because,
      boolean chosen)
      implements Part {
    public MajorConnector {
      towardsTeeth = List.copyOf(towardsTeeth);
    }
  }

  /**
   * A denture base with its base connector.
   *
   * @param space that it fills
   * @param teeth replaced, each with its place on the crest
   * @param outline border of the base, closed
   * @param areaMm2 of the cast that it covers
   * @param connector border of the base connector in it, closed
   * @param finishLine where base and major connector meet
   * @param tissueStop place of the tissue stop of a free end
   */
  record DentureBase(
      Space space,
      List<Space.Position> teeth,
      Line outline,
      double areaMm2,
      Line connector,
      Line finishLine,
      Optional<Vec3> tissueStop)
      implements Part {
    public DentureBase {
      teeth = List.copyOf(teeth);
    }
  }

  /**
   * A rest that keeps a base from lifting.
   *
   * @param rest which
   * @param distanceMm from the fulcrum line, seen from above
   * @param ratio of that distance to the distance of the farthest base end on the other side
   */
  record IndirectRetainer(Rest rest, double distanceMm, double ratio) implements Part {}
}
