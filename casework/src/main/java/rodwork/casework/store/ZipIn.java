package rodwork.casework.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import rodwork.geometry.Refusal;

/**
 * Reads a zip file that may be anything: names of entries are only compared, never used as names of
 * files, and nothing is read beyond what was asked for.
 */
final class ZipIn implements AutoCloseable {
  /** Lists are smaller than this [bytes]. */
  private static final int MOST_LIST_BYTES = 256 << 20;

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private final Path file;
  private final ZipFile zip;
  private final Set<String> asked = new HashSet<>();

  private ZipIn(Path file, ZipFile zip) {
    this.file = file;
    this.zip = zip;
  }

  static ZipIn open(Path file) {
    if (!Files.isRegularFile(file)) {
      throw StoreProblem.ARCHIVE_WRONG.with(file, "there is no such file");
    }
    try {
      return new ZipIn(file, new ZipFile(file.toFile()));
    } catch (IOException failure) {
      throw StoreProblem.ARCHIVE_WRONG.with(
          file, "it is no whole zip file (" + Failures.reason(failure) + ")");
    }
  }

  /** The list that opens the archive, of this format and of a version known here. */
  JsonNode list(String name, String format, int version) {
    JsonNode json;
    try {
      json = MAPPER.readTree(bytes(name, MOST_LIST_BYTES));
    } catch (JsonProcessingException wrong) {
      throw wrong(name + " is no JSON");
    } catch (IOException failure) {
      throw wrong(name + " cannot be read: " + Failures.reason(failure));
    }
    if (!json.path("format").asText().equals(format)) {
      throw wrong("its format is not \"" + format + "\"");
    }
    int found = json.path("version").asInt(-1);
    if (found > version) {
      throw StoreProblem.ARCHIVE_NEWER.with(file, found, version);
    }
    if (found < 1) {
      throw wrong("its version is not a number from 1");
    }
    return json;
  }

  /** Content, checked against what identifies it. */
  byte[] content(Part part) {
    if (part.size() > Integer.MAX_VALUE - 64) {
      throw wrong("content " + part.hash() + " has " + part.size() + " bytes");
    }
    byte[] bytes;
    try {
      bytes = bytes("content/" + part.hash(), (int) part.size());
    } catch (IOException failure) {
      throw wrong("content " + part.hash() + " is damaged: " + Failures.reason(failure));
    }
    if (bytes.length != part.size() || !Sha256.of(bytes).equals(part.hash())) {
      throw wrong("content " + part.hash() + " is not what was packed");
    }
    return bytes;
  }

  private byte[] bytes(String name, int most) throws IOException {
    asked.add(name);
    ZipEntry entry = zip.getEntry(name);
    if (entry == null) {
      throw wrong(name + " is missing");
    }
    try (InputStream in = zip.getInputStream(entry)) {
      byte[] bytes = in.readNBytes(most);
      if (bytes.length == most && in.read() >= 0) {
        throw wrong(name + " has more than the " + most + " bytes it should have");
      }
      return bytes;
    }
  }

  /** Refuses what holds more than was asked for: it was not made by Rodwork. */
  void nothingElse() {
    zip.stream()
        .map(ZipEntry::getName)
        .filter(name -> !asked.contains(name))
        .findFirst()
        .ifPresent(
            name -> {
              throw wrong("an entry that no list names is in it");
            });
  }

  Refusal wrong(String why) {
    return StoreProblem.ARCHIVE_WRONG.with(file, why);
  }

  @Override
  public void close() {
    try {
      zip.close();
    } catch (IOException _) {
      // It was only read.
    }
  }
}
