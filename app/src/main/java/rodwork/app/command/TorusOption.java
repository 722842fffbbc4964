package rodwork.app.command;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.chart.Torus;

/** Reads what is said of a torus: {@code palatal=yes,from=14,to=17,width=12}, {@code left=no}. */
final class TorusOption implements ITypeConverter<TorusOption.Said> {
  private static final Map<String, Torus.Site> SITES =
      Map.of(
          "palatal",
          Torus.Site.PALATAL,
          "right",
          Torus.Site.MANDIBULAR_RIGHT,
          "left",
          Torus.Site.MANDIBULAR_LEFT);

  /** What is said of one. */
  record Said(Torus.Site site, Torus torus) {}

  @Override
  public Said convert(String text) {
    Map<String, String> words = new TreeMap<>();
    Torus.@Nullable Site site = null;
    Answer there = Answer.NOT_KNOWN;
    for (String part : text.split(",", -1)) {
      int at = part.indexOf('=');
      String name = at < 0 ? part : part.substring(0, at);
      String value = at < 0 ? "" : part.substring(at + 1);
      if (site == null) {
        site = SITES.get(name);
        there = value.equals("yes") ? Answer.YES : value.equals("no") ? Answer.NO : there;
        if (site == null || !there.known()) {
          throw new TypeConversionException(
              "'" + part + "' is none of palatal=, right= or left= with yes or no");
        }
      } else if (words.put(name, value) != null) {
        throw new TypeConversionException("'" + name + "' is said twice");
      }
    }
    if (site == null) {
      throw new TypeConversionException("nothing is said of a torus");
    }
    if (there == Answer.NO && !words.isEmpty()) {
      throw new TypeConversionException("a torus that is not there has neither place nor size");
    }
    Torus torus =
        new Torus(
            there,
            tooth(words.remove("from"), site),
            tooth(words.remove("to"), site),
            length(words.remove("width")),
            length(words.remove("below")));
    if (!words.isEmpty()) {
      throw new TypeConversionException(
          "'" + words.keySet().iterator().next() + "' is none of from, to, width and below");
    }
    torus
        .misplaced(site)
        .ifPresent(
            w -> {
              throw new TypeConversionException(
                  "'%s=%s': wanted is %s".formatted(w.end(), w.tooth(), w.wanted()));
            });
    return new Said(site, torus);
  }

  private static Optional<ToothNumber> tooth(@Nullable String text, Torus.Site site) {
    if (text == null) {
      return Optional.empty();
    }
    boolean known = text.matches("[0-9]{2}") && ToothNumber.exists(Integer.parseInt(text));
    if (!known || ToothNumber.of(Integer.parseInt(text)).jaw() != site.jaw()) {
      throw new TypeConversionException(
          "'" + text + "' is no FDI number of the jaw of a " + site.words());
    }
    return Optional.of(ToothNumber.of(Integer.parseInt(text)));
  }

  private static OptionalDouble length(@Nullable String text) {
    if (text == null) {
      return OptionalDouble.empty();
    }
    double mm = Numbers.read(text, 1, "a length in mm")[0];
    if (!(mm >= 0 && mm <= Torus.GREATEST_MM)) {
      throw new TypeConversionException(
          String.format("'%s' lies outside 0 to %.0f mm", text, Torus.GREATEST_MM));
    }
    return OptionalDouble.of(mm);
  }
}
