package rodwork.casework.rulebook;

import java.util.List;
import java.util.stream.Collectors;

/** The page of rules as Markdown and as HTML. */
public final class RulebookText {
  /** What must be read with it. */
  public static final String CAUTION =
      "An aid. The prescriber examines the patient, decides and signs. Enamel is not visible in a"
          + " scan, and removing it cannot be undone. Many figures are taught or remembered, not"
          + " measured: see the standing of each.";

  private RulebookText() {}

  /** As Markdown. */
  public static String markdown(RulebookPage page) {
    StringBuilder text = new StringBuilder();
    text.append("# Formulas and rules\n\n")
        .append("Generated from the rulebook \"")
        .append(page.title())
        .append(
            "\" and the formulas of the code; `rodwork rulebook --page FILE` writes the same for a"
                + " copy.\n\n")
        .append(CAUTION)
        .append('\n');
    for (RulebookPage.Section s : page.sections()) {
      text.append("\n## ").append(s.title()).append("\n\n");
      if (!s.intro().isEmpty()) {
        text.append(s.intro()).append("\n\n");
      }
      row(text, s.columns());
      row(text, s.columns().stream().map(_ -> "---").toList());
      s.rows().forEach(r -> row(text, r));
    }
    return text.toString();
  }

  private static void row(StringBuilder text, List<String> cells) {
    text.append(
        cells.stream()
            .map(c -> c.replace("|", "\\|").replace('\n', ' '))
            .collect(Collectors.joining(" | ", "| ", " |\n")));
  }

  /** The look of pages to read, as CSS. */
  public static String look() {
    return Resources.text("rules-page.css");
  }

  /** As one HTML page that needs nothing from elsewhere. */
  public static String html(RulebookPage page) {
    StringBuilder text = new StringBuilder();
    text.append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .append("<title>Formulas and rules – Rodwork</title>\n<style>\n")
        .append(look())
        .append("</style>\n</head>\n<body>\n<header><h1>Formulas and rules</h1>\n<p>")
        .append(escaped(page.title()))
        .append(" <span class=\"hash\">SHA-256 ")
        .append(escaped(page.hash()))
        .append("</span></p>\n<p class=\"caution\">")
        .append(CAUTION)
        .append("</p></header>\n<nav><ul>\n");
    for (RulebookPage.Section s : page.sections()) {
      text.append("<li><a href=\"#")
          .append(s.id())
          .append("\">")
          .append(escaped(s.title()))
          .append("</a></li>\n");
    }
    text.append("</ul></nav>\n<main>\n");
    for (RulebookPage.Section s : page.sections()) {
      section(text, s);
    }
    return text.append("</main>\n</body>\n</html>\n").toString();
  }

  private static void section(StringBuilder text, RulebookPage.Section s) {
    text.append("<section id=\"")
        .append(s.id())
        .append("\">\n<h2>")
        .append(escaped(s.title()))
        .append("</h2>\n");
    if (!s.intro().isEmpty()) {
      text.append("<p>").append(escaped(s.intro())).append("</p>\n");
    }
    boolean formulas = s.id().startsWith("formulas-");
    text.append("<table>\n<thead><tr>");
    s.columns().forEach(c -> text.append("<th scope=\"col\">").append(escaped(c)).append("</th>"));
    text.append("</tr></thead>\n<tbody>\n");
    for (List<String> row : s.rows()) {
      text.append("<tr>");
      for (int i = 0; i < row.size(); i++) {
        text.append(formulas && i == 1 ? "<td class=\"formula\">" : "<td>")
            .append(escaped(row.get(i)))
            .append("</td>");
      }
      text.append("</tr>\n");
    }
    text.append("</tbody>\n</table>\n</section>\n");
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
