package rodwork.casework.prescription;

import java.util.List;

/** Writes well-formed XHTML; mutable. Every text is escaped. */
final class Html {
  private final StringBuilder text = new StringBuilder();

  /** Markup of our own, as it is. */
  Html raw(String markup) {
    text.append(markup);
    return this;
  }

  Html text(String words) {
    for (int i = 0; i < words.length(); i++) {
      char c = words.charAt(i);
      switch (c) {
        case '<' -> text.append("&lt;");
        case '>' -> text.append("&gt;");
        case '&' -> text.append("&amp;");
        case '"' -> text.append("&quot;");
        case '\n' -> text.append("<br/>");
        default -> {
          // XML 1.0 knows no other control characters.
          if (c >= ' ' && c != '\uFFFE' && c != '\uFFFF') {
            text.append(c);
          }
        }
      }
    }
    return this;
  }

  Html heading(String words) {
    return raw("<h2>").text(words).raw("</h2>");
  }

  Html list(List<String> lines) {
    raw("<ul>");
    lines.forEach(line -> raw("<li>").text(line).raw("</li>"));
    return raw("</ul>");
  }

  Html paragraph(String words) {
    return raw("<p>").text(words).raw("</p>");
  }

  /** A row of a table of fields: the name, and what was filled in or a blank to write on. */
  Html field(String name, String value) {
    raw("<tr><th>").text(name).raw("</th>");
    return value.isEmpty()
        ? raw("<td class=\"blank\">&#160;</td></tr>")
        : raw("<td>").text(value).raw("</td></tr>");
  }

  Html row(String tag, List<String> cells) {
    raw("<tr>");
    cells.forEach(cell -> raw("<" + tag + ">").text(cell).raw("</" + tag + ">"));
    return raw("</tr>");
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
