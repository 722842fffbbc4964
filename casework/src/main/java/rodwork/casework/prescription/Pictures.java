package rodwork.casework.prescription;

/**
 * What is shown beside the words.
 *
 * @param cast at its path, as PNG; empty: none
 * @param plan drawing of the plan, as SVG; empty: none
 * @param marks the tripod marks with their distances to landmarks, as SVG; empty: none
 * @param cuts sections of the crowns before and after preparation, as SVG; empty: none
 */
public record Pictures(byte[] cast, String marks, String plan, String cuts) {
  public static final Pictures NONE = new Pictures(new byte[0], "", "", "");

  public Pictures {
    cast = cast.clone();
  }

  Pictures withoutCuts() {
    return new Pictures(cast, marks, plan, "");
  }

  @Override
  public byte[] cast() {
    return cast.clone();
  }
}
