package rodwork.casework.store;

import java.util.Locale;
import java.util.Optional;

/** What a part of a case is. */
public enum PartKind {
  /** The scan file as it came, byte for byte. */
  SCAN,
  /** The scan of the opposing jaw, as it came; its jaw is that of the cast that it lies over. */
  OPPOSING,
  /** The scan of both jaws in occlusion that it was laid by, as it came. */
  BITE,
  CHART,
  /** What a person said of teeth: points, pins, borders that were pulled. */
  TEETH,
  /** Places and tilts that were pinned. */
  PINS,
  /** The chosen path. */
  PATH,
  /** The text of the rulebook that the case goes by. */
  RULEBOOK,
  /** What was chosen against the proposal. */
  CHOICES,
  PLAN,
  DOCUMENT;

  /** The word that files hold. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  static Optional<PartKind> of(String word) {
    for (PartKind kind : values()) {
      if (kind.word().equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
