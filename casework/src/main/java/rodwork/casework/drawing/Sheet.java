package rodwork.casework.drawing;

/**
 * How a drawing is laid out on paper. Lengths are mm on paper.
 *
 * @param widthMm of the whole
 * @param marginMm left free around it
 * @param fromAbove scale of the view from above, where it fits
 * @param fromSide scale of the views from the sides, where they fit
 * @param sidesBeside whether these and the legend stand beside the view from above, or below it
 * @param aboveShare of the width, for the view from above where the others stand beside it
 * @param legendColumns columns of the legend
 * @param titleMm height of the letters of the title
 * @param smallMm height of the letters of legend and names
 * @param numberMm height of the numbers of teeth
 * @param font family of the letters
 */
public record Sheet(
    double widthMm,
    double marginMm,
    double fromAbove,
    double fromSide,
    boolean sidesBeside,
    double aboveShare,
    int legendColumns,
    double titleMm,
    double smallMm,
    double numberMm,
    String font) {
  /** A sheet of its own. */
  public static final Sheet WHOLE =
      new Sheet(190, 8, 1.75, 1.2, false, 1, 4, 4, 2.8, 2.8, "sans-serif");

  /** A part of a page of the prescription, in its letters. */
  public static final Sheet ON_PAGE =
      new Sheet(180, 0.5, 1.3, 0.9, true, 0.5, 2, 3, 2.4, 2.4, "Form");
}
