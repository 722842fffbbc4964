package rodwork.app.command;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import rodwork.anatomy.Jaw;
import rodwork.app.operation.CastOptions;

/** Reads {@code upper} or {@code lower}. */
final class JawOption implements ITypeConverter<Jaw> {
  @Override
  public Jaw convert(String text) {
    return CastOptions.jawNamed(text)
        .orElseThrow(
            () -> new TypeConversionException("'" + text + "' is neither upper nor lower"));
  }
}
