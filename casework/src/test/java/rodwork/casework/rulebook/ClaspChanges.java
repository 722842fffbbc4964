package rodwork.casework.rulebook;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.Fact;
import rodwork.design.clasp.Judgement.Answer;
import rodwork.rules.Reading;

/** Invented abutments, one property changed at a time, and what that must do: one table. */
final class ClaspChanges {
  private ClaspChanges() {}

  /**
   * A change and what it must do.
   *
   * @param from the abutment before
   * @param to the abutment after
   * @param by the clause whose finding is expected at each family that changes
   * @param flips families and their answers after the change; all others keep theirs
   */
  record Change(
      String name, AbutmentFacts from, AbutmentFacts to, String by, Map<String, Answer> flips) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static Map<String, Answer> all(Answer answer, String... families) {
    Map<String, Answer> flips = new TreeMap<>();
    for (String f : families) {
      flips.put(f, answer);
    }
    return flips;
  }

  private static Map<String, Answer> out(String... families) {
    return all(Answer.DOES_NOT_SERVE, families);
  }

  private static Change change(
      AbutmentFacts from, Fact fact, Reading reading, String by, Map<String, Answer> flips) {
    return new Change(
        fact.key() + " " + reading.words(), from, from.with(fact, reading), by, flips);
  }

  static Reading yes() {
    return Reading.yes(true);
  }

  static Reading no() {
    return Reading.yes(false);
  }

  static Reading word(String word) {
    return new Reading.Word(word);
  }

  static Reading mm(double value) {
    return Abutments.mm(value);
  }

  static Reading share(double value, double uncertainty) {
    return new Reading.Measured(value, uncertainty, "1");
  }

  /** What serves on the premolar. */
  private static final String[] SERVING = {
    "cast-circumferential",
    "reverse-circlet",
    "hairpin",
    "back-action",
    "combination",
    "i-bar",
    "t-bar",
    "modified-t-bar"
  };

  /** What is held against by a reciprocal arm on the premolar. */
  private static final String[] BRACED = {
    "cast-circumferential",
    "reverse-circlet",
    "hairpin",
    "combination",
    "i-bar",
    "t-bar",
    "modified-t-bar"
  };

  static final String[] BARS = {"i-bar", "t-bar", "modified-t-bar"};

  static List<Change> changes() {
    AbutmentFacts p = Abutments.premolar();
    AbutmentFacts f = Abutments.freeEnd();
    AbutmentFacts lower = Abutments.tippedMolar("lower");
    AbutmentFacts upper = Abutments.tippedMolar("upper");
    AbutmentFacts embrasure = p.with(Fact.ADJACENT_SPACE, no());
    AcrossThird far = AcrossThird.MESIAL;
    AcrossThird near = AcrossThird.DISTAL;
    List<Change> c = new ArrayList<>();
    // Bars.
    c.add(change(p, Fact.TOTAL_STAND_OFF_6, mm(1.6), "bar-total-stand-off", out(BARS)));
    c.add(change(p, Fact.TOTAL_STAND_OFF_6, mm(1.45), "bar-total-stand-off", Map.of()));
    c.add(
        change(
            p,
            Fact.TOTAL_STAND_OFF_6,
            mm(1.48),
            "bar-total-stand-off",
            all(Answer.NOT_DECIDED, BARS)));
    c.add(
        change(
            p,
            Fact.TOTAL_STAND_OFF_6,
            new Reading.NotKnown("not captured"),
            "bar-total-stand-off",
            all(Answer.NOT_DECIDED, BARS)));
    c.add(
        change(
            p,
            Fact.TOTAL_STAND_OFF_6,
            new Reading.NoRoom("the vestibule ends at 5.1 mm"),
            "bar-total-stand-off",
            out(BARS)));
    c.add(change(p, Fact.TISSUE_UNDERCUT_3, mm(1.2), "bar-tissue-undercut", out(BARS)));
    c.add(change(p, Fact.TISSUE_UNDERCUT_START, mm(2), "bar-tissue-undercut-start", Map.of()));
    c.add(change(p, Fact.VESTIBULE_DEPTH, mm(3.8), "bar-vestibule", out(BARS)));
    c.add(change(p, Fact.FRENUM, yes(), "bar-frenum", out(BARS)));
    c.add(change(p, Fact.LINGUAL_INCLINATION, yes(), "bar-lingual-inclination", out(BARS)));
    c.add(change(p, Fact.BAR_LENGTH, mm(10), "bar-length", Map.of()));
    c.add(
        change(
            p, Fact.SURVEY_LINE, word("low between"), "y-bar-line", all(Answer.SERVES, "y-bar")));
    c.add(change(p, Fact.SURVEY_LINE, word("diagonal near"), "", Map.of()));
    c.add(
        change(
            p, Fact.SURVEY_LINE, word("high"), "t-bar-high-line", out("t-bar", "modified-t-bar")));
    c.add(
        change(
            f,
            Fact.TOTAL_STAND_OFF_6,
            mm(1.6),
            "bar-total-stand-off",
            out("rpi", "i-bar", "t-bar", "modified-t-bar")));
    c.add(change(p, Fact.BAR_CROSSING, Reading.degrees(60, 3), "bar-crossing", out(BARS)));
    c.add(
        change(
            p,
            Fact.BAR_CROSSING,
            Reading.degrees(76, 3),
            "bar-crossing",
            all(Answer.NOT_DECIDED, BARS)));
    // Arms: what is surely overstressed is made of another material or does not serve; what may be
    // is a warning.
    c.add(
        change(
            p, Fact.ARM_STRESS, share(1.5, 0.3), "arm-stress", all(Answer.SERVES_AFTER, SERVING)));
    c.add(change(p, Fact.ARM_STRESS, share(1.0, 0.3), "", Map.of()));
    c.add(
        new Change(
            "an arm overstressed in every material",
            p,
            p.with(Fact.ARM_STRESS, share(1.5, 0.3))
                .with(Fact.ARM_STRESS_OTHERWISE, share(1.4, 0.2)),
            "arm-stress",
            out(SERVING)));
    c.add(
        new Change(
            "an arm that another material may just hold",
            p,
            p.with(Fact.ARM_STRESS, share(1.5, 0.3))
                .with(Fact.ARM_STRESS_OTHERWISE, share(1.1, 0.2)),
            "",
            all(Answer.NOT_DECIDED, SERVING)));
    c.add(change(p, Fact.ARM_PULL, new Reading.Measured(1, 0.3, "N"), "arm-pull-weak", Map.of()));
    c.add(change(p, Fact.ARM_PULL, new Reading.Measured(15, 3, "N"), "arm-pull-strong", Map.of()));
    c.add(change(p, Fact.ARM_PULL, new Reading.NotKnown("the tip locks itself"), "", Map.of()));
    c.add(change(p, Fact.ENCIRCLEMENT, Reading.degrees(170, 3), "arm-encirclement", Map.of()));
    // Free end.
    Map<String, Answer> free = out("cast-circumferential");
    free.put("rpi", Answer.SERVES);
    free.put("rpa", Answer.SERVES);
    c.add(change(p, Fact.FREE_END, yes(), "", free));
    c.add(change(f, Fact.FAR_REST, no(), "far-rest", out("rpi", "rpa", "reverse-circlet")));
    c.add(
        change(
            f, Fact.TIPPING, word("away from the space"), "rpa-not-mesially-tipped", out("rpa")));
    c.add(change(f, Fact.PLANE_HEIGHT, mm(1), "rpi-plane", all(Answer.SERVES_AFTER, "rpi")));
    c.add(
        new Change(
            "a plane that would take too much enamel",
            f,
            f.with(Fact.PLANE_HEIGHT, mm(1)).with(Fact.PLANE_ENAMEL, mm(0.7)),
            "rpi-plane",
            out("rpi")));
    // Circlets.
    c.add(change(p, Fact.CIRCLET_LENGTH, mm(12), "", Map.of()));
    c.add(change(p, Fact.CIRCLET_LENGTH, mm(7), "wire-length", out("combination")));
    c.add(change(p, Fact.CIRCLET_LENGTH, mm(9), "wire-length-comfortable", Map.of()));
    c.add(change(p, Fact.HEAVY_HANDLING, yes(), "wire-handling", Map.of()));
    c.add(change(p, Fact.CROWN_HEIGHT, mm(4.5), "hairpin-crown-height", out("hairpin")));
    c.add(change(p, Fact.SHOWS, yes(), "", Map.of()));
    c.add(
        change(
            p,
            Fact.ISOLATED,
            yes(),
            "half-and-half-isolated",
            all(Answer.SERVES, "half-and-half")));
    c.add(change(p, Fact.NEAR_REST, no(), "back-action-near-rest", Map.of()));
    c.add(
        change(
            p,
            Fact.RECIPROCAL_UNDERCUT,
            mm(0.3),
            "reciprocal-undercut",
            all(
                Answer.SERVES_AFTER,
                "cast-circumferential",
                "reverse-circlet",
                "hairpin",
                "combination",
                "i-bar",
                "t-bar",
                "modified-t-bar")));
    c.add(
        change(
            p,
            Fact.RECIPROCAL_UNDERCUT,
            mm(0.6),
            "reciprocal-undercut",
            out(
                "cast-circumferential",
                "reverse-circlet",
                "hairpin",
                "combination",
                "i-bar",
                "t-bar",
                "modified-t-bar")));
    // A front tooth has less enamel to lose.
    c.add(
        change(
            p.with(Fact.TOOTH_KIND, word("canine")),
            Fact.RECIPROCAL_UNDERCUT,
            mm(0.4),
            "reciprocal-undercut-front",
            out(
                "cast-circumferential",
                "reverse-circlet",
                "combination",
                "i-bar",
                "t-bar",
                "modified-t-bar")));
    c.add(
        change(
            f.with(Fact.TOOTH_KIND, word("canine")),
            Fact.PLANE_HEIGHT,
            mm(1),
            "rpi-plane-front",
            all(Answer.SERVES_AFTER, "rpi")));
    // A plane is cut for the arm that braces; where that takes too much the clasp serves, warned
    // of.
    c.add(
        change(
            p,
            Fact.RECIPROCAL_HEIGHT,
            mm(1),
            "reciprocal-contact",
            all(Answer.SERVES_AFTER, BRACED)));
    c.add(
        new Change(
            "a plane for the reciprocal arm that would take too much enamel",
            p,
            p.with(Fact.RECIPROCAL_HEIGHT, mm(1)).with(Fact.RECIPROCAL_ENAMEL, mm(0.7)),
            "reciprocal-contact",
            Map.of()));
    c.add(
        change(
            p.with(Fact.TOOTH_KIND, word("canine")),
            Fact.RECIPROCAL_HEIGHT,
            mm(1),
            "reciprocal-contact-front",
            all(
                Answer.SERVES_AFTER,
                "cast-circumferential",
                "reverse-circlet",
                "combination",
                "i-bar",
                "t-bar",
                "modified-t-bar")));
    c.add(change(p, Fact.ARM_UNDERCUT, mm(0.25), "arm-rigid-undercut", Map.of()));
    c.add(change(f, Fact.ARM_UNDERCUT, mm(0.25), "arm-rigid-undercut", Map.of()));
    c.add(change(embrasure, Fact.ARM_UNDERCUT, mm(0.25), "arm-rigid-undercut", Map.of()));
    c.add(change(p, Fact.CROWN_SHARE, share(0.4, 0.03), "crown-short", Map.of()));
    c.add(change(p, Fact.TOTAL_STAND_OFF_3, mm(1.8), "bar-stand-off-near", Map.of()));
    c.add(change(p, Fact.TOOTH_KIND, word("canine"), "", out("hairpin", "back-action")));
    // Where there is no space.
    Map<String, Answer> noSpace =
        out(
            "cast-circumferential",
            "hairpin",
            "back-action",
            "combination",
            "i-bar",
            "t-bar",
            "modified-t-bar",
            "reverse-circlet");
    noSpace.put("embrasure", Answer.SERVES);
    c.add(change(p, Fact.ADJACENT_SPACE, no(), "", noSpace));
    c.add(
        change(
            embrasure,
            Fact.OCCLUSAL_ROOM,
            mm(1),
            "embrasure-room",
            all(Answer.SERVES_AFTER, "embrasure")));
    c.add(change(embrasure, Fact.OCCLUSAL_ROOM, mm(0.3), "embrasure-room", out("embrasure")));
    // Molars.
    Map<String, Answer> asUpper = out("ring-lower", "lingual-retention");
    asUpper.put("ring-upper", Answer.SERVES);
    c.add(new Change("an upper molar", lower, upper, "", asUpper));
    c.add(change(lower, Fact.TIPPING, word("none"), "ring-tipped", out("ring-lower")));
    c.add(change(lower, Fact.POOR_HYGIENE, yes(), "ring-hygiene", out("ring-lower")));
    c.add(
        change(
            lower,
            Fact.VESTIBULE_DEPTH,
            mm(3),
            "",
            out("ring-lower", "i-bar", "t-bar", "modified-t-bar")));
    c.add(
        change(
            lower,
            Fact.TISSUE_UNDERCUT_3,
            mm(1.4),
            "",
            out("ring-lower", "i-bar", "t-bar", "modified-t-bar")));
    // The strut of an upper ring is palatal: facial tissue and vestibule are nothing to it.
    for (Fact facial : List.of(Fact.VESTIBULE_DEPTH, Fact.TISSUE_UNDERCUT_3)) {
      c.add(
          change(
              upper,
              facial,
              mm(facial == Fact.VESTIBULE_DEPTH ? 3 : 1.4),
              "",
              out("i-bar", "t-bar", "modified-t-bar")));
    }
    c.add(
        change(
            lower,
            Fact.FACIAL_ARM_UNDERCUT,
            mm(0.3),
            "facial-arm-undercut",
            all(Answer.SERVES_AFTER, "lingual-retention")));
    c.add(
        change(
            lower,
            Fact.FACIAL_ARM_UNDERCUT,
            mm(0.6),
            "facial-arm-undercut",
            out("lingual-retention")));
    c.add(change(lower, Fact.FAR_REST, no(), "", out("reverse-circlet")));
    Map<String, Answer> lowerFree = out("cast-circumferential", "lingual-retention");
    lowerFree.put("rpi", Answer.SERVES);
    lowerFree.put("rpa", Answer.SERVES);
    c.add(change(lower, Fact.FREE_END, yes(), "", lowerFree));
    // A pier between a bounded space and a free end, seen from the bounded side.
    c.add(change(p, Fact.FREE_END_BEYOND, yes(), "", out("reverse-circlet", "back-action")));
    c.add(
        change(
            lower, Fact.FREE_END_BEYOND, yes(), "", out("reverse-circlet", "lingual-retention")));
    AbutmentFacts pier = p.with(Fact.ISOLATED, yes());
    Map<String, Answer> pierFree = out("cast-circumferential", "half-and-half");
    pierFree.put("rpi", Answer.SERVES);
    pierFree.put("rpa", Answer.SERVES);
    c.add(change(pier, Fact.FREE_END, yes(), "", pierFree));
    // The arm of an RPA lies on the line: half its width must have room above it.
    c.add(
        new Change(
            "a line high where the arms begin next to a free end",
            f,
            Abutments.facial(f, near, Abutments.third(0.6, 1.2, 2.5, 0.25, 0.5)),
            "",
            Map.of()));
    c.add(
        new Change(
            "so high that half an arm has no room",
            f,
            Abutments.facial(f, near, Abutments.third(0.6, 0.5, 2.5, 0.25, 0.5)),
            "arm-on-line-at-origin",
            all(Answer.SERVES_AFTER, "rpa")));
    // Readings of the thirds.
    c.add(
        new Change(
            "no undercut away from the space",
            p,
            Abutments.facial(p, far, Abutments.third(0, 2.2, 2.5)),
            "retentive-undercut",
            out("cast-circumferential", "combination")));
    c.add(
        new Change(
            "0.15 mm away from the space",
            p,
            Abutments.facial(p, far, Abutments.third(0.15, 2.2, 2.5)),
            "retentive-undercut",
            new TreeMap<>(
                Map.of(
                    "cast-circumferential",
                    Answer.SERVES_AFTER,
                    "combination",
                    Answer.DOES_NOT_SERVE))));
    c.add(
        new Change(
            "no undercut next to the space",
            p,
            Abutments.facial(p, near, Abutments.third(0, 2.2, 2.5)),
            "retentive-undercut",
            out("reverse-circlet", "hairpin", "back-action", "t-bar", "modified-t-bar")));
    c.add(
        new Change(
            "no undercut in the middle: the bar's tip goes a little mesial",
            p,
            Abutments.facial(p, AcrossThird.MIDDLE, Abutments.third(0, 2.2, 2.5)),
            "",
            Map.of()));
    c.add(
        new Change(
            "a line high where the arm begins",
            p,
            Abutments.facial(p, near, Abutments.third(0.6, 1.2, 2.5, 0.25, 0.5)),
            "cast-arm-above-line-at-origin",
            all(Answer.SERVES_AFTER, "cast-circumferential")));
    c.add(
        new Change(
            "a line whose lowering would take too much enamel",
            p,
            Abutments.facial(p, near, Abutments.third(0.6, 1.2, 2.5, 0.25, 0.5))
                .with(Fact.LOWERING_ENAMEL_ORIGIN, mm(0.6)),
            "cast-arm-above-line-at-origin",
            out("cast-circumferential")));
    c.add(
        new Change(
            "a line that ends at the margin before it is lowered",
            p,
            Abutments.facial(p, near, Abutments.third(0.6, 1.2, 2.5, 0.25, 0.5))
                .with(Fact.LOWERING_ENAMEL_ORIGIN, new Reading.NoRoom("the crown ends before")),
            "cast-arm-above-line-at-origin",
            out("cast-circumferential")));
    AbutmentFacts canine = p.with(Fact.TOOTH_KIND, word("canine"));
    c.add(
        new Change(
            "a front tooth has less enamel to lose where the arm begins",
            canine,
            Abutments.facial(canine, near, Abutments.third(0.6, 1.2, 2.5, 0.25, 0.5))
                .with(Fact.LOWERING_ENAMEL_ORIGIN, mm(0.4)),
            "cast-arm-above-line-at-origin-front",
            out("cast-circumferential")));
    c.add(
        new Change(
            "a front tooth has less enamel to lose in the middle",
            canine,
            Abutments.facial(canine, AcrossThird.MIDDLE, Abutments.third(0.6, 1.0, 2.5, 0.25, 0.5))
                .with(Fact.LOWERING_ENAMEL_MIDDLE, mm(0.4)),
            "cast-arm-above-line-in-middle-front",
            out("cast-circumferential", "reverse-circlet")));
    c.add(
        new Change(
            "a line high in the middle",
            p,
            Abutments.facial(p, AcrossThird.MIDDLE, Abutments.third(0.6, 1.0, 2.5, 0.25, 0.5)),
            "cast-arm-above-line-in-middle",
            all(Answer.SERVES_AFTER, "cast-circumferential", "reverse-circlet", "back-action")));
    c.add(
        new Change(
            "a line low in the middle",
            p,
            Abutments.facial(p, AcrossThird.MIDDLE, Abutments.third(0.6, 2.2, 0.3, 0.25, 0.5)),
            "wire-below-line-in-middle",
            out("combination")));
    c.add(
        new Change(
            "a line low at the tip",
            p,
            Abutments.facial(p, far, Abutments.third(0.6, 2.2, 0.3, 0.25, 0.5)),
            "wire-below-line-at-tip",
            out("combination")));
    c.add(
        new Change(
            "a mark too near to the margin",
            p,
            Abutments.facial(p, far, thirdWith(0.25, 0.25, 0.5, 1.5)),
            "tip-clear-of-margin",
            out("cast-circumferential")));
    c.add(
        new Change(
            "a mark high on the crown",
            p,
            Abutments.facial(p, far, thirdWith(0.25, 0.25, 5, 1.5)),
            "tip-low-on-crown",
            Map.of()));
    c.add(
        new Change(
            "a mark of a wire high on the crown",
            p,
            Abutments.facial(p, far, thirdWith(0.5, 0.5, 5, 1.5)),
            "tip-low-on-crown",
            Map.of()));
    c.add(
        new Change(
            "a mark beside the space high on the crown",
            p,
            Abutments.facial(p, near, thirdWith(0.25, 0.25, 5, 1.5)),
            "tip-low-on-crown",
            Map.of()));
    c.add(
        new Change(
            "a lingual mark high on the crown",
            lower,
            lower.with(
                new AbutmentFacts.Site(Surface.LINGUAL, AcrossThird.MESIAL),
                thirdWith(0.25, 0.25, 5, 1.5)),
            "tip-low-on-crown",
            Map.of()));
    return c;
  }

  /** Both marks, the one of a size with other readings. */
  private static AbutmentFacts.Third thirdWith(
      double gauge, double atReference, double fromMargin, double belowLine) {
    AbutmentFacts.Third usual = Abutments.third(0.6, 2.2, 2.5, 0.25, 0.5);
    return new AbutmentFacts.Third(
        usual.deepest(),
        usual.clear(),
        usual.roomAbove(),
        usual.roomBelow(),
        usual.marks().stream()
            .map(
                m ->
                    m.gaugeMm() == gauge
                        ? Abutments.mark(gauge, atReference, fromMargin, belowLine)
                        : m)
            .toList());
  }
}
