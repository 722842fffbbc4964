package rodwork.casework.prescription;

/**
 * What is shown beside the words.
 *
 * @param cast at its path, as PNG; empty: none
 * @param plan drawing of the plan, as SVG; empty: none
 */
public record Pictures(byte[] cast, String plan) {
  public static final Pictures NONE = new Pictures(new byte[0], "");

  public Pictures {
    cast = cast.clone();
  }

  @Override
  public byte[] cast() {
    return cast.clone();
  }
}
