package rodwork.geometry.intake;

import java.util.Locale;

/** Every remark that an intake can make: stable code, what became of it, text. */
public enum RemarkKind {
  VERTICES_NOT_FINITE(
      Outcome.MENDED,
      "Vertices whose coordinates are no numbers within ±1e9: {count}; removed, with the triangles"
          + " at them: {triangles}."),
  VERTICES_WELDED(
      Outcome.MENDED, "Vertices at exactly the place of an earlier one: {count}; welded."),
  VERTICES_UNUSED(Outcome.MENDED, "Vertices that no triangle names: {count}; left out."),
  TRIANGLES_COLLAPSED(Outcome.MENDED, "Triangles with two corners in one place: {count}; removed."),
  TRIANGLES_FLAT(
      Outcome.MENDED,
      "Triangles without area, their corners in one line: {count}; divided among their neighbours,"
          + " or removed at a border."),
  TRIANGLES_REPEATED(Outcome.MENDED, "Triangles that repeat an earlier one: {count}; removed."),
  TRIANGLES_TURNED(
      Outcome.MENDED, "Triangles turned against their neighbours: {count}; turned round."),
  INSIDE_OUT(
      Outcome.MENDED,
      "Pieces of the surface that were inside out: {count}, with {triangles} triangles; turned"
          + " round."),
  PERHAPS_MIRRORED(
      Outcome.WARNING,
      "The whole surface was inside out, as it is after a mirroring: compare right and left with the"
          + " patient or the plaster."),
  ISLANDS_REMOVED(
      Outcome.MENDED,
      "Loose pieces below {limit} % of the whole area each: {count}, with {triangles} triangles and"
          + " {share} % of it together; removed."),
  PIECES_KEPT(Outcome.KEPT, "The surface is in separate pieces: {count}; all are kept."),
  SHATTERED(
      Outcome.WARNING,
      "The surface falls into {count} pieces, the largest with {share} % of the area: corners that"
          + " belong together differ; all are kept, but depths beside a crack may be wrong. Export"
          + " the scan with shared vertices."),
  PINHOLES_FILLED(
      Outcome.MENDED,
      "Pinholes of at most {limit} edges: {count}; filled with {triangles} triangles."),
  HOLES_KEPT(
      Outcome.KEPT,
      "Holes in the surface: {count}, the longest {length} mm round; kept, and depths measured"
          + " through one are marked unsure."),
  EDGES_OVERUSED(Outcome.KEPT, "Edges with more than two triangles: {count}; kept as they are."),
  NOT_ORIENTABLE(
      Outcome.KEPT,
      "Edges at which the two sides of the surface change places: {count}; kept, for no turning"
          + " mends them."),
  UNIT_SCALED(Outcome.MENDED, "Lengths were in {unit}: multiplied by {factor} to mm."),
  UNIT_CONTRADICTED(
      Outcome.WARNING,
      "The file says its unit is {declared}, with which it would span {span} mm; taken as {unit},"
          + " with which it spans {better} mm. Give the unit if that is wrong."),
  SPAN_UNUSUAL(
      Outcome.WARNING,
      "It spans {span} mm; a whole arch spans {least} to {most} mm. Give the unit if {unit} is"
          + " wrong."),
  COORDINATES_ROUNDED(
      Outcome.WARNING,
      "The scan lies {distance} mm from the origin of its file, whose numbers are rounded to {step}"
          + " mm there. Export it nearer to the origin."),
  TOO_COARSE(
      Outcome.WARNING,
      "Edges near the teeth are {median} mm long (middle value), over the limit of {limit} mm: too"
          + " coarse to place a 0.25 mm terminal.");

  /** What became of a remark's matter. */
  public enum Outcome {
    /** It was changed and is right now. */
    MENDED,
    /** It was left as it is; figures near it may be marked. */
    KEPT,
    /** The user should look at it before trusting the figures. */
    WARNING
  }

  private final Outcome outcome;
  private final String template;

  RemarkKind(Outcome outcome, String template) {
    this.outcome = outcome;
    this.template = template;
  }

  public Outcome outcome() {
    return outcome;
  }

  /** Stable code, lower case with hyphens. */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  String template() {
    return template;
  }

  /**
   * Builds the remark.
   *
   * @param count how many there are
   * @param values those of the text, in order
   */
  Remark remark(long count, Object... values) {
    return new Remark(code(), outcome, count, Phrase.fill(template, values));
  }
}
