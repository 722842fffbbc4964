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
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;

/** The tree over the triangles: its building, 100,000 closest points, a ray from every vertex. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(
    value = 1,
    jvmArgs = {"-Xmx1g", "-XX:+UseParallelGC"})
@SuppressWarnings("NullAway.Init") // filled by JMH and setUp()
public class TreeBenchmark {
  static final int POINTS = 100_000;

  @Param({"270k"})
  public String cast;

  private TriangleMesh mesh;
  private TriangleTree tree;
  private float[] near;

  @Setup
  public void setUp() {
    mesh = Casts.raw(cast).toMesh();
    tree = TriangleTree.of(mesh);
    near = Queries.nearPoints(mesh, POINTS);
  }

  @Benchmark
  public TriangleTree build() {
    return TriangleTree.of(mesh);
  }

  @Benchmark
  public float[] closestPoints() {
    return Queries.distances(tree, near);
  }

  @Benchmark
  public byte[] raysUp() {
    return Queries.hidden(tree, Vec3.Z);
  }
}
