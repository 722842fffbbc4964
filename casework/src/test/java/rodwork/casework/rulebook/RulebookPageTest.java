package rodwork.casework.rulebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * The page of rules holds all of the rulebook, every formula stands in the code's own
 * documentation, and docs/formulas.md is the page; {@code -Drodwork.write=true} writes it anew.
 */
class RulebookPageTest {
  private static final Path ROOT = Path.of(System.getProperty("rodwork.root", ".."));
  private static final RulebookPage PAGE = RulebookPage.of(Rulebook.shipped());

  @Test
  void thePageInTheDocsIsNotStale() throws IOException {
    Path page = ROOT.resolve("docs/formulas.md");
    String text = RulebookText.markdown(PAGE);
    if (Boolean.getBoolean("rodwork.write")) {
      Files.writeString(page, text);
    }
    assertThat(Files.readString(page))
        .as("docs/formulas.md; mvn test -pl casework -am -Drodwork.write=true writes it anew")
        .isEqualTo(text);
  }

  @Test
  void everyIdOfTheRulebookIsOnThePage() {
    Set<String> told = new HashSet<>();
    for (RulebookPage.Section s : PAGE.sections()) {
      s.rows().forEach(told::addAll);
    }
    List<String> ids = new ArrayList<>();
    // Thresholds begin a line as "id: {", everything else says "id: name".
    Matcher thresholds =
        Pattern.compile("(?m)^    ([a-z0-9-]+): \\{(?:value|unit)")
            .matcher(Rulebook.shipped().text());
    while (thresholds.find()) {
      ids.add(thresholds.group(1));
    }
    int beforeOthers = ids.size();
    Matcher others =
        Pattern.compile("(?m)^ +- (?:\\{)?id: ([a-z0-9-]+)").matcher(Rulebook.shipped().text());
    while (others.find()) {
      ids.add(others.group(1));
    }
    assertThat(beforeOthers).isGreaterThan(130);
    assertThat(ids.size() - beforeOthers).isGreaterThan(100);
    // Sides of conflicts stand behind their conflict, the one taken with its reason.
    List<String> lost =
        ids.stream()
            .filter(id -> !told.contains(id))
            .filter(id -> told.stream().noneMatch(t -> t.startsWith(id + " (taken")))
            .toList();
    assertThat(lost).isEmpty();
  }

  @Test
  void everyFormulaStandsInTheDocumentationOfItsClass() throws IOException {
    assertThat(Formula.all()).hasSizeGreaterThan(25);
    for (Formula f : Formula.all()) {
      int slash = f.code().indexOf('/');
      Path source =
          ROOT.resolve(f.code().substring(0, slash))
              .resolve("src/main/java/rodwork")
              .resolve(f.code() + ".java");
      assertThat(source).as(f.id()).exists();
      String said = plain(Files.readString(source));
      assertThat(said).as(f.id() + " in " + source).contains(plain(f.says()));
    }
  }

  @Test
  void everyThresholdOfAFormulaIsInTheRulebook() {
    for (Formula f : Formula.all()) {
      for (String id : f.uses()) {
        assertThat(Rulebook.shipped().text()).as(f.id()).contains("    " + id + ": {");
      }
    }
    assertThat(Formula.all().stream().map(Formula::id)).doesNotHaveDuplicates();
  }

  @Test
  void thePageEscapesWhatARulebookSays() {
    String text =
        Rulebook.shipped()
            .text()
            .replace("five times the largest gauge", "five <b>times</b> & more|");
    RulebookPage page = RulebookPage.of(Rulebook.of("mine", text));
    assertThat(RulebookText.html(page))
        .contains("five &lt;b&gt;times&lt;/b&gt; &amp; more|")
        .doesNotContain("five <b>");
    assertThat(RulebookText.markdown(page)).contains("more\\|");
  }

  /** Without line breaks and marks of a comment. */
  private static String plain(String text) {
    return text.replaceAll("\\n *\\*(?: |(?=\\n))", " ")
        .replaceAll("<[a-z/]+>", " ")
        .replaceAll("\\s+", " ");
  }
}
