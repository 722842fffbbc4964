package rodwork.design.plan;

import java.util.List;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * Sizes and limits of the parts of a denture.
 *
 * @param rests of rests
 * @param upper of upper connectors
 * @param lower of lower connectors
 * @param bases of bases and what joins them
 * @param counts how many parts a denture wants
 * @param tissue of tori and frena, that parts keep off
 */
public record PlanRules(
    Rests rests, Upper upper, Lower lower, Bases bases, Counts counts, Tissue tissue) {

  /** The values of a rulebook. */
  public static PlanRules from(Thresholds book) {
    return new PlanRules(
        Rests.from(book),
        Upper.from(book),
        Lower.from(book),
        Bases.from(book),
        Counts.from(book),
        Tissue.from(book));
  }

  /** All of them, for listing. */
  public List<Threshold> all() {
    return List.of(
        rests.widthLeast,
        rests.widthShare,
        rests.lengthShare,
        rests.extendedShare,
        rests.depth,
        rests.cingulumLength,
        rests.cingulumWidth,
        rests.cingulumDepth,
        rests.incisalWidth,
        rests.incisalDepth,
        rests.clearance,
        rests.armClearance,
        rests.incisalFromAngle,
        rests.incisalAcross,
        upper.border,
        upper.strapWidth,
        upper.anteriorStrap,
        upper.posteriorStrap,
        upper.opening,
        upper.plateFromLost,
        upper.plateCover,
        upper.openReasons,
        upper.manyAnterior,
        upper.thinStrap,
        lower.border,
        lower.room,
        lower.sublingualRoom,
        lower.frena,
        lower.toriUnder,
        lower.barHeight,
        lower.plateHeight,
        lower.plateEnds,
        bases.spacing,
        bases.meshShare,
        bases.border,
        bases.finishLine,
        bases.keptShare,
        bases.space,
        bases.leverRatio,
        bases.indirectClassOne,
        bases.indirectOther,
        counts.rests,
        counts.planes,
        counts.claspsClassOne,
        counts.claspsClassTwo,
        counts.claspsClassThree,
        counts.mixedRetention,
        counts.mobility,
        tissue.torusClear,
        tissue.notchDepth,
        tissue.notchWidth);
  }

  /**
   * Rests; sources stand in the rulebook.
   *
   * @param widthLeast of an occlusal rest at the marginal ridge
   * @param widthShare of an occlusal rest, of the faciolingual width
   * @param lengthShare of an occlusal rest, of the mesiodistal width
   * @param extendedShare length of an extended rest, of the mesiodistal width
   * @param depth of an occlusal seat where it is deepest
   * @param cingulumLength along the arch
   * @param cingulumWidth across the arch
   * @param clearance room to the opposing tooth wanted
   * @param armClearance the same over the metal of a clasp arm
   * @param incisalFromAngle of the middle of an incisal rest from the proximal angle
   * @param incisalAcross of an incisal rest, of the faciolingual width
   */
  public record Rests(
      Threshold widthLeast,
      Threshold widthShare,
      Threshold lengthShare,
      Threshold extendedShare,
      Threshold depth,
      Threshold cingulumLength,
      Threshold cingulumWidth,
      Threshold cingulumDepth,
      Threshold incisalWidth,
      Threshold incisalDepth,
      Threshold clearance,
      Threshold armClearance,
      Threshold incisalFromAngle,
      Threshold incisalAcross) {
    static Rests from(Thresholds book) {
      return new Rests(
          book.get("rest-width-least", "mm"),
          book.get("rest-width-share", "1"),
          book.get("rest-length-share", "1"),
          book.get("rest-extended-share", "1"),
          book.get("rest-depth", "mm"),
          book.get("cingulum-rest-length", "mm"),
          book.get("cingulum-rest-width", "mm"),
          book.get("cingulum-rest-depth", "mm"),
          book.get("incisal-rest-width", "mm"),
          book.get("incisal-rest-depth", "mm"),
          book.get("rest-clearance-least", "mm"),
          book.get("arm-clearance-least", "mm"),
          book.get("incisal-rest-from-angle", "mm"),
          book.get("incisal-rest-across-share", "1"));
    }
  }

  /**
   * Upper connectors.
   *
   * @param border from the gingival margins
   * @param plateFromLost as many teeth lost want a plate
   * @param plateCover share of the palate that a plate covers, seen from above
   * @param openReasons reasons that a U wants at least
   * @param manyAnterior as many front teeth lost are one of them
   * @param thinStrap width from which a strap may be as thin as a plate
   */
  public record Upper(
      Threshold border,
      Threshold strapWidth,
      Threshold anteriorStrap,
      Threshold posteriorStrap,
      Threshold opening,
      Threshold plateFromLost,
      Threshold plateCover,
      Threshold openReasons,
      Threshold manyAnterior,
      Threshold thinStrap) {
    static Upper from(Thresholds book) {
      return new Upper(
          book.get("upper-border-from-margin", "mm"),
          book.get("palatal-strap-width-least", "mm"),
          book.get("anterior-strap-width-least", "mm"),
          book.get("posterior-strap-width-least", "mm"),
          book.get("strap-opening-least", "mm"),
          book.get("palatal-plate-from-lost", "1"),
          book.get("palatal-plate-cover", "1"),
          book.get("u-connector-reasons-least", "count"),
          book.get("u-connector-many-anterior", "count"),
          book.get("thin-strap-width-least", "mm"));
    }
  }

  /**
   * Lower connectors.
   *
   * @param border of the upper edge from the gingival margins
   * @param room from margin to raised floor of the mouth that a lingual bar wants
   * @param sublingualRoom that a sublingual bar wants
   * @param frena high lingual frena that may lie where a bar runs
   * @param toriUnder mandibular tori that may lie where a sublingual bar runs
   * @param plateHeight how high a plate may reach on the teeth, of their lingual height
   * @param plateEnds ends of a plate that lie on teeth with rests
   */
  public record Lower(
      Threshold border,
      Threshold room,
      Threshold sublingualRoom,
      Threshold frena,
      Threshold toriUnder,
      Threshold barHeight,
      Threshold plateHeight,
      Threshold plateEnds) {
    static Lower from(Thresholds book) {
      return new Lower(
          book.get("lower-border-from-margin", "mm"),
          book.get("lingual-bar-room-least", "mm"),
          book.get("sublingual-bar-room-least", "mm"),
          book.get("lingual-frena-under-bar-most", "count"),
          book.get("tori-under-sublingual-bar-most", "count"),
          book.get("lingual-bar-height", "mm"),
          book.get("lingual-plate-height-most", "1"),
          book.get("lingual-plate-ends-rested-least", "count"));
    }
  }

  /**
   * What parts keep off.
   *
   * @param torusClear between a major connector and a torus
   * @param notchDepth of the notch of a border round a frenum, where it is deepest
   * @param notchWidth of that notch along the border
   */
  public record Tissue(Threshold torusClear, Threshold notchDepth, Threshold notchWidth) {
    static Tissue from(Thresholds book) {
      return new Tissue(
          book.get("torus-clear-least", "mm"),
          book.get("frenum-notch-depth", "mm"),
          book.get("frenum-notch-width", "mm"));
    }
  }

  /**
   * Bases and what joins them.
   *
   * @param spacing between upright parts
   * @param meshShare length of a lower base connector, of the free end
   * @param border how far a base reaches from the crest, where the scan does not end it
   * @param finishLine how far from the crest base and connector meet
   * @param keptShare of its width a connector keeps at least everywhere
   * @param space from the ridge to the opposing teeth; under it a base is all of metal
   * @param leverRatio of an indirect retainer's distance to the base end's
   * @param indirectClassOne indirect retainers wanted in Class I
   * @param indirectOther indirect retainers wanted in Classes II and IV
   */
  public record Bases(
      Threshold spacing,
      Threshold meshShare,
      Threshold border,
      Threshold finishLine,
      Threshold keptShare,
      Threshold space,
      Threshold leverRatio,
      Threshold indirectClassOne,
      Threshold indirectOther) {
    static Bases from(Thresholds book) {
      return new Bases(
          book.get("upright-parts-apart-least", "mm"),
          book.get("base-connector-share-lower", "1"),
          book.get("base-border-from-crest", "mm"),
          book.get("finish-line-from-crest", "mm"),
          book.get("connector-kept-share", "1"),
          book.get("base-space-least", "mm"),
          book.get("indirect-lever-least", "1"),
          book.get("indirect-retainers-class-i", "count"),
          book.get("indirect-retainers-class-ii-iv", "count"));
    }
  }

  /**
   * What a denture wants in all.
   *
   * @param rests at least
   * @param planes guiding planes, at least
   * @param claspsClassOne clasps wanted in Class I
   * @param claspsClassTwo clasps wanted in Class II
   * @param claspsClassThree clasps wanted in Class III
   * @param mixedRetention clasps at most that hold on another surface than the others
   * @param mobility grade above which a tooth carries nothing
   */
  public record Counts(
      Threshold rests,
      Threshold planes,
      Threshold claspsClassOne,
      Threshold claspsClassTwo,
      Threshold claspsClassThree,
      Threshold mixedRetention,
      Threshold mobility) {
    static Counts from(Thresholds book) {
      return new Counts(
          book.get("rests-least", "count"),
          book.get("guiding-planes-least", "count"),
          book.get("clasps-class-i", "count"),
          book.get("clasps-class-ii", "count"),
          book.get("clasps-class-iii", "count"),
          book.get("retention-mixed-most", "count"),
          book.get("mobility-grade-most", "1"));
    }
  }
}
