package rodwork.app.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.app.Home;
import rodwork.app.operation.CastOptions;
import rodwork.app.server.BenchServer;
import rodwork.casework.rulebook.Rulebook;

/** {@code rodwork bench}: serves the bench to a browser on this machine until it is stopped. */
@Command(
    name = BenchCommand.NAME,
    description = "Opens the bench in the browser, on a scan or on a demo cast.",
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class BenchCommand implements Runnable {
  static final String NAME = "bench";

  @Spec
  @SuppressWarnings("NullAway.Init") // picocli fills it in
  private CommandSpec spec;

  @Parameters(arity = "0..1", paramLabel = "CAST", description = ScanFile.FORMATS)
  private @Nullable Path cast;

  @Option(
      names = "--jaw",
      paramLabel = "upper|lower",
      converter = JawOption.class,
      description = "Which arch it is; its shape cannot tell surely.")
  private @Nullable Jaw jaw;

  @Option(
      names = "--port",
      paramLabel = "N",
      description =
          "Port to listen at; 0 takes any free one. Without it: "
              + BenchServer.USUAL_PORT
              + " where free, else any.")
  private @Nullable Integer port;

  @Option(
      names = "--listen",
      paramLabel = "ADDR",
      description =
          "Address to listen at instead of 127.0.0.1. Others on the network can then reach the"
              + " bench, if they know the token; nothing is encrypted.")
  private @Nullable String listen;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private RulebookMixin rulebook;

  @Option(names = "--no-browser", description = "Only print the address.")
  private boolean noBrowser;

  @Mixin
  @SuppressWarnings("NullAway.Init")
  private StoreMixin store;

  @Override
  public void run() {
    if (port != null && (port < 0 || port > 65535)) {
      throw new ParameterException(
          spec.commandLine(), "--port " + port + " is not within 0 to 65535");
    }
    PrintWriter out = spec.commandLine().getOut();
    Rulebook book = rulebook.book();
    BenchServer server =
        BenchServer.start(
            BenchServer.Settings.of(Home.bench(), listen, port, store.folder()).with(book));
    if (cast != null) {
      open(server, cast);
    } else {
      server.prepareDemo();
    }
    out.println("The bench: " + server.address());
    if (rulebook.given()) {
      out.println("Its rulebook: " + book.title() + ", " + book.hash());
    }
    out.println("Stop it with Ctrl+C.");
    out.flush();
    if (!noBrowser) {
      openBrowser(server.address());
    }
    waitForEnd(server);
  }

  private void open(BenchServer server, Path file) {
    CastOptions options =
        new CastOptions(jaw == null ? Jaw.UNKNOWN : jaw, FrameHints.NONE, Optional.empty());
    try (TerminalWatch watch = TerminalWatch.on(spec.commandLine().getErr())) {
      server.open(file, options, watch);
    } catch (RuntimeException refused) {
      server.close();
      throw refused;
    }
  }

  private static void waitForEnd(BenchServer server) {
    CountDownLatch end = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(new Thread(server::close, "shutdown"));
    try {
      end.await();
    } catch (InterruptedException _) {
      server.close();
      Thread.currentThread().interrupt();
    }
  }

  /** Asks the desktop to show an address; where there is no desktop, the printed address serves. */
  private static void openBrowser(String address) {
    String system = System.getProperty("os.name", "");
    String[] opener;
    if (system.startsWith("Windows")) {
      opener = new String[] {"rundll32", "url.dll,FileProtocolHandler", address};
    } else if (system.startsWith("Mac")) {
      opener = new String[] {"open", address};
    } else if (System.getenv("DISPLAY") != null || System.getenv("WAYLAND_DISPLAY") != null) {
      opener = new String[] {"xdg-open", address};
    } else {
      return;
    }
    try {
      new ProcessBuilder(opener)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .redirectError(ProcessBuilder.Redirect.DISCARD)
          .start();
    } catch (IOException _) {
      // No opener on this desktop: the address stands on the screen.
    }
  }
}
