package rodwork.anatomy.chart;

import java.util.OptionalDouble;

/**
 * What the chart says of one tooth. Immutable; starts from {@link #PRESENT} or {@link #ABSENT}.
 *
 * @param presence whether it stands
 * @param replace for a tooth that is or will be missing: whether the denture replaces it
 * @param spaceClosed for a missing tooth: whether its neighbours have closed up, under 2 mm between
 *     them; the person's answer goes before what is measured on a scan
 * @param abutment whether it shall carry the denture
 * @param mobility how loose it is
 * @param crownToRoot clinical crown over root in bone: 1 : 1.5 is 0.67; empty: not known
 * @param restoration crown or filling
 * @param aestheticZone whether it shows when the patient speaks or smiles
 * @param opposing what meets it
 */
public record ToothEntry(
    Presence presence,
    Answer replace,
    Answer spaceClosed,
    Answer abutment,
    Mobility mobility,
    OptionalDouble crownToRoot,
    Restoration restoration,
    Answer aestheticZone,
    Opposing opposing) {
  /** Stands; nothing else known. */
  public static final ToothEntry PRESENT = blank(Presence.PRESENT);

  /** Missing; nothing else known. */
  public static final ToothEntry ABSENT = blank(Presence.MISSING);

  /** A ratio beyond this is a slip of the pen. */
  public static final double GREATEST_CROWN_TO_ROOT = 10;

  /** Whether a tooth stands. */
  public enum Presence {
    PRESENT,
    MISSING,
    /** Stands on the scan, and will be gone: planned extractions come before any class. */
    TO_BE_EXTRACTED,
    /** Carried by an implant: recognised, and not judged. */
    IMPLANT
  }

  /**
   * Miller's grades, as they are printed beside the choice, since several versions are in use
   * (Miller, one of several versions): I moves less than 1 mm horizontally, II 1 mm or more, III
   * also vertically.
   */
  public enum Mobility {
    NONE(0),
    I(1),
    II(2),
    III(3),
    NOT_KNOWN(-1);

    private final int grade;

    Mobility(int grade) {
      this.grade = grade;
    }

    /** The grade as a number; −1: not known. */
    public int grade() {
      return grade;
    }
  }

  /** What covers the enamel. */
  public enum Restoration {
    NONE,
    FILLING,
    CROWN,
    /** A crown will be made for the denture, its contours at the path. */
    SURVEYED_CROWN,
    NOT_KNOWN
  }

  /**
   * What meets a tooth or its place from the other jaw.
   *
   * @param kind what it is
   * @param contact whether the two touch
   * @param clearanceMm room between them [mm]; empty: not known
   */
  public record Opposing(Kind kind, Answer contact, OptionalDouble clearanceMm) {
    public static final Opposing NOT_KNOWN =
        new Opposing(Kind.NOT_KNOWN, Answer.NOT_KNOWN, OptionalDouble.empty());

    /** What bites there. */
    public enum Kind {
      TOOTH,
      FIXED_DENTURE,
      REMOVABLE_DENTURE,
      NONE,
      NOT_KNOWN
    }

    public Opposing {
      if (clearanceMm.isPresent() && !(Math.abs(clearanceMm.getAsDouble()) <= 50)) {
        throw new IllegalArgumentException(
            "clearance " + clearanceMm.getAsDouble() + " mm; the limit is 50 mm");
      }
    }
  }

  public ToothEntry {
    if (crownToRoot.isPresent()
        && !(crownToRoot.getAsDouble() > 0
            && crownToRoot.getAsDouble() <= GREATEST_CROWN_TO_ROOT)) {
      throw new IllegalArgumentException(
          "crown over root "
              + crownToRoot.getAsDouble()
              + "; it lies above 0 and at most at "
              + GREATEST_CROWN_TO_ROOT);
    }
  }

  private static ToothEntry blank(Presence presence) {
    return new ToothEntry(
        presence,
        Answer.NOT_KNOWN,
        Answer.NOT_KNOWN,
        Answer.NOT_KNOWN,
        Mobility.NOT_KNOWN,
        OptionalDouble.empty(),
        Restoration.NOT_KNOWN,
        Answer.NOT_KNOWN,
        Opposing.NOT_KNOWN);
  }

  /** Whether a natural tooth will stand when the denture is made. */
  public boolean stands() {
    return presence == Presence.PRESENT;
  }

  public ToothEntry withPresence(Presence other) {
    return new ToothEntry(
        other,
        replace,
        spaceClosed,
        abutment,
        mobility,
        crownToRoot,
        restoration,
        aestheticZone,
        opposing);
  }

  public ToothEntry withReplace(Answer other) {
    return new ToothEntry(
        presence,
        other,
        spaceClosed,
        abutment,
        mobility,
        crownToRoot,
        restoration,
        aestheticZone,
        opposing);
  }

  public ToothEntry withAbutment(Answer other) {
    return new ToothEntry(
        presence,
        replace,
        spaceClosed,
        other,
        mobility,
        crownToRoot,
        restoration,
        aestheticZone,
        opposing);
  }
}
