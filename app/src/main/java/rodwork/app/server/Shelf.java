package rodwork.app.server;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.concurrent.CompletableFuture;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.FrameHints;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.FoundTeeth;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.OpposingScan;
import rodwork.app.operation.ThinnedCast;
import rodwork.app.report.CaseOpposing;
import rodwork.casework.rulebook.Rulebook;
import rodwork.geometry.Watch;

/** The casts that are open, oldest first. Safe for several threads. */
final class Shelf {
  /** More than this many large scans do not fit into a usual memory. */
  static final int MOST = 12;

  private static final String PREPARED = "-prepared";

  private final SequencedMap<String, OpenedCast> casts = new LinkedHashMap<>();

  /** Made when first asked for; a new frame leaves the mesh, and so this, as it is. */
  private final Map<String, CompletableFuture<ThinnedCast>> thinned = new HashMap<>();

  /** The files they came from; made when first asked for where they came from none. */
  private final Map<String, Scan> scans = new HashMap<>();

  /** As they were last found; a new frame makes them void. */
  private final Map<String, FoundTeeth> teeth = new HashMap<>();

  /** What follows from them where they could be told. */
  private final Map<String, CastTeeth> known = new HashMap<>();

  /** As they were last laid over a cast; a new frame turns the room with it. */
  private final Map<String, LaidOpposing> opposing = new HashMap<>();

  /** The files of what lies, or was to lie, over a cast, for its case. */
  private final Map<String, CaseOpposing> opposingFiles = new HashMap<>();

  /** What a cast is surveyed, searched, judged and planned by, where its case has none. */
  private final Rulebook rulebook;

  /** The rulebooks of casts whose case has its own. */
  private final Map<String, Rulebook> rulebooks = new HashMap<>();

  /**
   * The same casts with the cuts of their mouth preparation, by an id of their own: looked at
   * beside them, never listed.
   */
  private final Map<String, OpenedCast> prepared = new HashMap<>();

  private int count;

  Shelf(Rulebook rulebook) {
    this.rulebook = rulebook;
  }

  /** The rulebook that the bench was started with. */
  Rulebook rulebook() {
    return rulebook;
  }

  /** What a cast is surveyed, searched, judged and planned by. */
  synchronized Rulebook rulebook(String id) {
    return rulebooks.getOrDefault(id, prepared.containsKey(id) ? rulebook(listedId(id)) : rulebook);
  }

  /**
   * Puts a cast on the shelf.
   *
   * @return its new id
   * @throws rodwork.geometry.Refusal {@code too-many-casts}
   */
  String add(OpenedCast cast, Scan scan) {
    return add(cast, scan, rulebook);
  }

  /**
   * Puts a cast on the shelf that goes by a rulebook of its own.
   *
   * @return its new id
   * @throws rodwork.geometry.Refusal {@code too-many-casts}
   */
  synchronized String add(OpenedCast cast, Scan scan, Rulebook book) {
    checkRoom();
    String id = "cast-" + ++count;
    casts.put(id, cast.by(book));
    scans.put(id, scan);
    rulebooks.put(id, book);
    return id;
  }

  /** The file that a cast came from. */
  Scan scan(String id) {
    OpenedCast cast = get(id);
    synchronized (this) {
      Scan there = scans.get(id);
      if (there != null) {
        return there;
      }
    }
    Scan made = Scan.made(cast);
    synchronized (this) {
      if (casts.containsKey(id)) {
        scans.put(id, made);
      }
    }
    return made;
  }

  /**
   * Puts a cast on the shelf under an id of its own.
   *
   * @throws rodwork.geometry.Refusal {@code too-many-casts}
   */
  synchronized void addAs(String id, OpenedCast cast) {
    checkRoom();
    casts.put(id, cast.by(rulebook));
  }

  /**
   * Refuses when no further cast would find room; asked before the work of opening one.
   *
   * @throws rodwork.geometry.Refusal {@code too-many-casts}
   */
  synchronized void checkRoom() {
    if (casts.size() >= MOST) {
      throw AppRefusal.TOO_MANY_CASTS.with(casts.size(), MOST);
    }
  }

  synchronized Optional<OpenedCast> find(String id) {
    OpenedCast listed = casts.get(id);
    return Optional.ofNullable(listed == null ? prepared.get(id) : listed);
  }

  /**
   * Keeps a cast with the cuts of its mouth preparation, in place of the one before.
   *
   * @return its id
   */
  synchronized String setPrepared(String id, OpenedCast cut) {
    String own = preparedId(id);
    thinned.remove(own);
    prepared.put(own, cut);
    return own;
  }

  private static String preparedId(String id) {
    return id + PREPARED;
  }

  private static String listedId(String prepared) {
    return prepared.substring(0, prepared.length() - PREPARED.length());
  }

  private void forgetPrepared(String id) {
    thinned.remove(preparedId(id));
    prepared.remove(preparedId(id));
  }

  /**
   * The cast with that id.
   *
   * @throws rodwork.geometry.Refusal {@code cast-not-open}
   */
  OpenedCast get(String id) {
    return find(id).orElseThrow(() -> AppRefusal.CAST_NOT_OPEN.with(id));
  }

  /**
   * The same cast with fewer triangles; made when first asked for, however many ask at once.
   *
   * @throws rodwork.geometry.Refusal {@code cast-not-open}
   */
  ThinnedCast thinned(String id) {
    OpenedCast cast = get(id);
    CompletableFuture<ThinnedCast> mine = new CompletableFuture<>();
    CompletableFuture<ThinnedCast> first;
    synchronized (this) {
      first = thinned.putIfAbsent(id, mine);
    }
    if (first != null) {
      return first.join();
    }
    try {
      ThinnedCast made = ThinnedCast.of(cast, Watch.NONE);
      mine.complete(made);
      return made;
    } catch (RuntimeException | Error failed) {
      synchronized (this) {
        thinned.remove(id, mine);
      }
      mine.completeExceptionally(failed);
      throw failed;
    }
  }

  /** Keeps the teeth of a cast, unless the cast has changed or gone meanwhile. */
  synchronized void setTeeth(String id, FoundTeeth found) {
    if (found.cast().equals(casts.get(id))) {
      teeth.put(id, found);
      known.remove(id);
      if (found.problem() == null) {
        known.put(id, found.told());
      }
    }
  }

  /** The teeth of a cast as they were last found. */
  synchronized Optional<FoundTeeth> teeth(String id) {
    return Optional.ofNullable(teeth.get(id));
  }

  /**
   * A cast with its teeth; the same one until they are found anew.
   *
   * @param otherwise the refusal where they are not known
   * @throws rodwork.geometry.Refusal that one, or {@code cast-not-open}
   */
  CastTeeth known(String id, AppRefusal otherwise) {
    synchronized (this) {
      CastTeeth there = known.get(id);
      if (there != null) {
        return there;
      }
    }
    get(id);
    throw otherwise.with();
  }

  /** Keeps what lies over a cast, unless the cast has changed or gone meanwhile. */
  synchronized void setOpposing(String id, OpenedCast cast, LaidOpposing laid) {
    if (cast.equals(casts.get(id))) {
      opposing.put(id, laid);
    }
  }

  /** Takes away what lies over a cast. */
  synchronized void takeOpposingAway(String id) {
    opposing.remove(id);
    opposingFiles.remove(id);
  }

  /** Remembers the files of an opposing scan for the case, also where it cannot be laid. */
  synchronized void setOpposingFiles(String id, CaseOpposing files) {
    if (casts.containsKey(id)) {
      opposingFiles.put(id, files);
    }
  }

  /** The files of the opposing scan of a cast; null: none. */
  synchronized @Nullable CaseOpposing opposingFiles(String id) {
    return opposingFiles.get(id);
  }

  /** An open cast as a case keeps it, understood as it is now. */
  CaseOpposing.ScanFile file(String id) {
    OpenedCast cast = get(id);
    Scan scan = scan(id);
    FrameHints as =
        cast.finding() == null
            ? FrameHints.NONE
            : new FrameHints(cast.frame().z(), cast.frame().y());
    return new CaseOpposing.ScanFile(
        scan.name(), scan.content(), new CastOptions(cast.jaw(), as, scan.unit()));
  }

  /**
   * The open cast that came from a file of a case and is understood as the case says, opened where
   * there is none; its id.
   */
  String opened(CaseOpposing.ScanFile file) {
    OpenedCast wanted = file.open(Watch.NONE);
    synchronized (this) {
      for (Map.Entry<String, Scan> scan : scans.entrySet()) {
        OpenedCast there = casts.get(scan.getKey());
        if (there != null && file.is(scan.getValue().part()) && there.readAs(wanted)) {
          return scan.getKey();
        }
      }
    }
    checkRoom();
    return add(wanted, Scan.of(file.name(), file.content(), file.options().unit()));
  }

  /** The opposing scan of a cast as it was last laid over it. */
  synchronized Optional<LaidOpposing> opposing(String id) {
    return Optional.ofNullable(opposing.get(id));
  }

  /** The same as rules take it; null: none was laid. */
  @Nullable OpposingScan opposingScan(String id) {
    return opposing(id).map(LaidOpposing::scan).orElse(null);
  }

  /** Replaces a cast by what becomes of it; the work is done while others may go on reading. */
  OpenedCast change(String id, UnaryOperator<OpenedCast> change) {
    OpenedCast changed = change.apply(get(id));
    synchronized (this) {
      if (casts.replace(id, changed) == null) {
        throw AppRefusal.CAST_NOT_OPEN.with(id);
      }
      teeth.remove(id);
      known.remove(id);
      forgetPrepared(id);
      LaidOpposing laid = opposing.remove(id);
      if (laid != null && changed.finding() != null) {
        opposing.put(id, laid.over(changed));
      }
    }
    return changed;
  }

  /**
   * Takes a cast off the shelf.
   *
   * @throws rodwork.geometry.Refusal {@code cast-not-open}
   */
  synchronized void remove(String id) {
    thinned.remove(id);
    scans.remove(id);
    rulebooks.remove(id);
    teeth.remove(id);
    known.remove(id);
    takeOpposingAway(id);
    forgetPrepared(id);
    if (casts.remove(id) == null) {
      throw AppRefusal.CAST_NOT_OPEN.with(id);
    }
  }

  /** All of them, oldest first. */
  synchronized List<Map.Entry<String, OpenedCast>> all() {
    return new ArrayList<>(casts.entrySet());
  }
}
