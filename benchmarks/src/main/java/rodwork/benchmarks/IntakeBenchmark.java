package rodwork.benchmarks;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import rodwork.geometry.Watch;
import rodwork.geometry.intake.Cast;
import rodwork.geometry.intake.Intake;
import rodwork.geometry.intake.IntakeOptions;
import rodwork.geometry.io.RawMesh;

/** From a file's mesh in memory to a cast: defects looked for, unit found, report written. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(
    value = 1,
    jvmArgs = {"-Xmx1g", "-XX:+UseParallelGC"})
@SuppressWarnings("NullAway.Init") // filled by JMH and setUp()
public class IntakeBenchmark {
  @Param({Casts.REAL, "1M"})
  public String cast;

  private RawMesh raw;

  @Setup
  public void setUp() {
    raw = Casts.raw(cast);
  }

  @Benchmark
  public Cast intake() {
    return Intake.of(raw, IntakeOptions.usual(), Watch.NONE);
  }
}
