package rodwork.casework.store;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * A whole store in one file, taken while others may work on it: a zip with {@code backup.json}, the
 * database as it was at one moment, and {@code content/HASH} for each file beside it.
 */
public final class StoreBackup {
  static final String FORMAT = "rodwork backup";
  static final int VERSION = 1;
  private static final String LIST = "backup.json";

  private StoreBackup() {}

  /** Writes a backup; tells how many cases are in it. */
  public static int save(CaseStore store, Path file) {
    Path folder = file.toAbsolutePath().getParent();
    Path copy = null;
    try {
      copy = Files.createTempDirectory(folder, "rodwork-backup-");
      Path snapshot = copy.resolve(Database.FILE);
      store
          .database()
          .read(handle -> handle.execute("VACUUM INTO ?", snapshot.toAbsolutePath().toString()));
      byte[] database = Files.readAllBytes(snapshot);
      List<Part> files = new ArrayList<>();
      int[] cases = new int[1];
      Database.at(copy)
          .read(
              handle -> {
                files.addAll(CaseRows.inFiles(handle));
                cases[0] = CaseRows.all(handle).size();
                return 0;
              });
      ZipOut.write(
          file,
          zip -> {
            Part whole = Part.of(database);
            zip.put(LIST, list(whole, files).getBytes(StandardCharsets.UTF_8));
            zip.put("content/" + whole.hash(), database);
            for (Part part : files) {
              zip.put("content/" + part.hash(), store.files().get(part));
            }
          });
      return cases[0];
    } catch (IOException failure) {
      throw StoreProblem.FILE_UNWRITABLE.with(file, Failures.reason(failure));
    } finally {
      if (copy != null) {
        delete(copy);
      }
    }
  }

  private static String list(Part database, List<Part> files) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("format", FORMAT);
    json.put("version", VERSION);
    json.set("database", part(database));
    ArrayNode contents = json.putArray("files");
    files.forEach(part -> contents.add(part(part)));
    return json.toPrettyString() + "\n";
  }

  private static ObjectNode part(Part part) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("sha256", part.hash());
    json.put("size", part.size());
    return json;
  }

  /**
   * Makes a store from a backup, in a folder that is not there or empty; checked whole before it
   * takes its place.
   */
  public static CaseStore restore(Path file, Path to) {
    Path target = to.toAbsolutePath();
    if (Files.exists(target) && !isEmptyFolder(target)) {
      throw StoreProblem.NOT_EMPTY.with(to);
    }
    Path beside = null;
    try (ZipIn zip = ZipIn.open(file)) {
      JsonNode json = zip.list(LIST, FORMAT, VERSION);
      Path parent = target.getParent();
      Files.createDirectories(parent == null ? target : parent);
      beside = Files.createTempDirectory(parent, "rodwork-restore-");
      Files.write(beside.resolve(Database.FILE), zip.content(part(zip, json.path("database"))));
      ContentFiles files = new ContentFiles(beside);
      for (JsonNode one : json.path("files")) {
        Part part = part(zip, one);
        files.put(part.hash(), zip.content(part));
      }
      zip.nothingElse();
      CaseStore.open(beside).list();
      Files.deleteIfExists(target);
      Files.move(beside, target, StandardCopyOption.ATOMIC_MOVE);
      return CaseStore.open(to);
    } catch (IOException failure) {
      throw Failures.of(to, failure);
    } finally {
      if (beside != null) {
        delete(beside);
      }
    }
  }

  private static Part part(ZipIn zip, JsonNode json) {
    try {
      return new Part(json.path("sha256").asText(), json.path("size").asLong(-1));
    } catch (IllegalArgumentException wrong) {
      throw zip.wrong("its list cannot be read (" + wrong.getMessage() + ")");
    }
  }

  private static boolean isEmptyFolder(Path folder) {
    try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
      return !entries.iterator().hasNext();
    } catch (IOException _) {
      return false;
    }
  }

  private static void delete(Path folder) {
    if (!Files.exists(folder)) {
      return;
    }
    try (Stream<Path> entries = Files.walk(folder)) {
      for (Path entry : entries.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(entry);
      }
    } catch (IOException _) {
      // A folder with a telling name that stays does no harm.
    }
  }
}
