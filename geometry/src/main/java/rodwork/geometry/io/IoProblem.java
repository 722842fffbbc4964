package rodwork.geometry.io;

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
  NO_NUMBER(
      "number-unreadable",
      "{file}: line {line}: \"{word}\" stands where a number must.",
      "Export the scan again, with a decimal point and no comma."),
  LINE_TOO_SHORT(
      "line-too-short", "{file}: line {line} ends too early: {what}.", "Export the scan again."),
  NO_SUCH_VERTEX(
      "no-such-vertex",
      "{file}: face {face} names vertex {vertex}, counted from 0, but there are {vertices}.",
      "The file is damaged or was cut off: copy or export it again."),
  POLYGON_TOO_LARGE(
      "polygon-too-large",
      "{file}: face {face} has more than {limit} corners.",
      "Export the scan as triangles."),
  STL_HEADER_CUT_OFF(
      "stl-header-cut-off",
      "{file}: the binary STL ends after {bytes} bytes, inside its header of {header} bytes.",
      "The file was cut off while it was saved or sent: copy or export it again."),
  STL_CUT_OFF(
      "stl-cut-off",
      "{file}: the header announces {announced} triangles, but the file ends inside triangle {last}"
          + " ({missing} triangles are missing).",
      "The file was cut off while it was saved or sent: copy or export it again."),
  STL_TEXT_CUT_OFF(
      "stl-text-cut-off",
      "{file}: the ASCII STL ends in line {line}, after {facets} whole facets, without endsolid.",
      "The file was cut off while it was saved or sent: copy or export it again."),
  STL_WORD(
      "stl-word",
      "{file}: line {line}: \"{word}\" stands where \"{wanted}\" must.",
      "The file is damaged: copy or export it again."),
  PLY_HEADER(
      "ply-header",
      "{file}: line {line} of the PLY header is not understood: {what}.",
      "Export the scan again."),
  PLY_HEADER_CUT_OFF(
      "ply-header-cut-off",
      "{file}: the PLY ends in line {line} of its header, before end_header.",
      "The file was cut off while it was saved or sent: copy or export it again."),
  PLY_NO_PROPERTY(
      "ply-no-property",
      "{file}: the {element} of the PLY has no property {property}.",
      "Export the scan as a surface with positions and faces."),
  PLY_CUT_OFF(
      "ply-cut-off",
      "{file}: the header announces {announced} records of {element}, the file ends after {whole}.",
      "The file was cut off while it was saved or sent: copy or export it again."),
  PLY_LINE_TOO_LONG(
      "ply-line-too-long",
      "{file}: line {line} holds more values than the header announces, from \"{word}\" on.",
      "The file is damaged: copy or export it again."),
  PLY_LIST(
      "ply-list",
      "{file}: the list {list} near face {face} has a count of {count}.",
      "The file is damaged: copy or export it again."),
  PLY_WHOLE(
      "ply-whole-number",
      "{file}: {value} stands near face {face} where a whole number must.",
      "The file is damaged: copy or export it again."),
  OBJ_CORNER(
      "obj-corner",
      "{file}: line {line}: \"{word}\" names no vertex.",
      "The file is damaged: copy or export it again."),
  OFF_DIMENSIONS(
      "off-dimensions",
      "{file}: the head word {head} announces a surface in other than three dimensions.",
      "Export the scan as STL, PLY or OBJ."),
  OFF_BINARY(
      "off-binary",
      "{file}: this is a binary OFF, which Rodwork does not read.",
      "Export the scan as OFF text, STL or PLY."),
  OFF_COUNTS(
      "off-counts",
      "{file}: line {line}: {found} stands where a count must.",
      "Export the scan again."),
  OFF_CUT_OFF(
      "off-cut-off",
      "{file}: the head announces {announced} {things}, the file ends after {whole}.",
      "The file was cut off while it was saved or sent: copy or export it again."),
  THREE_MF_XML(
      "3mf-xml",
      "{file}: the part {part} is no whole XML; it breaks in line {line}.",
      "The file is damaged: copy or export it again."),
  THREE_MF_STRUCTURE(
      "3mf-structure",
      "{file}: the 3MF does not hold together: {what}.",
      "Export the scan again, or as STL or PLY."),
  THREE_MF_EXTENSION(
      "3mf-extension",
      "{file}: the 3MF needs the extension {extension}, which Rodwork does not read.",
      "Export it as plain triangles, or as STL or PLY."),
  GLB_CUT_OFF(
      "glb-cut-off",
      "{file}: the {part} announces {announced} bytes, the file ends after {whole} of them.",
      "The file was cut off while it was saved or sent: copy or export it again."),
  GLTF_VERSION(
      "gltf-version",
      "{file}: this is glTF version {version}; Rodwork reads version 2.",
      "Export the scan as glTF 2.0, STL or PLY."),
  GLTF_JSON(
      "gltf-json",
      "{file}: the JSON of the glTF breaks in {place}.",
      "The file is damaged: copy or export it again."),
  GLTF_JSON_TOO_LARGE(
      "gltf-json-too-large",
      "{file}: the JSON of the glTF is larger than {limit} MB or nested beyond reason.",
      "Export the scan as binary glTF (.glb), STL or PLY."),
  GLTF_STRUCTURE(
      "gltf-structure",
      "{file}: the glTF does not hold together: {what}.",
      "Export the scan again, or as STL or PLY."),
  GLTF_BUFFER(
      "gltf-buffer",
      "{file}: buffer {buffer} announces {announced} bytes, but {real} are there.",
      "The file is damaged: copy or export it again."),
  GLTF_EXTERNAL(
      "gltf-external-buffer",
      "{file}: the glTF keeps its geometry in another file, {uri}.",
      "Export it with everything in one file: .glb, or .gltf with embedded buffers."),
  GLTF_EXTENSION(
      "gltf-extension",
      "{file}: the glTF needs the extension {extension}, which Rodwork does not read.",
      "Export it without compression, or as STL or PLY."),
  PACKED_DAMAGED(
      "packed-damaged",
      "{file}: the packed file cannot be unpacked ({reason}).",
      "The file is damaged or was cut off: copy or pack it again, without a password."),
  PACKED_TOO_DEEP(
      "packed-too-deep",
      "{file}: the file is packed more than {limit} times over.",
      "Unpack it first."),
  PACKED_BOMB(
      "packed-swelling",
      "{file}: unpacking gave {size} MB from {packed} bytes so far, over {limit} times as much.",
      "No scan packs so small; if this is one, unpack it first."),
  UNPACKED_TOO_LARGE(
      "unpacked-too-large",
      "{file}: unpacking gives more than {limit} MB.",
      "Reduce the scan, or unpack it first."),
  ZIP_WITHOUT_MESH(
      "zip-without-mesh",
      "{file}: none of the {files} files in the zip is a mesh that Rodwork reads.",
      "Put one STL, PLY, OBJ, 3MF, glTF, GLB or OFF in the zip."),
  ZIP_SEVERAL_MESHES(
      "zip-several-meshes",
      "{file}: the zip holds {count} meshes, among them {first} and {second}.",
      "Take out the one to survey and open it."),
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
    return new Refusal(code, Sentence.of(template, values), advice);
  }
}
