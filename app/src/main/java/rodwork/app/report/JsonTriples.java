package rodwork.app.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import rodwork.app.AppRefusal;
import rodwork.geometry.Vec3;

/** Reading small JSON files that a person or a program wrote: points and what hangs on them. */
public final class JsonTriples {
  /** No file of picked points is longer; a scan given by mistake is not read into memory. */
  private static final long LARGEST = 16L << 20;

  private JsonTriples() {}

  /**
   * Reads a file.
   *
   * @throws rodwork.geometry.Refusal if it cannot be read or is no JSON
   */
  public static JsonNode file(Path file) {
    try {
      return Json.read(text(file));
    } catch (JsonProcessingException wrong) {
      throw AppRefusal.JSON_WRONG.with(
          file.getFileName(),
          "it is no JSON (line "
              + (wrong.getLocation() == null ? 0 : wrong.getLocation().getLineNr())
              + ")");
    }
  }

  /**
   * The text of a file.
   *
   * @throws rodwork.geometry.Refusal if it cannot be read or is too large
   */
  public static String text(Path file) {
    try {
      if (Files.size(file) > LARGEST) {
        throw AppRefusal.JSON_WRONG.with(
            file.getFileName(), "it is larger than " + (LARGEST >> 20) + " MiB");
      }
      return Files.readString(file);
    } catch (NoSuchFileException absent) {
      throw AppRefusal.FILE_UNREADABLE.with(file, "there is no such file");
    } catch (IOException failed) {
      throw AppRefusal.FILE_UNREADABLE.with(file, String.valueOf(failed.getMessage()));
    }
  }

  /**
   * A triple of finite numbers.
   *
   * @param name what messages call the file
   * @param what what messages call the triple
   */
  public static Vec3 triple(JsonNode json, String name, String what) {
    if (!json.isArray() || json.size() != 3) {
      throw AppRefusal.JSON_WRONG.with(name, what + " is no array of three numbers");
    }
    for (JsonNode number : json) {
      if (!number.isNumber() || !Double.isFinite(number.asDouble())) {
        throw AppRefusal.JSON_WRONG.with(name, what + " holds " + number + ", which is no number");
      }
    }
    return new Vec3(json.get(0).asDouble(), json.get(1).asDouble(), json.get(2).asDouble());
  }

  /** An array of triples; objects with a member {@code point} are taken too. */
  public static List<Vec3> points(JsonNode json, String name) {
    if (!json.isArray()) {
      throw AppRefusal.JSON_WRONG.with(name, "it is no array of points");
    }
    List<Vec3> points = new ArrayList<>();
    for (JsonNode one : json) {
      points.add(
          triple(one.has("point") ? one.get("point") : one, name, "point " + (points.size() + 1)));
    }
    return points;
  }
}
