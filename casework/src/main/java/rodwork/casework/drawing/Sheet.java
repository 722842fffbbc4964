package rodwork.casework.drawing;

/**
 * How a drawing is laid out on paper. Lengths are mm on paper.
 *
 * @param widthMm of the whole
 * @param marginMm left free around it
 * @param fromAbove scale of the view from above, where it fits
 * @param fromSide scale of the views from the sides, where they fit
 * @param sidesBeside whether these stand beside the view from above, or below it
 * @param aboveShare of the width, for the view from above where the others stand beside it
 * @param titleMm height of the letters of the title
 * @param smallMm height of the letters of legend and names
 * @param numberMm height of the numbers of teeth
 * @param font family of the letters
 * @param letterShare width of a letter at most, on an average of words, in heights of the letters
 */
public record Sheet(
    double widthMm,
    double marginMm,
    double fromAbove,
    double fromSide,
    boolean sidesBeside,
    double aboveShare,
    double titleMm,
    double smallMm,
    double numberMm,
    String font,
    double letterShare) {
  /** A sheet of its own. */
  public static final Sheet WHOLE =
      new Sheet(190, 8, 1.75, 1.6, false, 1, 4, 2.8, 2.8, "sans-serif", 0.6);

  /** A part of a page of the prescription, in its letters. */
  public static final Sheet ON_PAGE =
      new Sheet(180, 0.5, 1.2, 1.1, true, 0.42, 3, 2.4, 2.4, "Form", 0.5);
}
