package rodwork.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class NewestOnlyTest {
  private final AtomicLong clock = new AtomicLong();
  private final NewestOnly newest = new NewestOnly("test", clock::get);
  private final List<String> done = new CopyOnWriteArrayList<>();

  @AfterEach
  void close() {
    newest.close();
  }

  @Test
  void whatWaitsIsDroppedForTheNewest() throws InterruptedException {
    CountDownLatch started = new CountDownLatch(1);
    CountDownLatch go = new CountDownLatch(1);
    newest.submit(
        watch -> {
          started.countDown();
          await(go);
          done.add("first");
        });
    await(started);
    newest.submit(watch -> done.add("second"));
    CountDownLatch last = new CountDownLatch(1);
    newest.submit(
        watch -> {
          done.add("third");
          last.countDown();
        });
    go.countDown();
    await(last);
    assertThat(done).containsExactly("first", "third");
  }

  @Test
  void whatRunsIsStoppedWhenOvertaken() throws InterruptedException {
    assertThat(overtaken(newest::submit)).isTrue();
  }

  @Test
  void whatRunsIsLetFinishWhenResultsWereHeldUp() throws InterruptedException {
    clock.set(NewestOnly.PATIENCE_NANOS);
    assertThat(overtaken(newest::submit)).isFalse();
  }

  @Test
  void whatIsNotQuickIsStoppedForAQuickOneInAnyCase() throws InterruptedException {
    clock.set(NewestOnly.PATIENCE_NANOS);
    assertThat(overtaken(newest::submitQuick)).isTrue();
  }

  /** Whether a running job is told to stop when another comes. */
  private boolean overtaken(Consumer<NewestOnly.Job> submit) throws InterruptedException {
    CountDownLatch started = new CountDownLatch(1);
    CountDownLatch go = new CountDownLatch(1);
    CountDownLatch ended = new CountDownLatch(1);
    boolean[] stopped = new boolean[1];
    newest.submit(
        watch -> {
          started.countDown();
          await(go);
          stopped[0] = watch.cancelled();
          ended.countDown();
        });
    await(started);
    submit.accept(watch -> done.add("next"));
    go.countDown();
    await(ended);
    return stopped[0];
  }

  @Test
  void closingStopsWhatRuns() throws InterruptedException {
    CountDownLatch started = new CountDownLatch(1);
    CountDownLatch ended = new CountDownLatch(1);
    newest.submit(
        watch -> {
          started.countDown();
          while (!watch.cancelled()) {
            Thread.onSpinWait();
          }
          ended.countDown();
        });
    await(started);
    newest.close();
    await(ended);
    newest.submit(watch -> done.add("after"));
    assertThat(done).isEmpty();
  }

  private static void await(CountDownLatch latch) {
    try {
      assertThat(latch.await(20, TimeUnit.SECONDS)).isTrue();
    } catch (InterruptedException interrupted) {
      throw new AssertionError(interrupted);
    }
  }
}
