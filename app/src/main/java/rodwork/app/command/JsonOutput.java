package rodwork.app.command;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import rodwork.app.report.Json;
import rodwork.app.report.OutputFile;

/** Puts JSON into a file, or onto stdout where the file is called {@code -}. */
final class JsonOutput {
  static final String STDOUT = "-";

  private JsonOutput() {}

  static void write(String file, JsonNode json, PrintWriter out) {
    if (file.equals(STDOUT)) {
      out.println(Json.pretty(json));
    } else {
      OutputFile.write(
          Path.of(file),
          to -> to.write((Json.pretty(json) + "\n").getBytes(StandardCharsets.UTF_8)));
    }
  }
}
