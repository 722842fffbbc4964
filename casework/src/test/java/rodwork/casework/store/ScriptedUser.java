package rodwork.casework.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Random;
import rodwork.anatomy.Jaw;

/**
 * A user who works without a pause, in a process of its own: makes cases, puts parts small and
 * large, drops, undoes, redoes, and says each thing only once it is saved.
 *
 * <p>Says {@code saved CODE HEAD TIP HASH-OF-PARTS}.
 */
final class ScriptedUser {
  private ScriptedUser() {}

  /** Arguments: folder of the store, seed. */
  public static void main(String[] arguments) throws IOException {
    CaseStore store = CaseStore.open(Path.of(arguments[0]));
    long seed = Long.parseLong(arguments[1]);
    Random random = new Random(seed);
    CaseFile at = say(store.create(new CaseCode("case " + seed), "made", CaseEdit.NONE));
    while (true) {
      at = say(step(store, at, random));
    }
  }

  private static CaseFile step(CaseStore store, CaseFile at, Random random) {
    int kind = random.nextInt(10);
    if (kind == 0 && at.canUndo()) {
      return store.undo(at);
    }
    if (kind == 1 && at.canRedo()) {
      return store.redo(at);
    }
    if (kind == 2 && !at.now().parts().isEmpty()) {
      return store.change(at, "dropped", CaseEdit.NONE.drop(at.now().parts().firstKey()));
    }
    PartKind[] kinds = PartKind.values();
    PartKind part = kinds[random.nextInt(kinds.length)];
    byte[] content =
        new byte[random.nextInt(3) == 0 ? 200_000 + random.nextInt(400_000) : random.nextInt(4000)];
    random.nextBytes(content);
    return store.change(
        at,
        "put",
        CaseEdit.NONE.put(new PartName(part, Jaw.UPPER, "p" + random.nextInt(4)), content));
  }

  static String line(CaseFile at) {
    return String.format(
        "%s\t%d\t%d\t%s",
        at.code(),
        at.now().number(),
        at.tip(),
        Sha256.of(PartsJson.of(at.now().parts()).toString().getBytes(StandardCharsets.UTF_8)));
  }

  private static CaseFile say(CaseFile at) {
    System.out.println("saved\t" + line(at));
    System.out.flush();
    return at;
  }
}
