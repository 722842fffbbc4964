package rodwork.app.report;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.teeth.ToothHints;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;

/**
 * Reads the places that a person pointed at on the bench, {@code
 * {"points":[{"tooth","point"}],"pins":[{"tooth","point","radiusMm"}]}}: docs/protocol.md.
 *
 * @param jaw that all the teeth belong to
 * @param wrong the refusal of what cannot be used, by what is wrong with it
 */
public record ToothHintsReader(Jaw jaw, Function<String, Refusal> wrong) {

  /**
   * With teeth that are missing.
   *
   * @throws Refusal if something is no tooth or place, or two things contradict each other
   */
  public ToothHints hints(Set<Integer> missing, JsonNode said) {
    try {
      return new ToothHints(missing, points(said), pins(said));
    } catch (IllegalArgumentException contradicted) {
      throw wrong.apply(String.valueOf(contradicted.getMessage()));
    }
  }

  private List<ToothHints.Point> points(JsonNode said) {
    List<ToothHints.Point> points = new ArrayList<>();
    for (JsonNode one : said.path("points")) {
      points.add(new ToothHints.Point(fdi(one.path("tooth")), place(one)));
    }
    return points;
  }

  private List<ToothHints.Pin> pins(JsonNode said) {
    List<ToothHints.Pin> pins = new ArrayList<>();
    for (JsonNode one : said.path("pins")) {
      JsonNode tooth = one.path("tooth");
      int fdi = tooth.isInt() && tooth.asInt() == ToothLabels.GUM ? ToothLabels.GUM : fdi(tooth);
      pins.add(new ToothHints.Pin(fdi, place(one), one.path("radiusMm").asDouble()));
    }
    return pins;
  }

  private Vec3 place(JsonNode one) {
    JsonNode point = one.path("point");
    boolean three = point.isArray() && point.size() == 3;
    for (JsonNode number : point) {
      three &= number.isNumber() && Double.isFinite(number.asDouble());
    }
    if (!three) {
      throw wrong.apply("point is not three numbers");
    }
    return new Vec3(point.get(0).asDouble(), point.get(1).asDouble(), point.get(2).asDouble());
  }

  /** The number of a tooth of the jaw. */
  public int fdi(JsonNode number) {
    if (!number.isInt() || !ToothNumber.exists(number.asInt())) {
      throw wrong.apply("a tooth is " + number + ", which is no FDI number of a permanent tooth");
    }
    ToothNumber tooth = ToothNumber.of(number.asInt());
    if (tooth.jaw() != jaw) {
      throw wrong.apply("tooth " + tooth + " is not in the " + Words.jaw(jaw) + " jaw");
    }
    return tooth.fdi();
  }
}
