package rodwork.geometry.io;

/**
 * A named value at every vertex, to be written beside the positions in a PLY. The arrays are not
 * copied: the caller must not change them afterwards.
 */
public sealed interface VertexProperty {
  /** The property's name in the file: letters, digits and underlines. */
  String name();

  /** How many values there are: one a vertex. */
  int count();

  /** Values written as {@code float}. */
  record OfFloat(String name, float[] values) implements VertexProperty {
    public OfFloat {
      checkName(name);
    }

    @Override
    public int count() {
      return values.length;
    }
  }

  /** Values written as {@code uchar}, 0 to 255; a byte of −1 is 255. */
  record OfByte(String name, byte[] values) implements VertexProperty {
    public OfByte {
      checkName(name);
    }

    @Override
    public int count() {
      return values.length;
    }
  }

  private static void checkName(String name) {
    if (!name.matches("[A-Za-z][A-Za-z0-9_]*") || name.matches("[xyz]")) {
      throw new IllegalArgumentException("no name for a vertex property: " + name);
    }
  }
}
