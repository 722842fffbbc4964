package rodwork.app.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.teeth.ToothHints;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CastOptions;
import rodwork.casework.store.CaseFile;
import rodwork.casework.store.CaseStore;
import rodwork.casework.store.Part;
import rodwork.casework.store.PartKind;
import rodwork.casework.store.PartName;
import rodwork.geometry.Vec3;
import rodwork.geometry.io.LengthUnit;

/**
 * The bench's own document of one jaw, as a case keeps it, and what it says of the scan: the unit
 * and the directions that a person told hold wherever the case is opened.
 *
 * @param json the whole; an empty object where the bench kept nothing
 */
public record BenchWork(JsonNode json) {
  private static final String LABEL = "bench.json";
  private static final String FORMAT = "rodwork bench";
  private static final String UNIT = "unit";

  /** Where it is kept. */
  public static PartName name(Jaw jaw) {
    return new PartName(PartKind.DOCUMENT, jaw, LABEL);
  }

  /** Whether a part of a case is one. */
  public static boolean is(PartName part) {
    return part.kind() == PartKind.DOCUMENT && part.label().equals(LABEL);
  }

  /** One in the making. */
  public static ObjectNode begun(Optional<LengthUnit> unit) {
    ObjectNode json = Json.object().put("format", FORMAT).put("version", 1);
    return json.put(UNIT, unit.map(BenchWork::word).orElse(null));
  }

  /**
   * That of a jaw of a case.
   *
   * @throws rodwork.geometry.Refusal if it is no JSON
   */
  public static BenchWork of(CaseStore store, CaseFile file, Jaw jaw) {
    Part kept = file.now().parts().get(name(jaw));
    if (kept == null) {
      return new BenchWork(Json.object());
    }
    try {
      return new BenchWork(Json.read(new String(store.read(kept), StandardCharsets.UTF_8)));
    } catch (JsonProcessingException broken) {
      throw AppRefusal.JSON_WRONG.with(
          LABEL + " of case " + file.code(), "it is no JSON (" + broken.getOriginalMessage() + ")");
    }
  }

  /** Unit of the scan file as it was told; empty: it is to be found. */
  public Optional<LengthUnit> unit() {
    return json.hasNonNull(UNIT)
        ? CastOptions.unitNamed(json.get(UNIT).asText())
        : Optional.empty();
  }

  /** Directions as they were told. */
  public FrameHints hints() {
    return hints(json.path("bench").path("document").path("frame"), LABEL);
  }

  /**
   * The teeth that were pointed at, merged, cut and numbered on the bench.
   *
   * @param missing that the chart of the case calls so: a place on one of them is void
   */
  public ToothHints teeth(Jaw jaw, Set<Integer> missing) {
    ToothHints said =
        new ToothHintsReader(jaw, why -> AppRefusal.JSON_WRONG.with(LABEL, why))
            .hints(Set.of(), json.path("bench").path("document").path("teeth"));
    return new ToothHints(
        missing,
        said.points().stream().filter(point -> !missing.contains(point.fdi())).toList(),
        said.pins().stream().filter(pin -> !missing.contains(pin.fdi())).toList());
  }

  /** The members "up" and "front" of an object of a part. */
  static FrameHints hints(JsonNode frame, String part) {
    return new FrameHints(direction(frame, "up", part), direction(frame, "front", part));
  }

  private static @Nullable Vec3 direction(JsonNode frame, String name, String part) {
    return frame.path(name).isArray()
        ? JsonTriples.triple(frame.get(name), part, "\"" + name + "\"")
        : null;
  }

  static String word(LengthUnit unit) {
    return switch (unit) {
      case CENTIMETRE -> "cm";
      case METRE -> "m";
      case INCH -> "in";
      default -> "mm";
    };
  }
}
