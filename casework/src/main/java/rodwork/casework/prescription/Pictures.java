package rodwork.casework.prescription;

/**
 * What is shown beside the words.
 *
 * @param cast at its path, as PNG; empty: none
 * @param plan drawing of the plan, as SVG; empty: none
 * @param marks the tripod marks with their distances to landmarks, as SVG; empty: none
 * @param cuts sections of the crowns before and after preparation, as SVG; empty: none
 * @param cutsLeftOut whether there are sections that found no room
 */
public record Pictures(byte[] cast, String marks, String plan, String cuts, boolean cutsLeftOut) {
  public static final Pictures NONE = new Pictures(new byte[0], "", "", "");

  public Pictures {
    cast = cast.clone();
  }

  /** With room for all. */
  public Pictures(byte[] cast, String marks, String plan, String cuts) {
    this(cast, marks, plan, cuts, false);
  }

  Pictures withoutCuts() {
    return new Pictures(cast, marks, plan, "", !cuts.isEmpty());
  }

  @Override
  public byte[] cast() {
    return cast.clone();
  }
}
