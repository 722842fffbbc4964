package rodwork.app.server;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.IntNode;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.AppRefusal;
import rodwork.app.operation.GaugeSizes;
import rodwork.app.operation.WantedPath;
import rodwork.app.report.ChartReader;
import rodwork.app.report.Json;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.survey.Gauges;
import rodwork.survey.Tilt;

/** What requests carry, read and checked; all else is {@code request-unreadable}. */
final class Requests {
  /** Beyond this a cast has no business under a rod. */
  private static final double MOST_TILT_DEG = 45;

  private Requests() {}

  /** The body of a request; an empty one is an empty object. */
  static JsonNode json(Context request) {
    String text = request.body();
    try {
      return text.isBlank() ? Json.object() : Json.read(text);
    } catch (JsonProcessingException broken) {
      throw unreadable("the body is no JSON (" + broken.getOriginalMessage() + ")");
    }
  }

  /** The browser's own count. */
  static long seq(JsonNode message) {
    JsonNode seq = message.path("seq");
    if (!seq.canConvertToLong()) {
      throw unreadable("seq is missing or no whole number");
    }
    return seq.asLong();
  }

  static Vec3 vector(JsonNode node, String name) {
    if (!node.isArray() || node.size() != 3) {
      throw unreadable(name + " is not three numbers");
    }
    return new Vec3(
        number(node.get(0), name), number(node.get(1), name), number(node.get(2), name));
  }

  static Tilt tilt(JsonNode message) {
    return tilt(message, "tilt");
  }

  /** A tilt under a name of its own. */
  static Tilt tilt(JsonNode message, String name) {
    JsonNode tilt = message.path(name);
    if (!tilt.isArray() || tilt.size() != 2) {
      throw unreadable(name + " is not two angles in degrees");
    }
    double anterior = number(tilt.get(0), name);
    double right = number(tilt.get(1), name);
    if (Math.max(Math.abs(anterior), Math.abs(right)) > MOST_TILT_DEG) {
      throw unreadable(
          "the tilt " + anterior + "°, " + right + "° goes beyond " + MOST_TILT_DEG + "°");
    }
    return new Tilt(anterior, right);
  }

  /** A withdrawal axis in the scan frame; it has a length. */
  static Vec3 axis(JsonNode message) {
    Vec3 axis = vector(message.path("axis"), "axis");
    if (!(axis.length() > 1e-9)) {
      throw unreadable("axis has no direction, its length is " + axis.length());
    }
    return axis;
  }

  /** Where the denture is to leave: an axis, a tilt, else the reference orientation. */
  static WantedPath path(JsonNode message) {
    if (message.hasNonNull("axis")) {
      return new WantedPath.AlongAxis(axis(message));
    }
    return message.hasNonNull("tilt")
        ? new WantedPath.AtTilt(tilt(message))
        : WantedPath.reference();
  }

  /** What a person says of the teeth; null: what was said when they were found. */
  static @Nullable Chart chart(JsonNode message) {
    return message.hasNonNull("chart")
        ? ChartReader.read(Json.pretty(message.get("chart")), "the chart of the request")
        : null;
  }

  static ToothNumber tooth(JsonNode fdi) {
    if (!fdi.isInt() || !ToothNumber.exists(fdi.asInt())) {
      throw unreadable(fdi + " is no FDI number; they run 11–18, 21–28, 31–38, 41–48");
    }
    return ToothNumber.of(fdi.asInt());
  }

  /** A tooth whose number is written as a word. */
  static ToothNumber tooth(String word) {
    int fdi =
        word.length() == 2 && word.chars().allMatch(c -> c >= '0' && c <= '9')
            ? Integer.parseInt(word)
            : 0;
    return tooth(IntNode.valueOf(fdi));
  }

  static Gauges gauges(JsonNode message) {
    JsonNode given = message.path("gauges");
    List<Double> sizes = new ArrayList<>();
    given.forEach(size -> sizes.add(number(size, "gauges")));
    String wrong = GaugeSizes.complaint(sizes);
    if (wrong != null) {
      throw unreadable(wrong);
    }
    return GaugeSizes.of(sizes);
  }

  /** The wanted gauge [mm]; empty where it is null or missing. */
  static Optional<Double> gauge(JsonNode message) {
    JsonNode given = message.path("gauge");
    if (given.isNull() || given.isMissingNode()) {
      return Optional.empty();
    }
    double size = number(given, "gauge");
    String wrong = GaugeSizes.complaint(List.of(size));
    if (wrong != null) {
      throw unreadable(wrong);
    }
    return Optional.of(size);
  }

  static int triangle(JsonNode message, int triangles) {
    return index(message.path("triangle"), "triangle", triangles);
  }

  /** A whole number from 0 to below a limit. */
  static int index(JsonNode given, String name, int below) {
    if (!given.isInt() || given.asInt() < 0 || given.asInt() >= below) {
      throw unreadable(name + " is " + given + ", not within 0 to " + (below - 1));
    }
    return given.asInt();
  }

  static double number(JsonNode node, String name) {
    if (!node.isNumber() || !Double.isFinite(node.asDouble())) {
      throw unreadable(name + " holds " + node + ", which is no number");
    }
    return node.asDouble();
  }

  static Refusal unreadable(String why) {
    return AppRefusal.REQUEST_UNREADABLE.with(why);
  }
}
