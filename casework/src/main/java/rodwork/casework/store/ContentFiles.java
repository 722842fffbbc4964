package rodwork.casework.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.Predicate;

/**
 * Content as files that are called by their hash: {@code files/ab/abcd…}.
 *
 * <p>A file is written under another name, forced to the disk, then moved to its place in one step:
 * a name that is a hash stands for whole content, whenever the program ends.
 */
final class ContentFiles {
  private static final String UNFINISHED = "new-";

  private final Path store;
  private final Path root;

  ContentFiles(Path store) {
    this.store = store;
    this.root = store.resolve("files");
  }

  /** Writes content, on the disk for good when this returns; what is there already is replaced. */
  void put(String hash, byte[] bytes) {
    Path to = path(hash);
    Path unfinished = root.resolve(UNFINISHED + UUID.randomUUID());
    try {
      Path parent = root.resolve(hash.substring(0, 2));
      boolean fresh = !Files.isDirectory(parent);
      Files.createDirectories(parent);
      write(unfinished, bytes);
      Files.move(unfinished, to, StandardCopyOption.ATOMIC_MOVE);
      force(parent);
      if (fresh) {
        force(root);
        force(store);
      }
    } catch (IOException failure) {
      throw Failures.of(store, failure);
    } finally {
      deleteQuietly(unfinished);
    }
  }

  private static void write(Path file, byte[] bytes) throws IOException {
    try (FileChannel out =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      ByteBuffer rest = ByteBuffer.wrap(bytes);
      while (rest.hasRemaining()) {
        out.write(rest);
      }
      out.force(true);
    }
  }

  /** Makes names in a folder lasting; systems that cannot open a folder keep them by themselves. */
  private static void force(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException _) {
      // Windows refuses to open folders.
    }
  }

  boolean has(Part part) {
    try {
      return Files.size(path(part.hash())) == part.size();
    } catch (IOException _) {
      return false;
    }
  }

  /** Reads content and checks it. */
  byte[] get(Part part) {
    byte[] bytes;
    try {
      bytes = Files.readAllBytes(path(part.hash()));
    } catch (NoSuchFileException _) {
      throw StoreProblem.CONTENT_DAMAGED.with(part.hash(), store, "missing");
    } catch (IOException failure) {
      throw StoreProblem.CONTENT_DAMAGED.with(
          part.hash(), store, "unreadable: " + Failures.reason(failure));
    }
    if (!Sha256.of(bytes).equals(part.hash())) {
      throw StoreProblem.CONTENT_DAMAGED.with(part.hash(), store, "not what was saved");
    }
    return bytes;
  }

  Path path(String hash) {
    return root.resolve(hash.substring(0, 2)).resolve(hash);
  }

  /**
   * Deletes files that nothing knows, left by a program that was ended while it saved.
   *
   * @param known whether a hash is in use
   * @param age younger ones are left alone: another program may be saving them
   * @return how many were deleted
   */
  int sweep(Predicate<String> known, Duration age) {
    int swept = 0;
    Instant before = Instant.now().minus(age);
    for (Path file : all()) {
      String name = String.valueOf(file.getFileName());
      if (name.startsWith(UNFINISHED) || !known.test(name)) {
        try {
          if (!Files.getLastModifiedTime(file).toInstant().isAfter(before)) {
            Files.deleteIfExists(file);
            swept++;
          }
        } catch (IOException _) {
          // Left for another time; it does no harm.
        }
      }
    }
    return swept;
  }

  /** Every file there is, unfinished ones among them. */
  List<Path> all() {
    List<Path> found = new ArrayList<>();
    collect(root, found, 2);
    return found;
  }

  private static void collect(Path folder, List<Path> found, int depth) {
    if (!Files.isDirectory(folder)) {
      return;
    }
    try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
      for (Path entry : entries) {
        if (Files.isRegularFile(entry)) {
          found.add(entry);
        } else if (depth > 1) {
          collect(entry, found, depth - 1);
        }
      }
    } catch (IOException _) {
      // What cannot be listed cannot be swept.
    }
  }

  private static void deleteQuietly(Path file) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException _) {
      // The next sweep takes it.
    }
  }
}
