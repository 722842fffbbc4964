package rodwork.app.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import rodwork.anatomy.Jaw;
import rodwork.app.operation.OpenDemo;
import rodwork.app.server.BenchServer;
import rodwork.geometry.Watch;
import rodwork.geometry.io.MeshFiles;

/**
 * {@code rodwork rehearse}: does the usual work on a demo cast. The launcher runs it after a build
 * and lets Java keep what it loaded and learned, so that later starts are quick; the demo casts
 * that it makes are kept too.
 */
@Command(name = "rehearse", hidden = true, description = "Does the usual work on a demo cast.")
final class RehearseCommand implements Runnable {
  @Parameters(arity = "0..1", defaultValue = "3", description = "How many times.")
  private int times;

  @Override
  public void run() {
    try {
      Path folder = Files.createTempDirectory("rodwork-rehearsal-");
      try {
        rehearse(folder);
      } finally {
        removeAll(folder);
      }
    } catch (IOException failure) {
      throw new java.io.UncheckedIOException(failure);
    }
  }

  private void rehearse(Path folder) throws IOException {
    OpenDemo.of(Jaw.UPPER, Watch.NONE);
    Path scan = folder.resolve("scan.stl");
    MeshFiles.write(scan, OpenDemo.of(Jaw.LOWER, Watch.NONE).mesh(), Watch.NONE);
    for (int i = 0; i < times; i++) {
      run("survey", scan.toString(), "--jaw", "lower", "--tilt", "2,1");
    }
    run("survey", scan.toString(), "--json", "-", "--picture", folder.resolve("p.png").toString());
    run("intake", scan.toString());
    Files.writeString(folder.resolve("index.html"), "<!doctype html>");
    BenchServer.start(BenchServer.Settings.of(folder, null, 0, folder)).close();
  }

  private static void run(String... arguments) {
    PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
    int code = new CommandLineRun(nowhere, nowhere).run(arguments);
    if (code != ExitCode.FINE) {
      throw new IllegalStateException(List.of(arguments) + " ended with " + code);
    }
  }

  private static void removeAll(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
