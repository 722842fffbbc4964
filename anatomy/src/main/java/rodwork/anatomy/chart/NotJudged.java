package rodwork.anatomy.chart;

/** What may be wanted or there, and is recognised, told, and not judged. */
public enum NotJudged {
  IMPLANTS,
  PRECISION_ATTACHMENTS,
  ROTATIONAL_PATH,
  HINGED_BAR,
  OBTURATOR
}
