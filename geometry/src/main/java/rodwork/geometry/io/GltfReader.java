package rodwork.geometry.io;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayInputStream;
import java.io.CharConversionException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;

/**
 * glTF 2.0 (Khronos Group; ISO/IEC 12113), as text with its buffers embedded, or binary (GLB).
 *
 * <p>This class finds the JSON and the buffers; {@link GltfScene} makes the mesh of them. The JSON
 * may take a thirty-second part of the heap, since its tree is many times its text.
 */
final class GltfReader {
  private static final int JSON_CHUNK = 0x4E4F534A;
  private static final int BIN_CHUNK = 0x004E4942;
  private static final int MAX_DEPTH = 200;
  private static final long LEAST_JSON_BYTES = 32L << 20;

  private final Input in;
  private final Budget budget;
  private final long maxJsonBytes =
      Math.min(
          Integer.MAX_VALUE - 64,
          Math.max(LEAST_JSON_BYTES, Runtime.getRuntime().maxMemory() / 32));

  private GltfReader(Input in, Budget budget) {
    this.in = in;
    this.budget = budget;
  }

  static RawMesh readText(Input in, Budget budget) {
    GltfReader reader = new GltfReader(in, budget);
    JsonNode root = reader.json(in.asStream());
    return new GltfScene(root, reader.buffers(root, new byte[0]), in, Format.GLTF, budget).read();
  }

  static RawMesh readBinary(Input in, Budget budget) {
    return new GltfReader(in, budget).binary();
  }

  private RawMesh binary() {
    if (!in.has(12)) {
      throw IoProblem.GLB_CUT_OFF.refusal(in.name(), "header", 12, in.fill(12));
    }
    int version = in.intLeAt(in.position() + 4);
    if (version != 2) {
      throw IoProblem.GLTF_VERSION.refusal(in.name(), version);
    }
    in.advance(12);
    byte[] text = chunk(JSON_CHUNK, maxJsonBytes);
    byte[] binary = in.has(8) ? chunk(BIN_CHUNK, Integer.MAX_VALUE) : new byte[0];
    JsonNode root = json(new ByteArrayInputStream(text));
    return new GltfScene(root, buffers(root, binary), in, Format.GLB, budget).read();
  }

  /** The next chunk, if it is of this kind; grown as its bytes come in, whatever it announces. */
  private byte[] chunk(int kind, long most) {
    if (!in.has(8)) {
      throw IoProblem.GLB_CUT_OFF.refusal(in.name(), "chunk header", 8, in.fill(8));
    }
    long announced = Integer.toUnsignedLong(in.intLeAt(in.position()));
    if (in.intLeAt(in.position() + 4) != kind) {
      if (kind == JSON_CHUNK) {
        throw IoProblem.GLTF_STRUCTURE.refusal(in.name(), "the first chunk is no JSON");
      }
      return new byte[0]; // a chunk of an extension
    }
    in.advance(8);
    if (announced > most) {
      throw IoProblem.GLTF_JSON_TOO_LARGE.refusal(in.name(), most >> 20);
    }
    byte[] bytes = new byte[(int) Math.min(announced, 1 << 16)];
    budget.take(bytes.length);
    int filled = 0;
    while (filled < announced) {
      if (!in.has(1)) {
        throw IoProblem.GLB_CUT_OFF.refusal(in.name(), "chunk", announced, filled);
      }
      if (filled == bytes.length) {
        int size = (int) Math.min(announced, budget.grown(filled, filled + 1L));
        budget.take(size);
        budget.give(bytes.length);
        bytes = Arrays.copyOf(bytes, size);
      }
      int got = Math.min(in.limit() - in.position(), bytes.length - filled);
      System.arraycopy(in.window(), in.position(), bytes, filled, got);
      in.advance(got);
      filled += got;
    }
    return bytes;
  }

  private JsonNode json(InputStream text) {
    StreamReadConstraints limits =
        StreamReadConstraints.builder()
            .maxDocumentLength(maxJsonBytes)
            .maxStringLength((int) maxJsonBytes)
            .maxNestingDepth(MAX_DEPTH)
            .build();
    JsonFactory factory = JsonFactory.builder().streamReadConstraints(limits).build();
    try {
      JsonNode root = JsonMapper.builder(factory).build().readTree(text);
      if (!root.path("asset").path("version").isTextual()) {
        throw IoProblem.GLTF_STRUCTURE.refusal(in.name(), "asset.version is missing");
      }
      return root;
    } catch (StreamConstraintsException e) {
      throw IoProblem.GLTF_JSON_TOO_LARGE.refusal(in.name(), maxJsonBytes >> 20);
    } catch (JsonProcessingException e) {
      long line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
      throw IoProblem.GLTF_JSON.refusal(in.name(), Sentence.of("line {line}", line));
    } catch (CharConversionException e) {
      throw IoProblem.GLTF_JSON.refusal(in.name(), "a place that is no Unicode text");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<byte[]> buffers(JsonNode root, byte[] binary) {
    List<byte[]> buffers = new ArrayList<>();
    for (JsonNode buffer : root.path("buffers")) {
      JsonNode uri = buffer.path("uri");
      byte[] bytes = uri.isTextual() ? embedded(uri.textValue()) : binary;
      long announced = buffer.path("byteLength").asLong(-1);
      if (announced < 0 || announced > bytes.length) {
        throw IoProblem.GLTF_BUFFER.refusal(in.name(), buffers.size(), announced, bytes.length);
      }
      buffers.add(bytes);
    }
    return buffers;
  }

  private byte[] embedded(String uri) {
    int comma = uri.indexOf(',');
    if (!uri.startsWith("data:") || comma < 0) {
      String shown = uri.substring(0, Math.min(60, uri.length()));
      throw IoProblem.GLTF_EXTERNAL.refusal(in.name(), shown);
    }
    if (!uri.substring(0, comma).endsWith(";base64")) {
      throw IoProblem.GLTF_STRUCTURE.refusal(in.name(), "an embedded buffer is not in base64");
    }
    budget.take(3L * (uri.length() - comma) / 4);
    try {
      return Base64.getDecoder().decode(uri.substring(comma + 1));
    } catch (IllegalArgumentException e) {
      throw IoProblem.GLTF_STRUCTURE.refusal(
          in.name(), "an embedded buffer is not in base64 (" + e.getMessage() + ")");
    }
  }
}
