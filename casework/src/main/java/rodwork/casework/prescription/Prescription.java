package rodwork.casework.prescription;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.StreamSupport;
import rodwork.rules.Wording;

/**
 * One revision of a prescription. Immutable.
 *
 * @param revision 1 for the first
 * @param hash SHA-256 of the content as compact JSON: the same content has the same hash
 * @param changes against the revision before, one line each; empty in the first
 * @param content what is asked; not to be changed
 */
public record Prescription(int revision, String hash, List<Wording> changes, JsonNode content) {
  public static final String FORMAT = "rodwork prescription";
  public static final int VERSION = 1;

  private static final ObjectMapper MAPPER = new ObjectMapper();

  public Prescription {
    changes = List.copyOf(changes);
  }

  /** The first revision. */
  public static Prescription first(PrescriptionContent content) {
    JsonNode json = plain(content.json());
    return new Prescription(1, hash(json), List.of(), json);
  }

  /** The revision after another; the same one where nothing but the date is different. */
  public static Prescription after(Prescription before, PrescriptionContent content) {
    JsonNode json = plain(content.json());
    List<Wording> changes = Changes.between(before.content, json);
    return changes.isEmpty()
        ? before
        : new Prescription(before.revision + 1, hash(json), changes, json);
  }

  /** Numbers as a reader of the text sees them, so that written and read content are equal. */
  private static JsonNode plain(ObjectNode json) {
    try {
      return MAPPER.readTree(json.toString());
    } catch (JsonProcessingException impossible) {
      throw new IllegalStateException(impossible);
    }
  }

  /** As docs/schema/prescription.schema.json says. */
  public ObjectNode json() {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    json.put("version", VERSION);
    json.put("revision", revision);
    json.put("hash", hash);
    ArrayNode lines = json.putArray("changes");
    ArrayNode pieces = json.putArray("changePieces");
    for (Wording change : changes) {
      lines.add(change.fdi());
      ArrayNode line = pieces.addArray();
      for (Wording.Piece piece : change.pieces()) {
        switch (piece) {
          case Wording.Piece.Plain(String words) -> line.add(words);
          case Wording.Piece.Tooth(int fdi) -> line.add(fdi);
          case Wording.Piece.Fdi(String words) -> line.addObject().put("fdi", words);
        }
      }
    }
    json.set("content", content.deepCopy());
    return json;
  }

  /**
   * Reads a revision back, and checks its hash.
   *
   * @param name what messages call it
   */
  public static Prescription read(String text, String name) {
    JsonNode json;
    try {
      json = MAPPER.readTree(text);
    } catch (JsonProcessingException wrong) {
      throw PrescriptionProblem.PREVIOUS_WRONG.with(name, "it is no JSON");
    }
    JsonNode content = json.path("content");
    if (!json.path("format").asText().equals(FORMAT) || !content.isObject()) {
      throw PrescriptionProblem.PREVIOUS_WRONG.with(name, "its format is not \"" + FORMAT + "\"");
    }
    if (!hash(content).equals(json.path("hash").asText())) {
      throw PrescriptionProblem.PREVIOUS_WRONG.with(
          name, "its content is not what its hash says; it was changed by hand");
    }
    int revision = json.path("revision").asInt(-1);
    if (revision < 1) {
      throw PrescriptionProblem.PREVIOUS_WRONG.with(name, "its revision is no number from 1");
    }
    return new Prescription(revision, json.path("hash").asText(), lines(json), content);
  }

  /** Its changes; one that was kept before teeth stood apart in them has them as texts alone. */
  private static List<Wording> lines(JsonNode json) {
    return json.has("changePieces")
        ? StreamSupport.stream(json.path("changePieces").spliterator(), false)
            .map(Prescription::wording)
            .toList()
        : StreamSupport.stream(json.path("changes").spliterator(), false)
            .map(line -> Wording.of(new Wording.Piece.Fdi(line.asText())))
            .toList();
  }

  private static Wording wording(JsonNode pieces) {
    return Wording.of(
        StreamSupport.stream(pieces.spliterator(), false)
            .map(
                p ->
                    p.isInt()
                        ? new Wording.Piece.Tooth(p.asInt())
                        : p.isObject() ? new Wording.Piece.Fdi(p.path("fdi").asText()) : p.asText())
            .toArray());
  }

  private static String hash(JsonNode content) {
    try {
      return HexFormat.of()
          .formatHex(
              MessageDigest.getInstance("SHA-256")
                  .digest(content.toString().getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException(impossible);
    }
  }
}
