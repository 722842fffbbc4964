package rodwork.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.Firmness;
import rodwork.anatomy.chart.NotJudged;
import rodwork.anatomy.chart.PlaceEntry;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothEntry;
import rodwork.anatomy.chart.ToothEntry.Mobility;
import rodwork.anatomy.chart.ToothEntry.Opposing;
import rodwork.anatomy.chart.ToothEntry.Presence;
import rodwork.anatomy.chart.ToothEntry.Restoration;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.chart.Torus;
import rodwork.geometry.Refusal;

/** Charts to JSON and back; the schema by a general validator (networknt); each fault named. */
class ChartReaderTest {
  private static final long SEED = 41;

  private static final String WHOLE =
      """
      {
        "format": "rodwork chart",
        "version": 1,
        "jaw": "upper",
        "teeth": [
          {"tooth": 16, "presence": "missing", "replace": "yes"},
          {"tooth": 17, "presence": "present", "mobility": "I", "crownToRoot": 0.67,
           "opposing": {"kind": "tooth", "clearanceMm": 1.5}}
        ],
        "places": [
          {"tooth": 14, "vestibuleDepthMm": 5.5}
        ],
        "freeEnds": {"left": "flabby"},
        "notes": ["wears a night guard"]
      }
      """;

  @Test
  void aWholeChartIsRead() {
    Chart chart = ChartReader.read(WHOLE, "chart.json");
    assertThat(chart.missing()).containsExactly(ToothNumber.of(16));
    ToothEntry seventeen = chart.tooth(ToothNumber.of(17));
    assertThat(seventeen.mobility()).isEqualTo(Mobility.I);
    assertThat(seventeen.crownToRoot()).hasValue(0.67);
    assertThat(seventeen.abutment()).isEqualTo(Answer.NOT_KNOWN);
    assertThat(seventeen.opposing().clearanceMm()).hasValue(1.5);
    assertThat(chart.place(ToothNumber.of(14)).vestibuleDepthMm()).hasValue(5.5);
    assertThat(chart.freeEnd(Side.LEFT)).isEqualTo(Firmness.FLABBY);
    assertThat(chart.freeEnd(Side.RIGHT)).isEqualTo(Firmness.NOT_KNOWN);
    assertThat(chart.notes()).containsExactly("wears a night guard");
  }

  @Test
  void onlyWhatIsMissingIsNeeded() throws IOException {
    String least =
        "{\"format\": \"rodwork chart\", \"version\": 1, \"jaw\": \"lower\", \"missing\": [35,"
            + " 46]}";
    assertThat(Schemas.errors("chart", Json.read(least))).isEmpty();
    assertThat(ChartReader.read(least, "chart.json"))
        .isEqualTo(Chart.missing(Jaw.LOWER, List.of(ToothNumber.of(35), ToothNumber.of(46))));
  }

  @Test
  void anyChartComesBackAsItWas() throws IOException {
    Random random = new Random(SEED);
    for (int i = 0; i < 300; i++) {
      Chart chart = any(random);
      ObjectNode json = ChartJson.of(chart);
      assertThat(Schemas.errors("chart", json)).as("seed %d, chart %d", SEED, i).isEmpty();
      assertThat(ChartReader.read(Json.pretty(json), "chart.json"))
          .as("seed %d, chart %d", SEED, i)
          .isEqualTo(chart);
    }
  }

  /** What is put in the place of what, and the line and field that the refusal names. */
  @ParameterizedTest(name = "{1} for {0}")
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '`',
      value = {
        "\"version\": 1; \"version\": 2; line 3, /version: there is 2, wanted is 1",
        "\"upper\"; \"left\"; line 4, /jaw: there is \"left\", wanted is \"upper\" or \"lower\"",
        "\"tooth\": 16; \"tooth\": 19; line 6, /teeth/0/tooth: there is 19, wanted is an FDI"
            + " number",
        "\"tooth\": 16; \"tooth\": 36; line 6, /teeth/0/tooth: there is 36, wanted is a tooth of"
            + " the upper jaw",
        "\"tooth\": 16; \"tooth\": 17; line 7, /teeth/1/tooth: tooth 17 is told twice",
        "\"missing\"; \"gone\"; line 6, /teeth/0/presence: there is \"gone\", wanted is one of"
            + " \"present\"",
        "\"mobility\": \"I\"; \"mobility\": 1; line 7, /teeth/1/mobility: there is 1, wanted is one"
            + " of \"none\"",
        "\"mobility\"; \"mobilty\"; line 7, /teeth/1/mobilty: there is no such field",
        "0.67; \"1:1.5\"; line 7, /teeth/1/crownToRoot: there is \"1:1.5\", wanted is a number from"
            + " 0.01 to 10.0",
        "1.5}; 90}; line 8, /teeth/1/opposing/clearanceMm: there is 90, wanted is a number from"
            + " -50.0 to 50.0",
        "5.5; -1; line 11, /places/0/vestibuleDepthMm: there is -1, wanted is a number from 0.0 to"
            + " 40.0",
        "\"flabby\"; \"soft\"; line 13, /freeEnds/left: there is \"soft\", wanted is one of"
            + " \"firm\"",
        "[\"wears a night guard\"]; \"none\"; line 14, /notes: there is \"none\", wanted is an"
            + " array",
        ", \"presence\": \"missing\"; ` `; line 6, /teeth/0/presence: nothing is there",
        "\"version\": 1,; \"version\" 1,; line 3, the text: it is no JSON"
      })
  void everyFaultIsNamed(String good, String bad, String told) {
    String broken = WHOLE.replace(good, bad);
    assertThat(broken).isNotEqualTo(WHOLE);
    Refusal refusal =
        catchThrowableOfType(Refusal.class, () -> ChartReader.read(broken, "chart.json"));
    assertThat(refusal).as("refused").isNotNull();
    assertThat(refusal.code()).isEqualTo("chart-wrong");
    assertThat(refusal.getMessage()).startsWith("chart.json ").contains(told);
  }

  private static Chart any(Random random) {
    Jaw jaw = random.nextBoolean() ? Jaw.UPPER : Jaw.LOWER;
    Map<ToothNumber, ToothEntry> teeth = new TreeMap<>();
    Map<ToothNumber, PlaceEntry> places = new TreeMap<>();
    for (int i = 0; i < ToothNumber.PLACES; i++) {
      ToothNumber tooth = ToothNumber.inOrder(jaw, i);
      if (random.nextInt(3) == 0) {
        teeth.put(
            tooth,
            new ToothEntry(
                one(random, Presence.values()),
                one(random, Answer.values()),
                one(random, Answer.values()),
                one(random, Answer.values()),
                one(random, Mobility.values()),
                number(random, 0.3, 4),
                one(random, Restoration.values()),
                one(random, Answer.values()),
                new Opposing(
                    one(random, Opposing.Kind.values()),
                    one(random, Answer.values()),
                    number(random, -2, 12))));
      }
      if (random.nextInt(4) == 0) {
        places.put(
            tooth,
            new PlaceEntry(
                number(random, 0, 20),
                number(random, 0, 20),
                one(random, Answer.values()),
                one(random, Answer.values())));
      }
    }
    Map<Side, Firmness> ends = new EnumMap<>(Side.class);
    ends.put(Side.RIGHT, Firmness.FIRM);
    Set<NotJudged> special = EnumSet.noneOf(NotJudged.class);
    List<String> notes = new ArrayList<>();
    if (random.nextBoolean()) {
      special.add(one(random, NotJudged.values()));
      notes.add("a \"quoted\" note, über zwei\nZeilen");
    }
    return new Chart(
        jaw,
        new TreeMap<>(teeth),
        new TreeMap<>(places),
        ends,
        tori(random, jaw),
        random.nextBoolean() ? List.of("nickel") : List.of(),
        one(random, Answer.values()),
        number(random, 0, Chart.WIDEST_OPENING_MM),
        special,
        notes);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '`',
      value = {
        "\"mandibularLeft\": {\"there\": \"yes\"}; /tori/mandibularLeft: there is no such field;"
            + " known are palatal",
        "\"palatal\": {\"there\": \"no\", \"from\": 14}; /tori/palatal/there: there is \"no\","
            + " wanted is \"yes\"",
        "\"palatal\": {\"there\": \"yes\", \"from\": 34}; /tori/palatal/from: there is 34, wanted"
            + " is a tooth of the upper jaw",
        "\"palatal\": {\"there\": \"yes\", \"widthMm\": 70}; /tori/palatal/widthMm: there is 70,"
            + " wanted is a number from 0.0 to 50.0",
        "\"palatal\": {\"there\": \"yes\", \"from\": 14, \"to\": 24}; /tori/palatal/to: there is"
            + " 24, wanted is a tooth before or behind the level of from",
        "\"palatal\": {\"there\": \"perhaps\"}; /tori/palatal/there: there is \"perhaps\", wanted"
            + " is one of \"yes\""
      })
  void whatCannotBeOfATorusIsNamed(String tori, String told) {
    String chart = WHOLE.replace("\"freeEnds\"", "\"tori\": {" + tori + "}, \"freeEnds\"");
    Refusal refusal =
        catchThrowableOfType(Refusal.class, () -> ChartReader.read(chart, "chart.json"));
    assertThat(refusal).as("refused").isNotNull();
    assertThat(refusal.getMessage()).startsWith("chart.json ").contains("line 13, " + told);
  }

  private static Map<Torus.Site, Torus> tori(Random random, Jaw jaw) {
    Map<Torus.Site, Torus> tori = new EnumMap<>(Torus.Site.class);
    for (Torus.Site site : Torus.Site.values()) {
      Answer there = one(random, Answer.values());
      if (site.jaw() == jaw && there.known()) {
        tori.put(
            site,
            there == Answer.NO
                ? Torus.of(there)
                : new Torus(
                    there,
                    Optional.of(beside(site, random)),
                    Optional.empty(),
                    number(random, 0, 20),
                    number(random, 0, 20)));
      }
    }
    return tori;
  }

  private static ToothNumber beside(Torus.Site site, Random random) {
    List<ToothNumber> teeth = ToothNumber.allOf(site.jaw()).filter(site::beside).toList();
    return teeth.get(random.nextInt(teeth.size()));
  }

  private static <T> T one(Random random, T[] values) {
    return values[random.nextInt(values.length)];
  }

  private static OptionalDouble number(Random random, double low, double high) {
    return random.nextBoolean()
        ? OptionalDouble.empty()
        : OptionalDouble.of(low + random.nextDouble() * (high - low));
  }
}
