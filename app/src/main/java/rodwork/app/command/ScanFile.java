package rodwork.app.command;

/** What the help says of a scan file, the same for each command. */
final class ScanFile {
  static final String FORMATS =
      "Scan file: STL, PLY, OBJ, OFF, 3MF, glTF or GLB, also gzipped or zipped.";

  private ScanFile() {}
}
