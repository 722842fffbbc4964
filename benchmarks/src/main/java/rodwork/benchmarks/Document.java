package rodwork.benchmarks;

/** Parts of a Markdown page that a program writes, each between two marker comments. */
final class Document {
  private Document() {}

  private static String begin(String name) {
    return "<!-- " + name + ": begin -->\n";
  }

  private static String end(String name) {
    return "<!-- " + name + ": end -->";
  }

  /** The page with another text between the markers of that name. */
  static String replaceBlock(String page, String name, String text) {
    int from = at(page, begin(name)) + begin(name).length();
    int to = at(page, end(name));
    return page.substring(0, from) + "\n" + text.strip() + "\n\n" + page.substring(to);
  }

  /**
   * The page with a row in the table between the markers of that name: in the place of the row with
   * the same first two cells, or at the end.
   */
  static String upsertRow(String page, String name, String row) {
    int from = at(page, begin(name)) + begin(name).length();
    int to = at(page, end(name));
    StringBuilder table = new StringBuilder();
    boolean placed = false;
    for (String line : page.substring(from, to).strip().lines().toList()) {
      boolean same = key(line).equals(key(row));
      table.append(same ? row : line).append('\n');
      placed |= same;
    }
    return replaceBlock(page, name, placed ? table.toString() : table + row);
  }

  private static String key(String row) {
    String[] cells = row.split("\\|", -1);
    return cells.length < 3 ? row : cells[1].strip() + "|" + cells[2].strip();
  }

  private static int at(String page, String marker) {
    int at = page.indexOf(marker);
    if (at < 0) {
      throw new IllegalArgumentException("the page lacks the marker " + marker.strip());
    }
    return at;
  }
}
