package rodwork.app.report;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.AppRefusal;
import rodwork.design.abutment.Answers;
import rodwork.design.clasp.Fact;
import rodwork.rules.Reading;

/** Reads what a person says of abutments: {@code 35:mobile=no}, or an object of JSON. */
public final class AnswerReader {
  private AnswerReader() {}

  /**
   * Answers as a command line has them.
   *
   * @param texts {@code FACT=VALUE} for all abutments, {@code TOOTH:FACT=VALUE} for one
   * @throws rodwork.geometry.Refusal {@code answer-wrong}
   */
  public static Answers of(List<String> texts) {
    Map<Fact, Reading> all = new EnumMap<>(Fact.class);
    Map<ToothNumber, Map<Fact, Reading>> single = new HashMap<>();
    for (String text : texts) {
      int equals = text.indexOf('=');
      int colon = text.lastIndexOf(':', equals);
      if (equals < 0) {
        throw AppRefusal.ANSWER_WRONG.with(text, "it has no =");
      }
      Map<Fact, Reading> into =
          colon < 0
              ? all
              : single.computeIfAbsent(
                  tooth(text.substring(0, colon), text), t -> new EnumMap<>(Fact.class));
      put(into, text.substring(colon + 1, equals), text.substring(equals + 1), text);
    }
    return new Answers(all, single);
  }

  /**
   * Answers as JSON has them: {@code {"poor-hygiene":"no","35":{"mobile":"yes"}}}.
   *
   * @throws rodwork.geometry.Refusal {@code answer-wrong}
   */
  public static Answers of(JsonNode json) {
    Map<Fact, Reading> all = new EnumMap<>(Fact.class);
    Map<ToothNumber, Map<Fact, Reading>> single = new HashMap<>();
    for (Map.Entry<String, JsonNode> one : json.properties()) {
      if (one.getValue().isObject()) {
        Map<Fact, Reading> into = new EnumMap<>(Fact.class);
        for (Map.Entry<String, JsonNode> fact : one.getValue().properties()) {
          String whole = one.getKey() + ":" + fact.getKey() + "=" + fact.getValue().asText();
          put(into, fact.getKey(), fact.getValue().asText(), whole);
        }
        single.put(tooth(one.getKey(), one.getKey()), into);
      } else {
        String value = one.getValue().asText();
        put(all, one.getKey(), value, one.getKey() + "=" + value);
      }
    }
    return new Answers(all, single);
  }

  private static ToothNumber tooth(String number, String text) {
    if (!number.matches("[0-9]{2}") || !ToothNumber.exists(Integer.parseInt(number))) {
      throw AppRefusal.ANSWER_WRONG.with(
          text, "\"" + number + "\" is no FDI number; they run 11–18, 21–28, 31–38, 41–48");
    }
    return ToothNumber.of(Integer.parseInt(number));
  }

  private static void put(Map<Fact, Reading> into, String name, String value, String text) {
    Optional<Fact> fact = Fact.named(name).filter(AnswerReader::answerable);
    if (fact.isEmpty()) {
      throw AppRefusal.ANSWER_WRONG.with(
          text,
          "there is no fact \""
              + name
              + "\" to answer; there are "
              + Stream.of(Fact.values())
                  .filter(AnswerReader::answerable)
                  .map(Fact::key)
                  .collect(Collectors.joining(", ")));
    }
    into.put(fact.get(), reading(fact.get(), value, text));
  }

  private static boolean answerable(Fact fact) {
    return !fact.ofTip() && !fact.ofThird() && !fact.follows();
  }

  private static Reading reading(Fact fact, String value, String text) {
    switch (fact.kind()) {
      case YES_NO, CHOICE -> {
        if (!fact.choices().contains(value)) {
          throw AppRefusal.ANSWER_WRONG.with(
              text, "it is one of " + String.join(", ", fact.choices()));
        }
        return fact.kind() == Fact.Kind.YES_NO
            ? Reading.yes(value.equals("yes"))
            : new Reading.Word(value);
      }
      case LENGTH, ANGLE, FORCE, SHARE -> {
        try {
          double number = Double.parseDouble(value);
          if (number >= 0 && number <= 100) {
            return new Reading.Measured(number, 0, fact.unit());
          }
        } catch (NumberFormatException _) {
          // Told below.
        }
        throw AppRefusal.ANSWER_WRONG.with(
            text, "it is a number of " + fact.unit() + " from 0 to 100");
      }
    }
    throw new IllegalStateException("a kind of fact that is not known: " + fact.kind());
  }
}
