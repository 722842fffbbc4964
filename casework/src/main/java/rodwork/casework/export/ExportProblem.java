package rodwork.casework.export;

import java.io.IOException;
import java.nio.file.Path;
import rodwork.geometry.Refusal;

/** Why files for other programs cannot be written. */
public enum ExportProblem {
  UNWRITABLE("export-unwritable", "The files cannot be written to %s: %s.");

  private final String code;
  private final String text;

  ExportProblem(String code, String text) {
    this.code = code;
    this.text = text;
  }

  Refusal with(Path folder, IOException failure) {
    String said = failure.getMessage();
    return new Refusal(
        code,
        String.format(text, folder, said == null ? failure.getClass().getSimpleName() : said),
        "Check that the folder may be made and written to, and has room.");
  }
}
