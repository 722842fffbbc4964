package rodwork.anatomy.chart;

/** The patient's own sides. */
public enum Side {
  RIGHT,
  LEFT
}
