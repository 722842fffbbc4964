package rodwork.casework.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;

/**
 * A folder of cases.
 *
 * <p>What a method that changes something returns is on the disk: content first, then one
 * transaction that names it. A program that ends in between leaves the case as it was, and at worst
 * a file that nothing knows, which a later opening sweeps. Several programs may use one store at
 * the same time; a change says which state it was made on, and is refused when the case has moved
 * on.
 *
 * <p>All failures are a {@link rodwork.geometry.Refusal} from {@link StoreProblem}. Safe for use by
 * several threads.
 */
public final class CaseStore {
  /** Content up to this is kept in the database, larger content as a file [bytes]. */
  static final int SMALL_BYTES = 32 << 10;

  /** Unknown files younger than this may belong to a program that is saving just now. */
  private static final Duration SWEPT_AFTER = Duration.ofHours(1);

  private final Path folder;
  private final Database database;
  private final ContentFiles files;
  private final Clock clock;

  private CaseStore(Path folder, Database database, ContentFiles files, Clock clock) {
    this.folder = folder;
    this.database = database;
    this.files = files;
    this.clock = clock;
  }

  /** Opens the store in a folder, and makes both where they are not there. */
  public static CaseStore open(Path folder) {
    return open(folder, Clock.systemUTC());
  }

  static CaseStore open(Path folder, Clock clock) {
    try {
      Files.createDirectories(folder);
    } catch (IOException failure) {
      throw Failures.of(folder, failure);
    }
    CaseStore store = new CaseStore(folder, Database.open(folder), new ContentFiles(folder), clock);
    store.sweep(SWEPT_AFTER);
    return store;
  }

  /** Opens a store that is there. */
  public static CaseStore existing(Path folder) {
    if (!Files.exists(folder.resolve(Database.FILE))) {
      throw StoreProblem.NO_STORE.with(folder);
    }
    return open(folder);
  }

  public Path folder() {
    return folder;
  }

  /** All cases, by code. */
  public List<CaseFile> list() {
    return database.read(
        handle -> CaseRows.all(handle).stream().map(c -> CaseRows.file(handle, c)).toList());
  }

  public CaseFile get(CaseCode code) {
    return database.read(handle -> CaseRows.file(handle, CaseRows.standing(handle, code, folder)));
  }

  /** Every state that a case ever had, oldest first. */
  public List<Revision> history(CaseCode code) {
    return database.read(
        handle -> CaseRows.revisions(handle, CaseRows.standing(handle, code, folder).id()));
  }

  /** The content of a part, checked against its hash. */
  public byte[] read(Part part) {
    byte[] small = database.read(handle -> CaseRows.content(handle, part)).orElse(null);
    if (small == null) {
      return files.get(part);
    }
    if (!Sha256.of(small).equals(part.hash())) {
      throw StoreProblem.CONTENT_DAMAGED.with(part.hash(), folder, "not what was saved");
    }
    return small;
  }

  /** Makes a case. */
  public CaseFile create(CaseCode code, String action, CaseEdit edit) {
    SortedMap<PartName, Part> parts = edit.on(new TreeMap<>());
    saveFiles(edit, parts);
    return database.write(
        handle -> {
          Revision first = new Revision(1, null, now(), action, parts);
          long id = CaseRows.insertCase(handle, code, 1, 1);
          insertContents(handle, edit, parts);
          CaseRows.insertRevision(handle, id, first);
          return new CaseFile(code, first, 1);
        });
  }

  /**
   * Changes a case; what was undone before can then no longer be redone, but stays in the history.
   *
   * @param on the state that the change was made on
   * @param action what was done, in a few words
   * @return the case as it stands then; the same where the edit changes nothing
   */
  public CaseFile change(CaseFile on, String action, CaseEdit edit) {
    SortedMap<PartName, Part> parts = edit.on(on.now().parts());
    if (parts.equals(on.now().parts())) {
      return on;
    }
    saveFiles(edit, parts);
    return database.write(
        handle -> {
          CaseRows.Standing standing = unmoved(handle, on);
          int number = CaseRows.lastNumber(handle, standing.id()) + 1;
          Revision next = new Revision(number, standing.head(), now(), action, parts);
          insertContents(handle, edit, parts);
          CaseRows.insertRevision(handle, standing.id(), next);
          CaseRows.stand(handle, standing.id(), number, number);
          return new CaseFile(on.code(), next, number);
        });
  }

  /** Goes back to the state before. */
  public CaseFile undo(CaseFile on) {
    return database.write(
        handle -> {
          CaseRows.Standing standing = unmoved(handle, on);
          Integer parent = on.now().parent();
          if (parent == null) {
            throw StoreProblem.NOTHING_TO_UNDO.with(on.code());
          }
          CaseRows.stand(handle, standing.id(), parent, standing.tip());
          return CaseRows.file(handle, CaseRows.standing(handle, on.code(), folder));
        });
  }

  /** Takes the last undo back. */
  public CaseFile redo(CaseFile on) {
    return database.write(
        handle -> {
          CaseRows.Standing standing = unmoved(handle, on);
          if (standing.head() == standing.tip()) {
            throw StoreProblem.NOTHING_TO_REDO.with(on.code());
          }
          Revision next = CaseRows.revision(handle, standing.id(), standing.tip());
          while (next.parent() != null && next.parent() != standing.head()) {
            next = CaseRows.revision(handle, standing.id(), next.parent());
          }
          CaseRows.stand(handle, standing.id(), next.number(), standing.tip());
          return new CaseFile(on.code(), next, standing.tip());
        });
  }

  /** Takes a whole case with its history in, as an archive holds it. */
  CaseFile adopt(
      CaseCode code, List<Revision> revisions, int head, int tip, Map<Part, byte[]> contents) {
    contents.forEach(
        (part, bytes) -> {
          if (bytes.length > SMALL_BYTES) {
            files.put(part.hash(), bytes);
          }
        });
    return database.write(
        handle -> {
          long id = CaseRows.insertCase(handle, code, head, tip);
          contents.forEach((part, bytes) -> insertContent(handle, part, bytes));
          revisions.forEach(revision -> CaseRows.insertRevision(handle, id, revision));
          return CaseRows.file(handle, CaseRows.standing(handle, code, folder));
        });
  }

  private CaseRows.Standing unmoved(Handle handle, CaseFile on) {
    CaseRows.Standing standing = CaseRows.standing(handle, on.code(), folder);
    if (standing.head() != on.now().number() || standing.tip() != on.tip()) {
      throw StoreProblem.CASE_CHANGED.with(on.code(), standing.head(), on.now().number());
    }
    return standing;
  }

  private void saveFiles(CaseEdit edit, SortedMap<PartName, Part> parts) {
    edit.puts()
        .forEach(
            (name, bytes) -> {
              Part part = parts.get(name);
              if (part != null && bytes.length > SMALL_BYTES) {
                files.put(part.hash(), bytes);
              }
            });
  }

  private void insertContents(Handle handle, CaseEdit edit, SortedMap<PartName, Part> parts) {
    edit.puts()
        .forEach(
            (name, bytes) -> {
              Part part = parts.get(name);
              if (part != null) {
                insertContent(handle, part, bytes);
              }
            });
  }

  /** Under the write lock, so that no sweep can take a file between this look and the commit. */
  private void insertContent(Handle handle, Part part, byte[] bytes) {
    boolean small = bytes.length <= SMALL_BYTES;
    if (!small && !files.has(part)) {
      files.put(part.hash(), bytes);
    }
    CaseRows.insertContent(handle, part, small ? bytes : null);
  }

  /** Deletes files that no case knows and that are older than {@code age}; tells how many. */
  int sweep(Duration age) {
    return database.write(handle -> files.sweep(hash -> CaseRows.knows(handle, hash), age));
  }

  Database database() {
    return database;
  }

  ContentFiles files() {
    return files;
  }

  private Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MILLIS);
  }
}
