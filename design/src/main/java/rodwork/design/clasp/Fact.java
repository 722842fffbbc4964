package rodwork.design.clasp;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Everything about an abutment that a condition may ask for. "Near" is the side of the space, "far"
 * the side away from it; where a fact is of the chosen tip, it is that of the gauge mark at which
 * the family would put it.
 */
public enum Fact {
  TOOTH_KIND("kind of tooth", "incisor", "canine", "premolar", "molar"),
  JAW("jaw", "upper", "lower"),
  SURVEY_LINE(
      "facial survey line",
      "high",
      "medium",
      "low",
      "diagonal near",
      "diagonal far",
      "low between",
      "none"),
  TIPPING("tipping of the tooth", "none", "towards the space", "away from the space", "other"),
  FREE_END("next to a free end", Kind.YES_NO),
  FREE_END_BEYOND("a free end on its other side", Kind.YES_NO),
  /** Follows from the two before it: what must release must, from whichever side a clasp comes. */
  FREE_END_EITHER("a free end on this side or the other", Kind.YES_NO),
  ADJACENT_SPACE("a space beside it", Kind.YES_NO),
  ISOLATED("spaces on both sides", Kind.YES_NO),
  SHOWS("shows when speaking or smiling", Kind.YES_NO),
  MOBILE("mobile", Kind.YES_NO),
  SHORT_ROOT("short root or little bone", Kind.YES_NO),
  DISPLACEABLE_TISSUE("displaceable tissue on the ridge", Kind.YES_NO),
  AHEAD_OF_AXIS("in front of the axis of rotation", Kind.YES_NO),
  FRENUM("frenum or muscle pull where a bar would cross", Kind.YES_NO),
  POOR_HYGIENE("poor oral hygiene", Kind.YES_NO),
  HEAVY_HANDLING("handled heavily", Kind.YES_NO),
  LINGUAL_INCLINATION("inclined lingually", Kind.YES_NO),
  FAR_REST("a rest on the far side has room", Kind.YES_NO),
  NEAR_REST("a rest on the near side has room", Kind.YES_NO),
  CROWN_HEIGHT("facial crown height", Kind.LENGTH),
  CROWN_SHARE("facial crown height as a share of what is usual for the tooth", Kind.SHARE),
  OCCLUSAL_ROOM("room through the embrasure to the opposing teeth", Kind.LENGTH),
  VESTIBULE_DEPTH("depth of the vestibule", Kind.LENGTH),
  TOTAL_STAND_OFF_3("total stand-off {near} below the margin", Kind.LENGTH),
  TOTAL_STAND_OFF_6("total stand-off {far} below the margin", Kind.LENGTH),
  TISSUE_UNDERCUT_3("tissue undercut within {near} of the margin", Kind.LENGTH),
  TISSUE_UNDERCUT_6("tissue undercut within {far} of the margin", Kind.LENGTH),
  TISSUE_UNDERCUT_START("where the tissue undercut starts below the margin", Kind.LENGTH),
  PLANE_HEIGHT("height of the guiding plane there is", Kind.LENGTH),
  PLANE_ENAMEL("enamel that a guiding plane would take", Kind.LENGTH),
  RECIPROCAL_UNDERCUT("undercut where the reciprocal arm lies", Kind.LENGTH),
  FACIAL_ARM_UNDERCUT("undercut where a rigid facial arm lies", Kind.LENGTH),
  /** Of a plane as high as the tip travels. */
  RECIPROCAL_ENAMEL("enamel that a plane for the reciprocal arm would take", Kind.LENGTH),
  RECIPROCAL_HEIGHT("height of the parallel surface for the reciprocal arm", Kind.LENGTH),
  CIRCLET_LENGTH("length of an arm around the tooth", Kind.LENGTH),
  BAR_LENGTH("length of a bar", Kind.LENGTH),
  BAR_CROSSING("angle at which the bar crosses the gingival margin", Kind.ANGLE),
  ARM_UNDERCUT("undercut under the rigid two thirds of the arm", Kind.LENGTH),
  ENCIRCLEMENT("how far the clasp goes round the tooth", Kind.ANGLE),
  ARM_PULL("pull of the clasp", Kind.FORCE),
  ARM_STRESS("peak stress of the retentive arm as a share of its proof stress", Kind.SHARE),
  ARM_STRESS_OTHERWISE(
      "peak stress of the least stressed other material as a share of its proof stress",
      Kind.SHARE),
  /** Of the surface that carries the tip, from the survey line to what bounds it. */
  ROOM_ABOVE_ORIGIN("room above the survey line where the arm begins", Kind.LENGTH),
  ROOM_ABOVE_MIDDLE("room above the survey line in the middle third", Kind.LENGTH),
  ROOM_BELOW_MIDDLE("room below the survey line in the middle third", Kind.LENGTH),
  ROOM_BELOW_TIP("room below the survey line in the third of the tip", Kind.LENGTH),
  LOWERING_ENAMEL_ORIGIN(
      "enamel that lowering the survey line takes where the arm begins", Kind.LENGTH),
  LOWERING_ENAMEL_MIDDLE(
      "enamel that lowering the survey line takes in the middle third", Kind.LENGTH),
  TIP_UNDERCUT("undercut at the tip", Kind.LENGTH),
  TIP_AT_REFERENCE("undercut at the tip along the occlusal normal", Kind.LENGTH),
  TIP_FROM_MARGIN("distance of the tip from the gingival margin", Kind.LENGTH),
  TIP_HEIGHT("height of the tip up the crown, as a share of it", Kind.SHARE),
  TIP_TRAVEL("height of the tip below the survey line", Kind.LENGTH),
  TIP_CONVERGENCE("angle of gingival convergence at the tip", Kind.ANGLE);

  /** What kind of reading answers a fact. */
  public enum Kind {
    CHOICE,
    YES_NO,
    LENGTH,
    ANGLE,
    FORCE,
    SHARE
  }

  private final String words;
  private final Kind kind;

  @SuppressWarnings("ImmutableEnumChecker") // made by List.of
  private final List<String> choices;

  Fact(String words, String... choices) {
    this.words = words;
    this.kind = Kind.CHOICE;
    this.choices = List.of(choices);
  }

  Fact(String words, Kind kind) {
    this.words = words;
    this.kind = kind;
    this.choices = kind == Kind.YES_NO ? List.of("yes", "no") : List.of();
  }

  /** For a person, with the places below the margin that the rulebook has. */
  String words(AbutmentFacts.Levels levels) {
    return words
        .replace("{near}", Figures.mm(levels.nearMm()))
        .replace("{far}", Figures.mm(levels.farMm()));
  }

  public Kind kind() {
    return kind;
  }

  /** The words that may answer it; empty for numbers. */
  public List<String> choices() {
    return choices;
  }

  /** Unit of a number; empty for words. */
  public String unit() {
    return switch (kind) {
      case LENGTH -> "mm";
      case ANGLE -> "degrees";
      case FORCE -> "N";
      case SHARE -> "1";
      case CHOICE, YES_NO -> "";
    };
  }

  /** Name in the rulebook. */
  public String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Whether it is read at the gauge mark of the tip. */
  public boolean ofTip() {
    return name().startsWith("TIP_");
  }

  /** Whether it is read off the arms as they were laid out. */
  public boolean ofArm() {
    return switch (this) {
      case CIRCLET_LENGTH,
          ARM_UNDERCUT,
          BAR_LENGTH,
          BAR_CROSSING,
          ENCIRCLEMENT,
          ARM_PULL,
          ARM_STRESS,
          ARM_STRESS_OTHERWISE ->
          true;
      default -> false;
    };
  }

  /** Whether it is read in one third of the surface that carries the tip. */
  public boolean ofThird() {
    return name().startsWith("ROOM_") || ofLowering();
  }

  /** Whether it tells what a preparation takes that makes up for what is missing of a room. */
  public boolean ofLowering() {
    return this == LOWERING_ENAMEL_ORIGIN || this == LOWERING_ENAMEL_MIDDLE;
  }

  /** Whether it tells what a cut takes whose size depends on the place of the tip. */
  public boolean ofCut() {
    return ofLowering() || this == RECIPROCAL_ENAMEL;
  }

  /** Whether it follows from other facts, so that nobody measures or tells it. */
  public boolean follows() {
    return this == FREE_END_EITHER;
  }

  public static Optional<Fact> named(String key) {
    return Stream.of(values()).filter(f -> f.key().equals(key)).findFirst();
  }
}
