package rodwork.geometry.io;

import com.fasterxml.jackson.databind.JsonNode;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Optional;
import rodwork.geometry.Refusal;

/**
 * A typed view into the buffers of a glTF (section 3.6.2 of its specification): stride, offset,
 * component type, normalised integers, sparse replacements. Every place is checked against the real
 * buffer before the first value is read.
 */
final class GltfAccessor {
  private static final VarHandle SHORT =
      MethodHandles.byteArrayViewVarHandle(short[].class, ByteOrder.LITTLE_ENDIAN);
  private static final VarHandle INT =
      MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);

  private static final int BYTE = 5120;
  private static final int UNSIGNED_BYTE = 5121;
  private static final int UNSIGNED_SHORT = 5123;
  private static final int SIGNED_SHORT = 5122;
  private static final int UNSIGNED_INT = 5125;
  private static final int FLOAT = 5126;

  /** Where the values of one kind stand. */
  private record Stand(byte[] bytes, long from, int stride, int type) {}

  private final String file;
  private final JsonNode root;
  private final List<byte[]> buffers;
  private final String place;
  private final int parts;
  private final long count;
  private final boolean normalised;
  private final Optional<Stand> dense;

  private final long sparseCount;
  private final Optional<Stand> sparsePlaces;
  private final Optional<Stand> sparseValues;

  /**
   * @param number of the accessor in the file
   * @param type SCALAR or VEC3, as the use demands
   */
  GltfAccessor(String file, JsonNode root, List<byte[]> buffers, long number, String type) {
    this.file = file;
    this.root = root;
    this.buffers = buffers;
    this.place = "accessor " + number;
    this.parts = type.equals("VEC3") ? 3 : 1;
    JsonNode accessor = root.path("accessors").path((int) Math.min(number, Integer.MAX_VALUE));
    if (!accessor.isObject()) {
      throw bad("it is not there");
    }
    if (!accessor.path("type").asText().equals(type)) {
      throw bad("its type is " + accessor.path("type").asText() + " and not " + type);
    }
    count = whole(accessor, "count", -1);
    if (count < 1) {
      throw bad("its count is " + accessor.path("count"));
    }
    int componentType = (int) whole(accessor, "componentType", -1);
    normalised = accessor.path("normalized").asBoolean();
    dense =
        accessor.has("bufferView")
            ? Optional.of(stand(accessor, componentType, parts, count))
            : Optional.empty();
    JsonNode sparse = accessor.path("sparse");
    sparseCount = sparse.isMissingNode() ? 0 : whole(sparse, "count", -1);
    if (sparseCount < 0 || sparseCount > count) {
      throw bad("its sparse count is " + sparse.path("count") + " of " + count);
    }
    if (sparseCount > 0) {
      JsonNode places = sparse.path("indices");
      int placeType = (int) whole(places, "componentType", -1);
      sparsePlaces = Optional.of(stand(places, placeType, 1, sparseCount));
      sparseValues = Optional.of(stand(sparse.path("values"), componentType, parts, sparseCount));
    } else {
      sparsePlaces = Optional.empty();
      sparseValues = Optional.empty();
    }
    if (dense.isEmpty() && sparseCount == 0) {
      throw bad("it names no data");
    }
  }

  /** How many values there are. */
  long count() {
    return count;
  }

  /** All values, part by part, as numbers; normalised integers as shares of 1. */
  Doubles values(Budget budget) {
    Doubles values = new Doubles(budget, 0);
    for (long i = 0; i < count; i++) {
      for (int k = 0; k < parts; k++) {
        values.add(dense.isPresent() ? value(dense.get(), i, k) : 0);
      }
    }
    for (long s = 0; s < sparseCount; s++) {
      double at = raw(sparsePlaces.orElseThrow(), s, 0);
      if (!(at >= 0 && at < count)) {
        throw bad("a sparse value stands for place " + (long) at + " of " + count);
      }
      for (int k = 0; k < parts; k++) {
        values.set(parts * (int) at + k, value(sparseValues.orElseThrow(), s, k));
      }
    }
    return values;
  }

  private Stand stand(JsonNode holder, int type, int parts, long number) {
    long view = whole(holder, "bufferView", -1);
    JsonNode bufferView = root.path("bufferViews").path((int) Math.min(view, Integer.MAX_VALUE));
    if (view < 0 || !bufferView.isObject()) {
      throw bad("buffer view " + view + " is not there");
    }
    long buffer = whole(bufferView, "buffer", -1);
    if (buffer < 0 || buffer >= buffers.size()) {
      throw bad("buffer " + buffer + " is not there");
    }
    byte[] bytes = buffers.get((int) buffer);
    long viewFrom = whole(bufferView, "byteOffset", 0);
    long viewLength = whole(bufferView, "byteLength", -1);
    long offset = whole(holder, "byteOffset", 0);
    int size = parts * bytesOf(type);
    long stride = whole(bufferView, "byteStride", size);
    if (stride < size || (stride > 252 && stride != size)) {
      throw bad("its stride is " + stride + " bytes for values of " + size);
    }
    if (viewLength < 0 || viewFrom + viewLength > bytes.length) {
      throw bad("buffer view " + view + " ends behind its buffer of " + bytes.length + " bytes");
    }
    if (offset + stride * (number - 1) + size > viewLength) {
      throw bad("its " + number + " values end behind buffer view " + view);
    }
    return new Stand(bytes, viewFrom + offset, (int) stride, type);
  }

  private double value(Stand stand, long i, int part) {
    double value = raw(stand, i, part);
    if (!normalised || stand.type == FLOAT) {
      return value;
    }
    return switch (stand.type) {
      case BYTE -> Math.max(value / 127, -1);
      case UNSIGNED_BYTE -> value / 255;
      case SIGNED_SHORT -> Math.max(value / 32767, -1);
      case UNSIGNED_SHORT -> value / 65535;
      default -> value / 4294967295.0;
    };
  }

  private double raw(Stand stand, long i, int part) {
    int at = (int) (stand.from + stand.stride * i) + part * bytesOf(stand.type);
    byte[] bytes = stand.bytes;
    return switch (stand.type) {
      case BYTE -> bytes[at];
      case UNSIGNED_BYTE -> bytes[at] & 0xFF;
      case SIGNED_SHORT -> (short) SHORT.get(bytes, at);
      case UNSIGNED_SHORT -> (short) SHORT.get(bytes, at) & 0xFFFF;
      case UNSIGNED_INT -> (int) INT.get(bytes, at) & 0xFFFFFFFFL;
      default -> Float.intBitsToFloat((int) INT.get(bytes, at));
    };
  }

  private int bytesOf(int type) {
    return switch (type) {
      case BYTE, UNSIGNED_BYTE -> 1;
      case SIGNED_SHORT, UNSIGNED_SHORT -> 2;
      case UNSIGNED_INT, FLOAT -> 4;
      default -> throw bad("its component type is " + type);
    };
  }

  /** A whole number below 2^31 of a JSON object. */
  private long whole(JsonNode object, String field, long ifMissing) {
    JsonNode value = object.path(field);
    if (value.isMissingNode() || value.isNull()) {
      return ifMissing;
    }
    if (!value.isNumber() || value.doubleValue() != value.asInt() || value.asInt() < 0) {
      throw bad(field + " is " + shown(value));
    }
    return value.asInt();
  }

  private static String shown(JsonNode value) {
    String text = value.toString();
    return text.substring(0, Math.min(40, text.length()));
  }

  private Refusal bad(String what) {
    return IoProblem.GLTF_STRUCTURE.refusal(file, place + ": " + what);
  }
}
