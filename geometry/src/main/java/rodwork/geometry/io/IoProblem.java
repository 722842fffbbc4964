package rodwork.geometry.io;

import java.util.Locale;
import rodwork.geometry.Refusal;

/**
 * Every refusal of this package, in one place: stable code, text, advice.
 *
 * <p>A text names its values in braces, in the order in which {@link #refusal} takes them; the
 * first is always the file.
 */
public enum IoProblem {
  NO_SUCH_FILE("no-such-file", "{file}: there is no such file.", "Check the name and the folder."),
  UNREADABLE(
      "file-unreadable",
      "{file}: the file cannot be read ({reason}).",
      "Check that it is a file, not a folder, and that you may open it."),
  UNWRITABLE(
      "file-unwritable",
      "{file}: the file cannot be written ({reason}).",
      "Check that the folder exists, that you may write there, and that the disk has room."),
  EMPTY("file-empty", "{file}: the file is empty (0 bytes).", "Export the scan again."),
  UNKNOWN(
      "format-unknown",
      "{file}: the content is no mesh file that Rodwork reads; it begins with {start}.",
      "Export the scan as STL, PLY, OBJ, 3MF, glTF, GLB or OFF; each may be gzipped or zipped."),
  TOO_LARGE(
      "mesh-too-large",
      "{file}: the mesh needs more than the {limit} MB set aside for reading.",
      "Reduce the scan, or give the program more memory (java -Xmx); half of it serves reading."),
  NO_TRIANGLES(
      "no-triangles",
      "{file}: the {format} holds {vertices} vertices and no triangle.",
      "Export the scan as a surface, not as points or lines."),
  STL_CUT_OFF(
      "stl-cut-off",
      "{file}: the header announces {announced} triangles, but the file ends inside triangle {last}"
          + " ({missing} triangles are missing).",
      "The file was cut off while it was saved or sent: copy or export it again."),
  ENDING_UNKNOWN(
      "ending-unknown",
      "{file}: the ending {ending} stands for no format that Rodwork writes.",
      "Choose a name that ends in .stl, .ply, .obj or .3mf.");

  private final String code;
  private final String template;
  private final String advice;

  IoProblem(String code, String template, String advice) {
    this.code = code;
    this.template = template;
    this.advice = advice;
  }

  /** Stable code, lower case with hyphens. */
  public String code() {
    return code;
  }

  String template() {
    return template;
  }

  public String advice() {
    return advice;
  }

  /**
   * Builds the refusal.
   *
   * @param values one for each brace of the text, in order; whole numbers are grouped by thousands
   */
  Refusal refusal(Object... values) {
    StringBuilder text = new StringBuilder();
    int from = 0;
    int used = 0;
    for (int open = template.indexOf('{'); open >= 0; open = template.indexOf('{', from)) {
      text.append(template, from, open).append(shown(values[used++]));
      from = template.indexOf('}', open) + 1;
    }
    if (used != values.length) {
      throw new IllegalArgumentException(code + " takes " + used + " values, not " + values.length);
    }
    return new Refusal(code, text.append(template.substring(from)).toString(), advice);
  }

  private static String shown(Object value) {
    return value instanceof Long || value instanceof Integer
        ? String.format(Locale.ROOT, "%,d", ((Number) value).longValue())
        : value.toString();
  }
}
