package rodwork.casework.store;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jspecify.annotations.Nullable;

/** The rows of the database as values; every statement stands here. */
final class CaseRows {
  private static final String REVISION =
      "SELECT number, parent, at, action, parts FROM revisions WHERE case_id = :id";

  private static final RowMapper<Revision> TO_REVISION =
      (row, _) -> {
        int from = row.getInt("parent");
        Integer parent = row.wasNull() ? null : from; // tells of the column read last
        return new Revision(
            row.getInt("number"),
            parent,
            Instant.parse(row.getString("at")),
            row.getString("action"),
            PartsJson.read(row.getString("parts")));
      };

  private CaseRows() {}

  /** Where a case stands. */
  record Standing(long id, String code, int head, int tip) {}

  private static final RowMapper<Standing> TO_STANDING =
      (row, _) ->
          new Standing(
              row.getLong("id"), row.getString("code"), row.getInt("head"), row.getInt("tip"));

  static Standing standing(Handle handle, CaseCode code, Path store) {
    return find(handle, code).orElseThrow(() -> StoreProblem.NO_CASE.with(code, store));
  }

  static Optional<Standing> find(Handle handle, CaseCode code) {
    return handle
        .createQuery("SELECT id, code, head, tip FROM cases WHERE code = :code")
        .bind("code", code.text())
        .map(TO_STANDING)
        .findOne();
  }

  static List<Standing> all(Handle handle) {
    return handle
        .createQuery("SELECT id, code, head, tip FROM cases ORDER BY code COLLATE NOCASE")
        .map(TO_STANDING)
        .list();
  }

  static Revision revision(Handle handle, long id, int number) {
    return handle
        .createQuery(REVISION + " AND number = :number")
        .bind("id", id)
        .bind("number", number)
        .map(TO_REVISION)
        .one();
  }

  static List<Revision> revisions(Handle handle, long id) {
    return handle.createQuery(REVISION + " ORDER BY number").bind("id", id).map(TO_REVISION).list();
  }

  static CaseFile file(Handle handle, Standing standing) {
    return new CaseFile(
        new CaseCode(standing.code()),
        revision(handle, standing.id(), standing.head()),
        standing.tip());
  }

  static long insertCase(Handle handle, CaseCode code, int head, int tip) {
    if (find(handle, code).isPresent()) {
      throw StoreProblem.CASE_EXISTS.with(code);
    }
    handle
        .createUpdate("INSERT INTO cases (code, head, tip) VALUES (:code, :head, :tip)")
        .bind("code", code.text())
        .bind("head", head)
        .bind("tip", tip)
        .execute();
    return handle.createQuery("SELECT last_insert_rowid()").mapTo(Long.class).one();
  }

  static void insertRevision(Handle handle, long id, Revision revision) {
    handle
        .createUpdate(
            "INSERT INTO revisions (case_id, number, parent, at, action, parts)"
                + " VALUES (:id, :number, :parent, :at, :action, :parts)")
        .bind("id", id)
        .bind("number", revision.number())
        .bind("parent", revision.parent())
        .bind("at", revision.at().toString())
        .bind("action", revision.action())
        .bind("parts", PartsJson.of(revision.parts()).toString())
        .execute();
  }

  static int lastNumber(Handle handle, long id) {
    return handle
        .createQuery("SELECT MAX(number) FROM revisions WHERE case_id = :id")
        .bind("id", id)
        .mapTo(Integer.class)
        .one();
  }

  static void stand(Handle handle, long id, int head, int tip) {
    handle
        .createUpdate("UPDATE cases SET head = :head, tip = :tip WHERE id = :id")
        .bind("head", head)
        .bind("tip", tip)
        .bind("id", id)
        .execute();
  }

  static void insertContent(Handle handle, Part part, byte @Nullable [] bytes) {
    handle
        .createUpdate(
            "INSERT OR REPLACE INTO contents (hash, size, bytes) VALUES (:hash, :size, :bytes)")
        .bind("hash", part.hash())
        .bind("size", part.size())
        .bind("bytes", bytes)
        .execute();
  }

  /** The bytes kept in the database; empty where they are a file, or nothing is known of them. */
  static Optional<byte[]> content(Handle handle, Part part) {
    return handle
        .createQuery("SELECT bytes FROM contents WHERE hash = :hash AND bytes IS NOT NULL")
        .bind("hash", part.hash())
        .mapTo(byte[].class)
        .findOne();
  }

  static boolean knows(Handle handle, String hash) {
    return handle
            .createQuery("SELECT COUNT(*) FROM contents WHERE hash = :hash")
            .bind("hash", hash)
            .mapTo(Integer.class)
            .one()
        > 0;
  }

  /** Every content that is a file. */
  static List<Part> inFiles(Handle handle) {
    return handle
        .createQuery("SELECT hash, size FROM contents WHERE bytes IS NULL ORDER BY hash")
        .map((row, _) -> new Part(row.getString("hash"), row.getLong("size")))
        .list();
  }
}
