package rodwork.casework.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.stream.IntStream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Refusal;

class CaseStoreTest {
  static final CaseCode CODE = new CaseCode("A-17");
  static final PartName CHART = new PartName(PartKind.CHART, Jaw.UPPER, "chart");
  static final PartName SCAN = new PartName(PartKind.SCAN, Jaw.UPPER, "../../etc/model.stl");
  private static final Clock NOON =
      Clock.fixed(Instant.parse("2026-03-01T12:00:00Z"), ZoneOffset.UTC);

  /** The scan of the other jaw lies with the cast that it bites on. */
  static final PartName OPPOSING = new PartName(PartKind.OPPOSING, Jaw.UPPER, "lower.stl");

  @TempDir Path folder;

  static byte[] text(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  static byte[] large(int seed) {
    byte[] bytes = new byte[300_000];
    new Random(seed).nextBytes(bytes);
    return bytes;
  }

  static Part part(Revision revision, PartName name) {
    return Objects.requireNonNull(revision.parts().get(name));
  }

  /** A case with a scan, three charts, one of them undone. */
  static CaseFile someCase(CaseStore store) {
    CaseFile at =
        store.create(
            CODE, "scan taken in", CaseEdit.NONE.put(SCAN, large(1)).put(OPPOSING, large(2)));
    at = store.change(at, "16 missing", CaseEdit.NONE.put(CHART, text("one")));
    at = store.change(at, "17 missing", CaseEdit.NONE.put(CHART, text("two")));
    return store.undo(at);
  }

  @Test
  void whatWasSavedIsThereWhenTheStoreIsOpenedAgain() {
    CaseFile saved = someCase(CaseStore.open(folder, NOON));
    CaseStore again = CaseStore.open(folder);
    CaseFile found = again.get(new CaseCode("a-17"));
    assertThat(found).isEqualTo(saved);
    assertThat(again.list()).containsExactly(saved);
    assertThat(again.read(part(found.now(), SCAN))).isEqualTo(large(1));
    assertThat(again.read(part(found.now(), CHART))).isEqualTo(text("one"));
    assertThat(again.history(CODE))
        .extracting(Revision::action)
        .containsExactly("scan taken in", "16 missing", "17 missing");
    assertThat(found.now().at()).isEqualTo(Instant.parse("2026-03-01T12:00:00Z"));
  }

  @Test
  void undoAndRedoOutliveTheProgram() {
    CaseFile at = someCase(CaseStore.open(folder));
    CaseStore again = CaseStore.open(folder);
    at = again.redo(at);
    assertThat(again.read(part(at.now(), CHART))).isEqualTo(text("two"));
    assertThat(at.canRedo()).isFalse();
    at = again.undo(again.undo(at));
    assertThat(at.now().parts()).containsOnlyKeys(SCAN, OPPOSING);
    assertThat(at.canUndo()).isFalse();
    at = again.redo(again.redo(at));
    assertThat(again.read(part(at.now(), CHART))).isEqualTo(text("two"));
    CaseFile last = at;
    refused(StoreProblem.NOTHING_TO_REDO, () -> again.redo(last));
  }

  @Test
  void aChangeAfterAnUndoKeepsWhatWasUndoneInTheHistory() {
    CaseStore store = CaseStore.open(folder);
    CaseFile at =
        store.change(someCase(store), "18 missing", CaseEdit.NONE.put(CHART, text("three")));
    assertThat(at.now().number()).isEqualTo(4);
    assertThat(at.now().parent()).isEqualTo(2);
    assertThat(store.history(CODE)).hasSize(4);
    assertThat(store.read(part(store.history(CODE).get(2), CHART))).isEqualTo(text("two"));
    at = store.undo(at);
    assertThat(store.read(part(at.now(), CHART))).isEqualTo(text("one"));
    assertThat(store.read(part(store.redo(at).now(), CHART))).isEqualTo(text("three"));
  }

  @Test
  void aChangeOfNothingIsNoState() {
    CaseStore store = CaseStore.open(folder);
    CaseFile at = someCase(store);
    assertThat(store.change(at, "again", CaseEdit.NONE.put(CHART, text("one")))).isEqualTo(at);
    assertThat(store.history(CODE)).hasSize(3);
  }

  @Test
  void twoProgramsOnOneStoreNeverOverwriteEachOther() {
    CaseStore one = CaseStore.open(folder);
    CaseStore other = CaseStore.open(folder);
    CaseFile read = someCase(one);
    CaseFile changed = other.change(read, "other", CaseEdit.NONE.put(CHART, text("other")));
    refused(
        StoreProblem.CASE_CHANGED,
        () -> one.change(read, "late", CaseEdit.NONE.put(CHART, text("late"))));
    refused(StoreProblem.CASE_CHANGED, () -> one.undo(read));
    assertThat(one.get(CODE)).isEqualTo(changed);
    refused(StoreProblem.CASE_EXISTS, () -> other.create(CODE, "twice", CaseEdit.NONE));
  }

  @Test
  void manyThreadsAtOnceLoseNothing() throws InterruptedException {
    CaseStore store = CaseStore.open(folder);
    List<Thread> users =
        IntStream.range(0, 4)
            .mapToObj(
                user ->
                    Thread.ofPlatform()
                        .start(
                            () -> {
                              CaseStore own = CaseStore.open(folder);
                              CaseFile at =
                                  own.create(new CaseCode("u" + user), "made", CaseEdit.NONE);
                              for (int i = 0; i < 20; i++) {
                                at =
                                    own.change(
                                        at, "step", CaseEdit.NONE.put(CHART, text(user + " " + i)));
                              }
                            }))
            .toList();
    for (Thread user : users) {
      user.join();
    }
    assertThat(store.list()).hasSize(4).allMatch(c -> c.now().number() == 21);
  }

  @Test
  void anOrphanIsSweptOnceItIsOldAndWhatIsKnownStays() {
    CaseStore store = CaseStore.open(folder);
    CaseFile at = someCase(store);
    store.files().put(Part.of(large(9)).hash(), large(9));
    assertThat(store.sweep(Duration.ofHours(1))).isZero();
    assertThat(store.sweep(Duration.ofSeconds(-5))).isEqualTo(1);
    assertThat(store.read(part(at.now(), SCAN))).isEqualTo(large(1));
  }

  @Test
  void codesThatAreNoneAreRefused() {
    for (String wrong : List.of("", " a", "a ", "../x", "a/b", "ä", "x".repeat(41), "a\nb")) {
      refused(StoreProblem.CODE_WRONG, () -> new CaseCode(wrong));
    }
    refused(StoreProblem.LABEL_WRONG, () -> new PartName(PartKind.SCAN, Jaw.UPPER, "a\u0000"));
  }

  static void refused(StoreProblem problem, ThrowingCallable work) {
    assertThatThrownBy(work)
        .isInstanceOfSatisfying(
            Refusal.class,
            refusal -> {
              assertThat(refusal.code()).isEqualTo(problem.code());
              assertThat(refusal.getMessage()).doesNotContain("%s");
              assertThat(refusal.advice()).isNotBlank();
            });
  }
}
