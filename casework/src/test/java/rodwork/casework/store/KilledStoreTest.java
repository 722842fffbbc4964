package rodwork.casework.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The process is killed at random moments while a user works: every acknowledged change is there,
 * the store is whole, and what was left half done is swept.
 */
class KilledStoreTest {
  private static final long SEED = 20261125;
  private static final int KILLS = Boolean.getBoolean("rodwork.long") ? 200 : 30;

  @TempDir Path folder;

  @Test
  void nothingAcknowledgedIsLostAndNothingIsLeftOver() throws Exception {
    Random random = new Random(SEED);
    List<String> acknowledged = new ArrayList<>();
    int changes = 0;
    int swept = 0;
    for (int kill = 0; kill < KILLS; kill++) {
      List<String> said = run(kill, 5 + random.nextInt(400));
      changes += said.size();
      if (!said.isEmpty()) {
        acknowledged.add(said.getLast());
      }
      CaseStore store = CaseStore.open(folder);
      swept += store.sweep(Duration.ofSeconds(-5));
      check(store, said, "kill " + kill + ", seed " + SEED);
    }
    CaseStore store = CaseStore.open(folder);
    Set<String> standing =
        store.list().stream().map(ScriptedUser::line).collect(Collectors.toSet());
    assertThat(acknowledged).as("cases of earlier runs").hasSizeGreaterThan(KILLS / 2);
    // The last change of a run may have been saved and not yet said.
    long exactly = acknowledged.stream().filter(standing::contains).count();
    assertThat(exactly).isGreaterThan(0);
    System.out.printf(
        "%d kills, %d acknowledged changes found, %d orphans swept, %d runs ended between saving and"
            + " saying%n",
        KILLS, changes, swept, acknowledged.size() - exactly);
  }

  /** Runs a user and kills it some time after its first word; what it said. */
  private List<String> run(int seed, int millis) throws IOException, InterruptedException {
    Process user =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xmx256m",
                "-cp",
                System.getProperty("java.class.path"),
                ScriptedUser.class.getName(),
                folder.toString(),
                Integer.toString(seed))
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    List<String> said = new ArrayList<>();
    Thread killer =
        Thread.ofVirtual()
            .unstarted(
                () -> {
                  try {
                    Thread.sleep(millis);
                  } catch (InterruptedException _) {
                    Thread.currentThread().interrupt();
                  }
                  // The process's own method would close its output, which is still read.
                  user.toHandle().destroyForcibly();
                });
    try (BufferedReader words =
        new BufferedReader(new InputStreamReader(user.getInputStream(), StandardCharsets.UTF_8))) {
      for (String line = words.readLine(); line != null; line = words.readLine()) {
        if (said.isEmpty()) {
          killer.start();
        }
        if (line.startsWith("saved\t") && line.split("\t", -1).length == 5) {
          said.add(line.substring(6));
        }
      }
    } finally {
      user.destroyForcibly();
      assertThat(user.waitFor(30, TimeUnit.SECONDS)).isTrue();
    }
    assertThat(said).as("the user of run %s said nothing", seed).isNotEmpty();
    return said;
  }

  private void check(CaseStore store, List<String> said, String where) {
    CaseFile now = store.get(new CaseCode(said.getLast().split("\t", -1)[0]));
    List<Revision> history = store.history(now.code());
    for (String line : said) {
      String[] words = line.split("\t", -1);
      Revision revision = history.get(Integer.parseInt(words[1]) - 1);
      assertThat(Integer.parseInt(words[2])).as(where).isLessThanOrEqualTo(history.size());
      assertThat(ScriptedUser.line(new CaseFile(now.code(), revision, Integer.parseInt(words[2]))))
          .as(where)
          .isEqualTo(line);
    }
    assertThat(isAtOrOneStepAfter(now, history, said.getLast())).as(where).isTrue();
    // Each content of every state, not of the newest alone.
    Set<Part> parts =
        history.stream().flatMap(r -> r.parts().values().stream()).collect(Collectors.toSet());
    parts.forEach(part -> assertThat((long) store.read(part).length).isEqualTo(part.size()));
    Set<String> known =
        store.database().read(CaseRows::inFiles).stream()
            .map(Part::hash)
            .collect(Collectors.toSet());
    assertThat(store.files().all().stream().map(f -> f.getFileName().toString()))
        .as(where + ": files that nothing knows")
        .allMatch(known::contains);
    assertThat(Files.exists(folder.resolve(Database.FILE))).isTrue();
  }

  /** The last step may have been saved and not yet said; nothing said may be undone by the kill. */
  private static boolean isAtOrOneStepAfter(CaseFile now, List<Revision> history, String last) {
    int head = Integer.parseInt(last.split("\t", -1)[1]);
    Integer parent = now.now().parent();
    return ScriptedUser.line(now).equals(last)
        || (parent != null && parent == head)
        || Integer.valueOf(now.now().number()).equals(history.get(head - 1).parent());
  }
}
