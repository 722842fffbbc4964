package rodwork.app.command;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import rodwork.survey.Tilt;

/** Reads a tilt {@code ANTERIOR,RIGHT} [degrees]. */
final class TiltOption implements ITypeConverter<Tilt> {
  /** A cast tilted further has no business under a rod; the limits of practice are far below. */
  private static final double MOST_DEG = 45;

  @Override
  public Tilt convert(String text) {
    double[] angles = Numbers.read(text, 2, "two angles ANTERIOR,RIGHT in degrees");
    for (double angle : angles) {
      if (Math.abs(angle) > MOST_DEG) {
        throw new TypeConversionException(
            String.format("'%s' goes beyond %.0f° to one side", text, MOST_DEG));
      }
    }
    return new Tilt(angles[0], angles[1]);
  }
}
