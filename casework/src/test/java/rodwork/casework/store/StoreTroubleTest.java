package rodwork.casework.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;
import static rodwork.casework.store.CaseStoreTest.CHART;
import static rodwork.casework.store.CaseStoreTest.CODE;
import static rodwork.casework.store.CaseStoreTest.SCAN;
import static rodwork.casework.store.CaseStoreTest.large;
import static rodwork.casework.store.CaseStoreTest.part;
import static rodwork.casework.store.CaseStoreTest.refused;
import static rodwork.casework.store.CaseStoreTest.someCase;
import static rodwork.casework.store.CaseStoreTest.text;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.flywaydb.core.api.MigrationVersion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Refusal;

/** What can happen to a store from outside: a clear word, and nothing lost. */
class StoreTroubleTest {
  @TempDir Path folder;

  @Test
  void theVersionIsThatOfTheNewestTables() throws IOException {
    CaseStore.open(folder);
    assertThat(Database.flyway(Database.source(folder)).info().all())
        .extracting(migration -> migration.getVersion())
        .last()
        .isEqualTo(MigrationVersion.fromVersion(Integer.toString(Database.VERSION)));
  }

  @Test
  void aNewerStoreIsLeftAsItIs() {
    CaseFile saved = someCase(CaseStore.open(folder));
    sql(
        "INSERT INTO flyway_schema_history (installed_rank, version, description, type, script,"
            + " checksum, installed_by, execution_time, success)"
            + " VALUES (99, '2', 'later', 'SQL', 'V2__later.sql', 1, '', 1, 1)");
    refused(StoreProblem.NEWER, () -> CaseStore.open(folder));
    sql("DELETE FROM flyway_schema_history WHERE installed_rank = 99");
    assertThat(CaseStore.open(folder).get(CODE)).isEqualTo(saved);
  }

  private void sql(String sql) {
    Database.at(folder).write(handle -> handle.execute(sql));
  }

  @Test
  void aDamagedContentIsNamedAndTheRestIsWhole() throws IOException {
    CaseStore store = CaseStore.open(folder);
    CaseFile at = someCase(store);
    Part scan = part(at.now(), SCAN);
    byte[] bytes = large(1);
    bytes[1234] ^= 1;
    Files.write(store.files().path(scan.hash()), bytes);
    refused(StoreProblem.CONTENT_DAMAGED, () -> store.read(scan));
    assertThat(store.read(part(at.now(), CHART))).isEqualTo(text("one"));
    refused(
        StoreProblem.CONTENT_DAMAGED,
        () -> CaseArchive.export(store, CODE, folder.resolve("a.zip")));
    assertThat(folder.resolve("a.zip")).doesNotExist();
    Files.delete(store.files().path(scan.hash()));
    refused(StoreProblem.CONTENT_DAMAGED, () -> store.read(scan));
    // Put in again, it is whole again, for every state that has it.
    store.change(
        at, "again", CaseEdit.NONE.put(new PartName(PartKind.SCAN, Jaw.UPPER, "b"), large(1)));
    assertThat(store.read(scan)).isEqualTo(large(1));
  }

  @Test
  void aDamagedDatabaseIsNotTouched() throws IOException {
    someCase(CaseStore.open(folder));
    Path file = folder.resolve(Database.FILE);
    byte[] whole = Files.readAllBytes(file);
    List<byte[]> damages =
        List.of(
            text("no database at all, only some words"),
            Arrays.copyOf(whole, whole.length / 3),
            withZeros(whole, 4096, whole.length - 4096));
    for (byte[] damaged : damages) {
      Files.write(file, damaged);
      refused(StoreProblem.DAMAGED, () -> CaseStore.open(folder));
      assertThat(Files.readAllBytes(file)).isEqualTo(damaged);
    }
    Files.write(file, whole);
    assertThat(CaseStore.open(folder).list()).hasSize(1);
  }

  private static byte[] withZeros(byte[] bytes, int from, int count) {
    byte[] damaged = bytes.clone();
    Arrays.fill(damaged, from, from + count, (byte) 0);
    return damaged;
  }

  @Test
  void aFolderThatCannotBeIsNamed() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "x");
    refused(StoreProblem.UNWRITABLE, () -> CaseStore.open(file));
    refused(StoreProblem.UNWRITABLE, () -> CaseStore.open(file.resolve("below")));
    refused(StoreProblem.NO_STORE, () -> CaseStore.existing(folder.resolve("none")));
    refused(StoreProblem.NO_CASE, () -> CaseStore.open(folder.resolve("s")).get(CODE));
  }

  @Test
  void aStoreThatAnotherProgramHoldsIsSaidToBeBusy() {
    CaseStore store = CaseStore.open(folder);
    CaseFile at = someCase(store);
    Database.at(folder)
        .write(
            handle -> {
              handle.execute("UPDATE cases SET tip = tip");
              refused(
                  StoreProblem.BUSY,
                  () -> store.change(at, "x", CaseEdit.NONE.put(CHART, text("busy"))));
              return 0;
            });
    assertThat(store.get(CODE)).isEqualTo(at);
  }

  /** A real small disk, where this machine lets one be made. */
  @Test
  void aFullDiskLosesNothingThatWasSaved() throws Exception {
    Path disk = mounted("size=2500k");
    try {
      CaseStore store = CaseStore.open(disk);
      CaseFile at = someCase(store);
      int saved = 0;
      Refusal full = null;
      for (int i = 0; i < 200 && full == null; i++) {
        byte[] content = i % 2 == 0 ? large(100 + i) : text("chart " + i + " ".repeat(20_000));
        try {
          at = store.change(at, "put", CaseEdit.NONE.put(name(i), content));
          saved++;
        } catch (Refusal refusal) {
          full = refusal;
        }
      }
      assertThat(full == null ? "never full" : full.code()).isEqualTo(StoreProblem.FULL.code());
      assertThat(saved).isGreaterThan(1);
      assertThat(store.get(CODE)).isEqualTo(at);
      for (Part part : at.now().parts().values()) {
        assertThat((long) store.read(part).length).isEqualTo(part.size());
      }
    } finally {
      run("umount", disk.toString());
    }
  }

  @Test
  void aReadOnlyDiskIsNamedAndLosesNothing() throws Exception {
    Path disk = mounted("size=4m");
    try {
      CaseStore store = CaseStore.open(disk);
      CaseFile at = someCase(store);
      run("mount", "-o", "remount,ro", disk.toString());
      refused(
          StoreProblem.UNWRITABLE, () -> store.change(at, "x", CaseEdit.NONE.put(SCAN, large(5))));
      refused(
          StoreProblem.UNWRITABLE,
          () -> store.change(at, "x", CaseEdit.NONE.put(CHART, text("small"))));
      refused(StoreProblem.UNWRITABLE, () -> CaseStore.open(disk));
      run("mount", "-o", "remount,rw", disk.toString());
      assertThat(CaseStore.open(disk).get(CODE)).isEqualTo(at);
    } finally {
      run("umount", disk.toString());
    }
  }

  private static PartName name(int i) {
    return new PartName(PartKind.DOCUMENT, Jaw.UNKNOWN, "d" + i);
  }

  private Path mounted(String options) throws Exception {
    Path disk = Files.createDirectory(folder.resolve("disk"));
    assumeTrue(
        run("mount", "-t", "tmpfs", "-o", options, "tmpfs", disk.toString()),
        "no small disk can be mounted here (that needs root on Linux)");
    return disk;
  }

  private static boolean run(String... command) throws InterruptedException {
    try {
      return new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start()
              .waitFor()
          == 0;
    } catch (IOException _) {
      return false;
    }
  }
}
