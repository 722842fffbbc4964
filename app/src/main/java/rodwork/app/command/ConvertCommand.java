package rodwork.app.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import rodwork.app.operation.ConvertMesh;

/** {@code rodwork convert}: one mesh file into another format. */
@Command(
    name = "convert",
    description = {
      "Converts a mesh file; the ending of OUT says into what.",
      "Triangles are written as they are read, nothing is mended. Formats that declare a unit are"
          + " brought to mm."
    },
    mixinStandardHelpOptions = true)
final class ConvertCommand implements Runnable {
  @Spec
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @Parameters(paramLabel = "IN", description = ScanFile.FORMATS)
  @SuppressWarnings("NullAway.Init")
  private Path in;

  @Parameters(paramLabel = "OUT", description = "File to write: .stl, .ply, .obj or .3mf.")
  @SuppressWarnings("NullAway.Init")
  private Path outFile;

  @Override
  public void run() {
    ConvertMesh.Converted done;
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      done = ConvertMesh.run(in, outFile, watch);
    }
    PrintWriter out = spec.commandLine().getOut();
    out.printf("%s: %,d vertices, %,d triangles%n", outFile, done.vertices(), done.triangles());
    done.facts().notes().forEach(out::println);
    if (done.coloursLeftOut()) {
      out.println("The colours of " + in.getFileName() + " were left out.");
    }
  }
}
