package rodwork.geometry.io;

/** The kinds of mesh file that Rodwork reads, told apart by content. */
public enum Format {
  STL_BINARY("binary STL", ".stl", true),
  STL_ASCII("ASCII STL", ".stl", true),
  PLY("PLY", ".ply", true),
  OBJ("OBJ", ".obj", true),
  THREE_MF("3MF", ".3mf", true),
  GLB("binary glTF", ".glb", false),
  GLTF("glTF", ".gltf", false),
  OFF("OFF", ".off", false);

  private final String label;
  private final String ending;
  private final boolean written;

  Format(String label, String ending, boolean written) {
    this.label = label;
    this.ending = ending;
    this.written = written;
  }

  /** The format's name as a person reads it. */
  public String label() {
    return label;
  }

  /** The usual file name ending, with its dot, in lower case. */
  public String ending() {
    return ending;
  }

  /** Whether Rodwork also writes this format. */
  public boolean written() {
    return written;
  }
}
