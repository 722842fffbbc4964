package rodwork.app.command;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;
import rodwork.app.report.Words;
import rodwork.survey.path.Zone;

/** What a search for a path counts as in the way. */
final class InTheWayMixin {
  @Option(
      names = "--leave-out",
      paramLabel = "KIND,KIND",
      split = ",",
      converter = KindOption.class,
      description = {
        "Surfaces that do not count as in the way: base, lingual-strip, palate, facial-strip;",
        "of a plan: base, major-connector, bar-arm."
      })
  private List<Zone.Kind> leftOut = List.of();

  @Option(
      names = "--planned",
      description = {
        "Plan the denture at the path found, then search again with its bases, major connector and",
        "bar arms in place of the surfaces that anatomy alone suggests."
      })
  private boolean planned;

  Set<Zone.Kind> leftOut() {
    return new TreeSet<>(leftOut);
  }

  boolean planned() {
    return planned;
  }

  /** A kind by its word, hyphens for spaces. */
  static final class KindOption implements ITypeConverter<Zone.Kind> {
    @Override
    public Zone.Kind convert(String value) {
      return Words.zoneKind(value)
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "'"
                          + value
                          + "' is none of "
                          + Arrays.stream(Zone.Kind.values())
                              .map(Words::of)
                              .collect(Collectors.joining(", "))));
    }
  }
}
