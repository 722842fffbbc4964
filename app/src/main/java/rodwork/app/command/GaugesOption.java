package rodwork.app.command;

import java.util.Arrays;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import rodwork.app.operation.GaugeSizes;
import rodwork.survey.Gauges;

/** Reads gauge sizes such as {@code 0.25,0.50,0.75} [mm]. */
final class GaugesOption implements ITypeConverter<Gauges> {
  @Override
  public Gauges convert(String text) {
    double[] sizes = Numbers.read(text, 0, "a list of gauge sizes in mm, such as 0.25,0.50,0.75");
    String wrong = GaugeSizes.complaint(Arrays.stream(sizes).boxed().toList());
    if (wrong != null) {
      throw new TypeConversionException("'" + text + "': " + wrong);
    }
    return GaugeSizes.of(Arrays.stream(sizes).boxed().toList());
  }
}
