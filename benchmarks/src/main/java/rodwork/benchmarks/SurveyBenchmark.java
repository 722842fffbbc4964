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
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.intake.Cast;
import rodwork.geometry.intake.Intake;
import rodwork.geometry.intake.IntakeOptions;
import rodwork.geometry.overhang.Overhang;
import rodwork.geometry.overhang.OverhangLimits;
import rodwork.survey.Gauges;
import rodwork.survey.Survey;
import rodwork.survey.SurveyRules;
import rodwork.survey.Surveyor;

/** A new axis on a cast that has been taken in: the undercut depths alone, and a whole survey. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 6, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(
    value = 1,
    jvmArgs = {"-Xmx1g", "-XX:+UseParallelGC"})
@SuppressWarnings("NullAway.Init") // filled by JMH and setUp()
public class SurveyBenchmark {
  @Param({Casts.REAL, "10k", "100k", "270k", "1M"})
  public String cast;

  private Surveyor surveyor;
  private Overhang.Caster caster;
  private OverhangLimits limits;
  private Axes axes;

  @Setup
  public void setUp() {
    Cast taken = Intake.of(Casts.raw(cast), IntakeOptions.usual(), Watch.NONE);
    SurveyRules rules = SurveyRules.SHIPPED;
    if (cast.equals(Casts.REAL)) {
      Arch arch = Arch.of(taken.topology(), Jaw.LOWER, FrameHints.NONE);
      surveyor = Surveyor.of(arch, rules);
      axes = new Axes(arch.frame().z());
    } else {
      AnatomicSurface whole = AnatomicSurface.whole(taken.mesh());
      surveyor = Surveyor.of(taken.topology(), whole, null, rules);
      axes = new Axes(Vec3.Z);
    }
    caster = new Overhang.Caster(taken.topology(), taken.loops());
    limits =
        new OverhangLimits(
            rules.cap().value(), rules.shankRadius().value(), rules.shankReach().value());
  }

  /** The undercut depth of every vertex. */
  @Benchmark
  public Overhang field() {
    return caster.along(axes.next(), limits, Watch.NONE);
  }

  /** Depths, survey lines and the marks of three gauges. */
  @Benchmark
  public Survey survey() {
    return surveyor.survey(axes.next(), Gauges.COMMON, Watch.NONE);
  }
}
