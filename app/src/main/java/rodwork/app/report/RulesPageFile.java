package rodwork.app.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import rodwork.app.AppRefusal;
import rodwork.casework.rulebook.Rulebook;
import rodwork.casework.rulebook.RulebookPage;
import rodwork.casework.rulebook.RulebookText;

/** Every formula and rule as a page, in the form that the ending of the file says. */
public final class RulesPageFile {
  public static final String FORMAT = "rodwork rules page";

  private RulesPageFile() {}

  /**
   * Writes the page of a rulebook.
   *
   * @throws rodwork.geometry.Refusal if the ending is not known or the file cannot be written
   */
  public static void write(Path file, Rulebook book) {
    RulebookPage page = RulebookPage.of(book);
    String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    String text;
    if (name.endsWith(".html")) {
      text = RulebookText.html(page);
    } else if (name.endsWith(".md")) {
      text = RulebookText.markdown(page);
    } else if (name.endsWith(".json")) {
      text = Json.pretty(json(page)) + "\n";
    } else {
      throw AppRefusal.PAGE_ENDING.with(file);
    }
    OutputFile.write(file, to -> to.write(text.getBytes(StandardCharsets.UTF_8)));
  }

  /** The page as JSON: sections with columns and rows. */
  public static ObjectNode json(RulebookPage page) {
    ObjectNode json = Json.object();
    json.put("format", FORMAT)
        .put("version", 1)
        .put("title", page.title())
        .put("hash", page.hash());
    json.put("caution", RulebookText.CAUTION);
    ArrayNode sections = json.putArray("sections");
    for (RulebookPage.Section s : page.sections()) {
      ObjectNode one = sections.addObject();
      one.put("id", s.id()).put("title", s.title()).put("intro", s.intro());
      one.set("columns", Json.texts(s.columns()));
      ArrayNode rows = one.putArray("rows");
      for (List<String> row : s.rows()) {
        rows.add(Json.texts(row));
      }
    }
    return json;
  }
}
