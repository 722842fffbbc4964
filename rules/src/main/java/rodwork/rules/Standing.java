package rodwork.rules;

/** How far a figure of the trade can be trusted. */
public enum Standing {
  /** Seen in a primary published text. */
  PUBLISHED,
  /** Taught, seen in teaching material. */
  TEACHING_TEXT,
  /** From memory of a text that was not looked up again. */
  FROM_MEMORY,
  /** What practitioners do; no published source known. */
  COMMON_PRACTICE,
  /** Chosen by Rodwork, for a reason that stands beside it. */
  OWN_CHOICE
}
