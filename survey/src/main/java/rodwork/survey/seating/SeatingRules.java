package rodwork.survey.seating;

import static rodwork.rules.Threshold.own;

import java.util.List;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * Every number that a seating key rests on.
 *
 * @param gap between key and cast
 * @param padRadius radius of a pad about its seat
 * @param post diameter of the post
 * @param postLength length of the post above the key
 * @param seatingError how badly a pad may sit, for the error that is told
 */
public record SeatingRules(
    Threshold gap,
    Threshold padRadius,
    Threshold post,
    Threshold postLength,
    Threshold seatingError) {

  /** The values Rodwork ships with. */
  public static final SeatingRules SHIPPED =
      new SeatingRules(
          own("key-gap", 0.1, "mm", "what resin printers are off, so that the key goes home"),
          own("key-pad-radius", 4.5, "mm", "covers the cusps of one tooth"),
          own("key-post", 3, "mm", "set it to what the surveyor's chuck takes"),
          own("key-post-length", 25, "mm", "long enough to be held in a chuck"),
          own("key-seating-error", 0.1, "mm", "as wide as the gap"));

  /** The same rules with another post. */
  public SeatingRules withPost(double diameterMm) {
    return new SeatingRules(
        gap, padRadius, own(post.id(), diameterMm, "mm", "as asked for"), postLength, seatingError);
  }

  /** The values of a rulebook. */
  public static SeatingRules from(Thresholds book) {
    return new SeatingRules(
        book.get("key-gap", "mm"),
        book.get("key-pad-radius", "mm"),
        book.get("key-post", "mm"),
        book.get("key-post-length", "mm"),
        book.get("key-seating-error", "mm"));
  }

  /** All of them, for listing. */
  public List<Threshold> all() {
    return List.of(gap, padRadius, post, postLength, seatingError);
  }
}
