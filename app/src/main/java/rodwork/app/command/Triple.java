package rodwork.app.command;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import rodwork.geometry.Vec3;

/** Reads a direction {@code X,Y,Z}. */
final class Triple implements ITypeConverter<Vec3> {
  @Override
  public Vec3 convert(String text) {
    double[] numbers = Numbers.read(text, 3, "three numbers X,Y,Z");
    Vec3 vector = new Vec3(numbers[0], numbers[1], numbers[2]);
    if (!(vector.length() > 0)) {
      throw new TypeConversionException("'" + text + "' has no direction, its length is 0");
    }
    return vector;
  }
}
