package rodwork.anatomy;

/** Which arch a cast shows; its shape alone cannot tell it surely. */
public enum Jaw {
  UPPER,
  LOWER,
  UNKNOWN
}
