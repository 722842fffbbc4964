package rodwork.anatomy.chart;

/** How the tissue of a free end feels under the finger. */
public enum Firmness {
  FIRM,
  YIELDING,
  FLABBY,
  NOT_KNOWN
}
