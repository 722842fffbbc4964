package rodwork.design.abutment;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.design.clasp.AbutmentFacts;
import rodwork.design.clasp.Fact;
import rodwork.rules.Reading;

/**
 * What a person said of abutments. It goes before what was measured or read off the chart.
 * Immutable.
 *
 * @param ofAll facts of every abutment, such as poor hygiene
 * @param ofTooth facts of single teeth, which go before those of all
 */
public record Answers(Map<Fact, Reading> ofAll, Map<ToothNumber, Map<Fact, Reading>> ofTooth) {
  public static final Answers NONE = new Answers(Map.of(), Map.of());

  public Answers {
    ofAll = Map.copyOf(ofAll);
    Map<ToothNumber, Map<Fact, Reading>> copy = new HashMap<>();
    ofTooth.forEach((tooth, facts) -> copy.put(tooth, Map.copyOf(facts)));
    ofTooth = Map.copyOf(copy);
  }

  /** The facts with what was said in their place. */
  AbutmentFacts on(AbutmentFacts facts) {
    Map<Fact, Reading> said = new EnumMap<>(Fact.class);
    said.putAll(ofAll);
    said.putAll(ofTooth.getOrDefault(facts.tooth(), Map.of()));
    AbutmentFacts changed = facts;
    for (Map.Entry<Fact, Reading> one : said.entrySet()) {
      changed = changed.with(one.getKey(), one.getValue());
    }
    return changed;
  }
}
