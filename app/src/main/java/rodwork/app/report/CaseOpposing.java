package rodwork.app.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.OpposingScan;
import rodwork.casework.store.CaseEdit;
import rodwork.casework.store.CaseFile;
import rodwork.casework.store.CaseStore;
import rodwork.casework.store.Part;
import rodwork.casework.store.PartKind;
import rodwork.casework.store.PartName;
import rodwork.geometry.Watch;
import rodwork.geometry.io.LengthUnit;

/**
 * The opposing scan of a jaw as a case keeps it: the files byte for byte and how they were
 * understood, so that it is laid over the cast again in the same way. docs/case-store.md.
 *
 * @param opposing the scan of the other jaw
 * @param bite the scan of both in occlusion that it was laid by; null: it shares the frame of the
 *     cast
 */
public record CaseOpposing(ScanFile opposing, @Nullable ScanFile bite) {
  private static final String LABEL = "opposing.json";
  private static final String FORMAT = "rodwork opposing scan";
  private static final String UNIT = "unit";

  /**
   * A scan file and what a person said of it. The array must not be changed.
   *
   * @param name of the file
   * @param content byte for byte
   * @param options unit, jaw and directions
   */
  public record ScanFile(String name, byte[] content, CastOptions options) {
    public OpenedCast open(Watch watch) {
      return OpenCast.of(content, name, options, watch);
    }

    /** Whether it is that content. */
    public boolean is(Part part) {
      return Part.of(content).equals(part);
    }
  }

  /** Lays it over the cast. */
  public OpposingScan over(OpenedCast cast, Watch watch) {
    ScanFile both = bite;
    return OpposingScan.of(
        cast,
        opposing.open(watch),
        both == null ? null : OpenCast.takeIn(both.content(), both.name(), both.options(), watch),
        watch);
  }

  /** The edit that keeps it in a case, or that takes away what is kept where there is none. */
  public static CaseEdit edit(
      CaseEdit edit, @Nullable CaseFile before, Jaw jaw, @Nullable CaseOpposing now) {
    CaseEdit more = edit;
    if (before != null) {
      for (PartName there : before.now().parts().keySet()) {
        boolean whose = there.jaw() == jaw || there.jaw() == Jaw.UNKNOWN;
        boolean scan = there.kind() == PartKind.OPPOSING || there.kind() == PartKind.BITE;
        if (whose && (scan || there.equals(document(there.jaw())))) {
          more = more.drop(there);
        }
      }
    }
    if (now == null) {
      return more;
    }
    more =
        put(more, before, new PartName(PartKind.OPPOSING, jaw, now.opposing.name()), now.opposing);
    ScanFile both = now.bite;
    if (both != null) {
      more = put(more, before, new PartName(PartKind.BITE, jaw, both.name()), both);
    }
    return more.put(document(jaw), CaseSaid.bytes(now.json()));
  }

  /** A scan that is there already is left where it lies. */
  private static CaseEdit put(
      CaseEdit edit, @Nullable CaseFile before, PartName name, ScanFile scan) {
    Part there = before == null ? null : before.now().parts().get(name);
    return there != null && scan.is(there) ? edit.keep(name) : edit.put(name, scan.content());
  }

  private ObjectNode json() {
    ObjectNode json = Json.object().put("format", FORMAT).put("version", 1);
    json.put(UNIT, opposing.options().unit().map(BenchWork::word).orElse(null));
    json.put("jaw", Words.jaw(opposing.options().jaw()));
    FrameHints hints = opposing.options().hints();
    json.set("up", hints.up() == null ? null : Json.direction(hints.up()));
    json.set("front", hints.front() == null ? null : Json.direction(hints.front()));
    ScanFile both = bite;
    if (both == null) {
      json.putNull("bite");
    } else {
      json.putObject("bite").put(UNIT, both.options().unit().map(BenchWork::word).orElse(null));
    }
    return json;
  }

  /**
   * That of a jaw of a case; empty where the case keeps none.
   *
   * @throws rodwork.geometry.Refusal if it is damaged
   */
  public static Optional<CaseOpposing> of(CaseStore store, CaseFile file, Jaw jaw) {
    Map.Entry<PartName, Part> scan = file.part(PartKind.OPPOSING, jaw).orElse(null);
    if (scan == null) {
      return Optional.empty();
    }
    JsonNode said = said(store, file, jaw);
    CastOptions options =
        new CastOptions(
            CastOptions.jawNamed(said.path("jaw").asText()).orElse(Jaw.UNKNOWN),
            BenchWork.hints(said, LABEL),
            unit(said));
    ScanFile opposing = new ScanFile(scan.getKey().label(), store.read(scan.getValue()), options);
    ScanFile bite =
        file.part(PartKind.BITE, jaw)
            .map(
                both ->
                    new ScanFile(
                        both.getKey().label(),
                        store.read(both.getValue()),
                        new CastOptions(Jaw.UNKNOWN, FrameHints.NONE, unit(said.path("bite")))))
            .orElse(null);
    return Optional.of(new CaseOpposing(opposing, bite));
  }

  private static JsonNode said(CaseStore store, CaseFile file, Jaw jaw) {
    Part part = file.now().parts().get(document(jaw));
    if (part == null) {
      return Json.object();
    }
    try {
      return Json.read(new String(store.read(part), StandardCharsets.UTF_8));
    } catch (JsonProcessingException broken) {
      throw AppRefusal.JSON_WRONG.with(
          LABEL + " of case " + file.code(), "it is no JSON (" + broken.getOriginalMessage() + ")");
    }
  }

  private static Optional<LengthUnit> unit(JsonNode said) {
    return said.hasNonNull(UNIT)
        ? CastOptions.unitNamed(said.get(UNIT).asText())
        : Optional.empty();
  }

  private static PartName document(Jaw jaw) {
    return new PartName(PartKind.DOCUMENT, jaw, LABEL);
  }
}
