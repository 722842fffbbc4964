package rodwork.app.command;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import rodwork.app.operation.CastOptions;
import rodwork.geometry.io.LengthUnit;

/** Reads a unit of length. */
final class UnitOption implements ITypeConverter<LengthUnit> {
  @Override
  public LengthUnit convert(String text) {
    return CastOptions.unitNamed(text)
        .orElseThrow(() -> new TypeConversionException("'" + text + "' is none of mm, cm, m, in"));
  }
}
