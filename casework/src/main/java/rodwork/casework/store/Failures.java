package rodwork.casework.store;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;
import org.sqlite.SQLiteException;
import rodwork.geometry.Refusal;

/** Turns what the disk or the database says into words that a person can act on. */
final class Failures {
  private Failures() {}

  static Refusal of(Path store, IOException failure) {
    String reason = reason(failure);
    return isFull(reason)
        ? StoreProblem.FULL.with(store, reason)
        : StoreProblem.UNWRITABLE.with(store, reason);
  }

  /** What a failure of the database means; the failure itself where it is a fault of Rodwork. */
  static RuntimeException of(Path store, RuntimeException failure) {
    if (failure instanceof Refusal) {
      return failure;
    }
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLiteException sqlite) {
        String name = sqlite.getResultCode().name();
        String reason = sqlite.getResultCode().message;
        return switch (kind(name)) {
          case "FULL" -> StoreProblem.FULL.with(store, reason);
          case "BUSY", "LOCKED" -> StoreProblem.BUSY.with(store, Database.BUSY_SECONDS);
          case "CORRUPT", "NOTADB" -> StoreProblem.DAMAGED.with(store, reason);
          case "READONLY", "CANTOPEN", "PERM", "AUTH" ->
              StoreProblem.UNWRITABLE.with(store, reason);
          // SQLite reports a disk without room for its side files as an input/output error.
          case "IOERR" -> StoreProblem.FULL.with(store, reason);
          default -> failure;
        };
      }
    }
    return failure;
  }

  /** SQLITE_IOERR_SHMSIZE is of the kind IOERR. */
  private static String kind(String name) {
    String[] words = name.split("_", 3);
    return words.length > 1 ? words[1] : name;
  }

  private static boolean isFull(String reason) {
    String lower = reason.toLowerCase(Locale.ROOT);
    return lower.contains("no space")
        || lower.contains("not enough space")
        || lower.contains("quota");
  }

  static String reason(IOException failure) {
    return switch (failure) {
      case NoSuchFileException _ -> "there is no such folder";
      case AccessDeniedException _ -> "access is denied";
      case FileAlreadyExistsException _ -> "a file has that name";
      case FileSystemException system when system.getReason() != null -> system.getReason();
      default -> {
        String said = failure.getMessage();
        yield said == null ? failure.getClass().getSimpleName() : said;
      }
    };
  }
}
