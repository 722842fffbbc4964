package rodwork.anatomy.tooth;

/** The surfaces of a crown. */
public enum Surface {
  FACIAL,
  LINGUAL,
  MESIAL,
  DISTAL,
  OCCLUSAL;

  /** The one across the tooth; the occlusal one is its own. */
  public Surface opposite() {
    return switch (this) {
      case FACIAL -> LINGUAL;
      case LINGUAL -> FACIAL;
      case MESIAL -> DISTAL;
      case DISTAL -> MESIAL;
      case OCCLUSAL -> OCCLUSAL;
    };
  }

  public boolean isProximal() {
    return this == MESIAL || this == DISTAL;
  }
}
