package rodwork.anatomy.chart;

import java.util.stream.IntStream;
import java.util.stream.Stream;
import rodwork.anatomy.Jaw;
import rodwork.rules.Wording;

/**
 * A permanent tooth, or its place, by its FDI number (ISO 3950).
 *
 * @param fdi quadrant (1 upper right, 2 upper left, 3 lower left, 4 lower right, the patient's
 *     sides) and place from the midline (1 to 8)
 */
public record ToothNumber(int fdi) implements Comparable<ToothNumber>, Wording.Numbered {
  /** Places of one jaw. */
  public static final int PLACES = 16;

  private static final String[] PALMER_CORNERS = {"%d┘", "└%d", "┌%d", "%d┐"};

  private static final String[] NAMES = {
    "central incisor",
    "lateral incisor",
    "canine",
    "first premolar",
    "second premolar",
    "first molar",
    "second molar",
    "third molar"
  };

  public ToothNumber {
    if (!exists(fdi)) {
      throw new IllegalArgumentException(
          "no permanent tooth has the FDI number " + fdi + ": they run 11–18, 21–28, 31–38, 41–48");
    }
  }

  /** Whether a permanent tooth has this FDI number. */
  public static boolean exists(int fdi) {
    return fdi / 10 >= 1 && fdi / 10 <= 4 && fdi % 10 >= 1 && fdi % 10 <= 8;
  }

  public static ToothNumber of(int fdi) {
    return new ToothNumber(fdi);
  }

  /** The tooth of a universal number, 1 to 32. */
  public static ToothNumber ofUniversal(int number) {
    if (number < 1 || number > 32) {
      throw new IllegalArgumentException("universal tooth numbers run 1 to 32, not " + number);
    }
    int quadrant = (number - 1) / 8;
    int within = (number - 1) % 8;
    return of(10 * (quadrant + 1) + (quadrant % 2 == 0 ? 8 - within : within + 1));
  }

  /** The place of a jaw by its order from the patient's right to left, 0 to 15. */
  public static ToothNumber inOrder(Jaw jaw, int order) {
    if (jaw == Jaw.UNKNOWN || order < 0 || order >= PLACES) {
      throw new IllegalArgumentException("no place " + order + " in the jaw " + jaw);
    }
    boolean upper = jaw == Jaw.UPPER;
    return of(order < 8 ? (upper ? 18 : 48) - order : (upper ? 21 : 31) + order - 8);
  }

  /** All sixteen places of a jaw, from the patient's right to left. */
  public static Stream<ToothNumber> allOf(Jaw jaw) {
    return IntStream.range(0, PLACES).mapToObj(i -> inOrder(jaw, i));
  }

  /** 1 to 4. */
  public int quadrant() {
    return fdi / 10;
  }

  /** From the midline, 1 to 8. */
  public int place() {
    return fdi % 10;
  }

  public Jaw jaw() {
    return quadrant() <= 2 ? Jaw.UPPER : Jaw.LOWER;
  }

  /** The patient's side. */
  public Side side() {
    return quadrant() == 1 || quadrant() == 4 ? Side.RIGHT : Side.LEFT;
  }

  /** Order in its jaw from the patient's right third molar, 0, to the left one, 15. */
  public int order() {
    return side() == Side.RIGHT ? 8 - place() : 7 + place();
  }

  public boolean isAnterior() {
    return place() <= 3;
  }

  public boolean isIncisor() {
    return place() <= 2;
  }

  public boolean isPremolar() {
    return place() == 4 || place() == 5;
  }

  public boolean isMolar() {
    return place() >= 6;
  }

  public boolean isThirdMolar() {
    return place() == 8;
  }

  /** The same tooth on the other side. */
  public ToothNumber mirrored() {
    return inOrder(jaw(), PLACES - 1 - order());
  }

  /** Its name without jaw and side. */
  public String name() {
    return NAMES[place() - 1];
  }

  /** 1 to 32. */
  public int universal() {
    int within = quadrant() % 2 == 1 ? 8 - place() : place() - 1;
    return 8 * (quadrant() - 1) + within + 1;
  }

  /** As a person writes it. */
  public String in(Notation notation) {
    return switch (notation) {
      case FDI -> Integer.toString(fdi);
      case UNIVERSAL -> Integer.toString(universal());
      case PALMER -> PALMER_CORNERS[quadrant() - 1].formatted(place());
    };
  }

  /** Upper before lower, each from the patient's right to left. */
  @Override
  public int compareTo(ToothNumber other) {
    int byJaw = jaw().compareTo(other.jaw());
    return byJaw != 0 ? byJaw : Integer.compare(order(), other.order());
  }

  @Override
  public String toString() {
    return Integer.toString(fdi);
  }
}
