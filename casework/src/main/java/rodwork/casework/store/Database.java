package rodwork.casework.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.flywaydb.core.Flyway;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * The SQLite database of a store.
 *
 * <p>In WAL mode with {@code synchronous = FULL} a commit is on the disk when it returns (SQLite
 * documentation, "Write-Ahead Logging" and "PRAGMA synchronous"). Every change is one transaction
 * that takes the write lock at its start, so two programs on one store follow each other.
 */
final class Database {
  static final String FILE = "store.db";

  /** The newest version of the tables that this program knows; a file V…__.sql for each. */
  static final int VERSION = 1;

  /** How long one program waits for another [s]. */
  static final int BUSY_SECONDS = 10;

  private static final Object IN_THIS_PROGRAM = new Object();

  private final Path store;
  private final Jdbi jdbi;

  private Database(Path store, Jdbi jdbi) {
    this.store = store;
    this.jdbi = jdbi;
  }

  /** The database of a folder as it is; nothing is made or checked. */
  static Database at(Path store) {
    return new Database(store, Jdbi.create(source(store)));
  }

  /** Opens the database of a folder that exists, making it or bringing it up to date. */
  static Database open(Path store) {
    SQLiteDataSource source = source(store);
    Database database = new Database(store, Jdbi.create(source));
    synchronized (IN_THIS_PROGRAM) {
      try (FileChannel channel =
              FileChannel.open(
                  store.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
          FileLock _ = channel.lock()) {
        database.bringUp(source);
      } catch (IOException failure) {
        throw Failures.of(store, failure);
      }
    }
    return database;
  }

  private void bringUp(SQLiteDataSource source) {
    int version = Files.exists(store.resolve(FILE)) ? versionOfWhole() : 0;
    if (version > VERSION) {
      throw StoreProblem.NEWER.with(store, version, VERSION);
    }
    if (version < VERSION) {
      try {
        flyway(source).migrate();
      } catch (RuntimeException failure) {
        throw Failures.of(store, failure);
      }
    }
  }

  /** Checks the database, then tells the version of its tables; 0: none yet. */
  private int versionOfWhole() {
    return read(
        handle -> {
          String check = handle.createQuery("PRAGMA quick_check(1)").mapTo(String.class).one();
          if (!check.equals("ok")) {
            throw StoreProblem.DAMAGED.with(store, check);
          }
          int tables = count(handle, "SELECT COUNT(*) FROM sqlite_schema");
          if (tables == 0) {
            return 0;
          }
          if (count(
                  handle, "SELECT COUNT(*) FROM sqlite_schema WHERE name = 'flyway_schema_history'")
              == 0) {
            throw StoreProblem.DAMAGED.with(store, FILE + " is a database of something else");
          }
          return count(
              handle,
              "SELECT COALESCE(MAX(CAST(version AS INTEGER)), 0) FROM flyway_schema_history"
                  + " WHERE success");
        });
  }

  private static int count(Handle handle, String sql) {
    return handle.createQuery(sql).mapTo(Integer.class).one();
  }

  static Flyway flyway(SQLiteDataSource source) {
    return Flyway.configure(Database.class.getClassLoader())
        .dataSource(source)
        .locations("classpath:rodwork/casework/store")
        .load();
  }

  static SQLiteDataSource source(Path store) {
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    config.setBusyTimeout(BUSY_SECONDS * 1000);
    config.enforceForeignKeys(true);
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + store.resolve(FILE).toAbsolutePath());
    return source;
  }

  <T> T read(HandleCallback<T, RuntimeException> work) {
    try {
      return jdbi.withHandle(work);
    } catch (RuntimeException failure) {
      throw Failures.of(store, failure);
    }
  }

  /** All of the work or nothing of it, on the disk when this returns. */
  <T> T write(HandleCallback<T, RuntimeException> work) {
    try {
      return jdbi.inTransaction(work);
    } catch (RuntimeException failure) {
      throw Failures.of(store, failure);
    }
  }
}
