package rodwork.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;

/** A binary STL on disk to a welded mesh, and to one whose neighbours are known; ≤ 1 GiB heap. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 8, time = 1)
@Fork(
    value = 1,
    jvmArgs = {"-Xmx1g", "-XX:+UseParallelGC"})
@SuppressWarnings("NullAway.Init") // filled by JMH and setUp()
public class ReadBenchmark {
  @Param({"1M"})
  public String cast;

  private Path file;

  @Setup
  public void setUp() throws IOException {
    file = Files.createTempFile("rodwork-read-", ".stl");
    MeshFiles.write(file, MadeCast.of(Casts.triangles(cast)), Watch.NONE);
  }

  @TearDown
  public void tearDown() throws IOException {
    Files.delete(file);
  }

  @Benchmark
  public TriangleMesh weld() {
    return MeshFiles.read(file, Watch.NONE).toMesh();
  }

  @Benchmark
  public MeshTopology weldAndAdjacency() {
    return MeshTopology.of(weld());
  }
}
