package rodwork.casework.store;

import static org.assertj.core.api.Assertions.assertThat;
import static rodwork.casework.store.CaseStoreTest.CODE;
import static rodwork.casework.store.CaseStoreTest.SCAN;
import static rodwork.casework.store.CaseStoreTest.large;
import static rodwork.casework.store.CaseStoreTest.part;
import static rodwork.casework.store.CaseStoreTest.refused;
import static rodwork.casework.store.CaseStoreTest.someCase;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.geometry.Refusal;

class CaseArchiveTest {
  @TempDir Path folder;
  private CaseStore store;
  private Path archive;

  @BeforeEach
  void aCaseInAnArchive() {
    store = CaseStore.open(folder.resolve("one"));
    someCase(store);
    archive = folder.resolve("case.zip");
    CaseArchive.export(store, CODE, archive);
  }

  @Test
  void aCaseGoesOutAndInExactly() throws IOException {
    CaseStore other = CaseStore.open(folder.resolve("other"));
    CaseFile taken = CaseArchive.load(other, archive, Optional.empty());
    assertThat(taken).isEqualTo(store.get(CODE));
    assertThat(other.history(CODE)).isEqualTo(store.history(CODE));
    assertThat(other.read(part(taken.now(), SCAN))).isEqualTo(large(1));
    assertThat(other.read(part(taken.now(), CaseStoreTest.OPPOSING))).isEqualTo(large(2));
    Path again = folder.resolve("again.zip");
    CaseArchive.export(other, CODE, again);
    assertThat(Files.mismatch(archive, again)).isEqualTo(-1);
    assertThat(other.redo(taken).now()).isEqualTo(store.redo(store.get(CODE)).now());
  }

  @Test
  void aCodeThatIsTakenIsRefusedAndAnotherMayBeGiven() {
    refused(StoreProblem.CASE_EXISTS, () -> CaseArchive.load(store, archive, Optional.empty()));
    CaseFile taken = CaseArchive.load(store, archive, Optional.of(new CaseCode("B")));
    assertThat(taken.now()).isEqualTo(store.get(CODE).now());
    assertThat(store.list()).hasSize(2);
  }

  @Test
  void archivesThatAreNoneAreRefused() throws IOException {
    wrong(json -> json.replace("rodwork case", "something"));
    wrong(json -> json.replace("\"parent\" : 1", "\"parent\" : 7"));
    wrong(json -> json.replace("\"head\" : 2", "\"head\" : 9"));
    wrong(json -> json.replace("\"tip\" : 3", "\"tip\" : 1"));
    wrong(json -> json.replace("\"kind\" : \"scan\"", "\"kind\" : \"scam\""));
    wrong(json -> json.replace("\"at\" : \"2", "\"at\" : \"x"));
    wrong(json -> json.replaceAll("\"size\" : \\d+", "\"size\" : 3"));
    wrong(json -> json.replaceAll("\"sha256\" : \"[0-9a-f]", "\"sha256\" : \"g"));
    wrong(json -> json.substring(json.length() / 2));
    Path newer = rewritten(json -> json.replace("\"version\" : 1", "\"version\" : 2"));
    refused(
        StoreProblem.ARCHIVE_NEWER,
        () -> CaseArchive.load(store, newer, Optional.of(new CaseCode("C"))));
    assertThat(store.list()).hasSize(1);
  }

  /** Every byte that is turned is found, or did not matter: what comes in is the same case. */
  @Test
  void aDamagedArchiveIsRefusedOrHarmless() throws IOException {
    byte[] whole = Files.readAllBytes(archive);
    Random random = new Random(4);
    int refusals = 0;
    for (int i = 0; i < 60; i++) {
      byte[] damaged = whole.clone();
      int at = random.nextInt(damaged.length);
      damaged[at] ^= (byte) (1 << random.nextInt(8));
      if (i % 5 == 0) {
        damaged = Arrays.copyOf(damaged, at);
      }
      Path file = Files.write(folder.resolve("damaged.zip"), damaged);
      CaseStore other = CaseStore.open(folder.resolve("d" + i));
      try {
        CaseFile taken = CaseArchive.load(other, file, Optional.of(CODE));
        assertThat(taken.now().parts())
            .as("seed 4, turn " + i)
            .isEqualTo(store.get(CODE).now().parts());
      } catch (Refusal refusal) {
        assertThat(refusal.code()).isEqualTo(StoreProblem.ARCHIVE_WRONG.code());
        assertThat(other.list()).isEmpty();
        refusals++;
      }
    }
    assertThat(refusals).isGreaterThan(40);
  }

  @Test
  void aBackupBringsTheWholeStoreBack() throws IOException {
    CaseArchive.load(store, archive, Optional.of(new CaseCode("B")));
    Path backup = folder.resolve("backup.zip");
    assertThat(StoreBackup.save(store, backup)).isEqualTo(2);
    Path to = folder.resolve("restored");
    CaseStore restored = StoreBackup.restore(backup, to);
    assertThat(restored.list()).isEqualTo(store.list());
    assertThat(restored.history(CODE)).isEqualTo(store.history(CODE));
    assertThat(restored.read(part(restored.get(CODE).now(), SCAN))).isEqualTo(large(1));
    refused(StoreProblem.NOT_EMPTY, () -> StoreBackup.restore(backup, to));
    byte[] bytes = Files.readAllBytes(backup);
    bytes[bytes.length / 2] ^= 1;
    Files.write(backup, bytes);
    refused(StoreProblem.ARCHIVE_WRONG, () -> StoreBackup.restore(backup, folder.resolve("never")));
    assertThat(folder.resolve("never")).doesNotExist();
    try (var left = Files.list(folder)) {
      assertThat(left.map(f -> f.getFileName().toString()))
          .noneMatch(n -> n.startsWith("rodwork-"));
    }
  }

  private void wrong(UnaryOperator<String> change) throws IOException {
    Path file = rewritten(change);
    refused(
        StoreProblem.ARCHIVE_WRONG,
        () -> CaseArchive.load(store, file, Optional.of(new CaseCode("C"))));
    assertThat(store.list()).hasSize(1);
  }

  private Path rewritten(UnaryOperator<String> change) throws IOException {
    Path file = folder.resolve("changed.zip");
    try (var zip = new java.util.zip.ZipFile(archive.toFile())) {
      ZipOut.write(
          file,
          out -> {
            for (var entry : java.util.Collections.list(zip.entries())) {
              byte[] bytes = zip.getInputStream(entry).readAllBytes();
              if (entry.getName().equals(CaseArchive.LIST)) {
                String was = new String(bytes, StandardCharsets.UTF_8);
                String now = change.apply(was);
                assertThat(now).isNotEqualTo(was);
                bytes = now.getBytes(StandardCharsets.UTF_8);
              }
              out.put(entry.getName(), bytes);
            }
          });
    }
    return file;
  }
}
