package rodwork.rules;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Words for a person with tooth numbers among them, which are put in by the notation that the
 * person chose: what is 14 in one of them is another tooth in the next. Immutable.
 *
 * @param pieces in order
 */
public record Wording(List<Piece> pieces) {
  /** A stretch of words, or a tooth. */
  public sealed interface Piece {
    /** Words without tooth numbers. */
    record Plain(String words) implements Piece {}

    /**
     * A tooth.
     *
     * @param fdi its number, ISO 3950
     */
    record Tooth(int fdi) implements Piece {}

    /**
     * A text that was kept with FDI numbers in it, which of its numbers they are cannot be told:
     * who counts teeth otherwise must not read one of them.
     */
    record Fdi(String words) implements Piece {}
  }

  private static final String REPLACED = "\uFFFD";

  /** Stands in no message: from the area of Unicode for private use. */
  private static final String MARK = "\uE000";

  /** What has a tooth number. */
  public interface Numbered {
    /** ISO 3950. */
    int fdi();
  }

  /** What is told in such words. */
  public interface Worded {
    Wording wording();
  }

  /** How tooth numbers are written. */
  @FunctionalInterface
  public interface Numbering {
    /** The number of a tooth as a person writes it. */
    String number(int fdi);
  }

  public Wording {
    pieces = List.copyOf(pieces);
  }

  /**
   * Words from parts.
   *
   * @param parts teeth stay apart; those of a collection are listed with commas; all else is told
   *     as its {@code toString} does
   */
  public static Wording of(Object... parts) {
    List<Piece> pieces = new ArrayList<>();
    for (Object part : parts) {
      add(pieces, part);
    }
    return new Wording(pieces);
  }

  /**
   * A template of {@link String#format} filled with values; teeth among them, also in lists, stay
   * apart, and take {@code %s}.
   */
  public static Wording format(String template, Object... values) {
    Object[] marked = values.clone();
    for (int i = 0; i < values.length; i++) {
      if (values[i] instanceof Numbered
          || values[i] instanceof Piece
          || values[i] instanceof Worded
          || values[i] instanceof Wording
          || values[i] instanceof Collection<?>) {
        marked[i] = MARK + i + MARK;
      } else if (String.valueOf(values[i]).contains(MARK)) {
        // A name from outside may hold anything.
        marked[i] = String.valueOf(values[i]).replace(MARK, REPLACED);
      }
    }
    // The filled template alternates between words and the numbers of marked values.
    String[] parts = String.format(Locale.ROOT, template, marked).split(MARK, -1);
    Object[] all = new Object[parts.length];
    for (int i = 0; i < parts.length; i++) {
      all[i] = i % 2 == 0 ? parts[i] : values[Integer.parseInt(parts[i])];
    }
    return of(all);
  }

  private static void add(List<Piece> pieces, Object part) {
    switch (part) {
      case Piece piece -> join(pieces, piece);
      case Numbered tooth -> pieces.add(new Piece.Tooth(tooth.fdi()));
      case Worded it -> it.wording().pieces.forEach(piece -> join(pieces, piece));
      case Wording words -> words.pieces.forEach(piece -> join(pieces, piece));
      case Collection<?> all -> {
        boolean first = true;
        for (Object one : all) {
          if (!first) {
            join(pieces, new Piece.Plain(", "));
          }
          first = false;
          add(pieces, one);
        }
      }
      default -> join(pieces, new Piece.Plain(String.valueOf(part)));
    }
  }

  private static void join(List<Piece> pieces, Piece piece) {
    if (piece instanceof Piece.Plain(String none) && none.isEmpty()) {
      return;
    }
    if (piece instanceof Piece.Plain(String more)
        && !pieces.isEmpty()
        && pieces.getLast() instanceof Piece.Plain(String words)) {
      pieces.set(pieces.size() - 1, new Piece.Plain(words + more));
    } else {
      pieces.add(piece);
    }
  }

  /** As a person reads it. */
  public String in(Numbering numbering) {
    return pieces.stream()
        .map(
            piece ->
                switch (piece) {
                  case Piece.Plain(String words) -> words;
                  case Piece.Tooth(int fdi) -> numbering.number(fdi);
                  case Piece.Fdi(String words) -> isFdi(numbering) ? words : "as on the page";
                })
        .collect(Collectors.joining());
  }

  private static boolean isFdi(Numbering numbering) {
    return numbering.number(21).equals("21");
  }

  /** With FDI numbers, as files have them. */
  public String fdi() {
    return in(Integer::toString);
  }

  @Override
  public String toString() {
    return fdi();
  }
}
