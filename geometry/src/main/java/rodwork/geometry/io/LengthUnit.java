package rodwork.geometry.io;

/** A unit of length that a mesh file can declare. */
public enum LengthUnit {
  MICRON("micron", 0.001),
  MILLIMETRE("mm", 1),
  CENTIMETRE("cm", 10),
  INCH("inch", 25.4),
  FOOT("foot", 304.8),
  METRE("m", 1000);

  private final String label;
  private final double millimetres;

  LengthUnit(String label, double millimetres) {
    this.label = label;
    this.millimetres = millimetres;
  }

  /** The unit's name as a person reads it. */
  public String label() {
    return label;
  }

  /** How many mm one such unit is, exactly. */
  public double millimetres() {
    return millimetres;
  }
}
