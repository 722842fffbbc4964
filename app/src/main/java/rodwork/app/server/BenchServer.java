package rodwork.app.server;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import io.javalin.http.staticfiles.Location;
import io.javalin.util.JavalinBindException;
import io.javalin.websocket.WsConfig;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.ee10.servlet.ServletContextHandler;
import org.eclipse.jetty.util.component.LifeCycle;
import org.eclipse.jetty.websocket.core.server.WebSocketServerComponents;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Jaw;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.casework.rulebook.Rulebook;
import rodwork.geometry.Watch;

/**
 * The running server of the bench: its pages, its requests, its sockets.
 *
 * <p>Everything passes the {@link Gate} first. Nothing is fetched from elsewhere, and the pages may
 * not fetch from elsewhere either (Content-Security-Policy).
 */
public final class BenchServer implements AutoCloseable {
  /** The port taken when none is named and it is free, so that the browser knows its settings. */
  public static final int USUAL_PORT = 7357;

  private static final String LOOPBACK = "127.0.0.1";
  private static final long STOP_WITHIN_MILLIS = 2000;

  /** A connection that says nothing is pinged, so that it lives while the page is open. */
  private static final int PING_SECONDS = 10;

  private final Shelf shelf;
  private final Map<String, SurveySocket> sockets = new ConcurrentHashMap<>();
  private final Javalin javalin;
  private final Gate gate;
  private final CastRoutes routes;
  private final Settings settings;

  /**
   * How to serve.
   *
   * @param bench folder of the built bench
   * @param listen address to listen at
   * @param port port to listen at; 0 for any free one, null for the usual one where free
   * @param largestUpload the largest scan file taken [bytes]
   * @param store folder of the case store; made when the first case is
   * @param rulebook what everything on the bench goes by
   */
  public record Settings(
      Path bench,
      String listen,
      @Nullable Integer port,
      long largestUpload,
      Path store,
      Rulebook rulebook) {
    private static final long LARGEST_UPLOAD = 512L << 20;

    /** Settings that go by the shipped rulebook. */
    public Settings(
        Path bench, String listen, @Nullable Integer port, long largestUpload, Path store) {
      this(bench, listen, port, largestUpload, store, Rulebook.shipped());
    }

    /** Settings with the usual limits; without an address, this machine alone. */
    public static Settings of(
        Path bench, @Nullable String listen, @Nullable Integer port, Path store) {
      return new Settings(bench, listen == null ? LOOPBACK : listen, port, LARGEST_UPLOAD, store);
    }

    /** The same with another rulebook. */
    public Settings with(Rulebook other) {
      return new Settings(bench, listen, port, largestUpload, store, other);
    }
  }

  private BenchServer(Settings settings) {
    this.settings = settings;
    this.shelf = new Shelf(settings.rulebook());
    this.gate = Gate.of(settings.listen());
    this.routes = new CastRoutes(shelf, settings.largestUpload());
    this.javalin = Javalin.create(this::configure);
  }

  /**
   * Starts a server and returns when it listens.
   *
   * @throws rodwork.geometry.Refusal {@code port-taken} if nothing can listen there
   */
  public static BenchServer start(Settings settings) {
    Integer port = settings.port();
    try {
      return startAt(settings, port == null ? USUAL_PORT : port);
    } catch (JavalinBindException taken) {
      if (port == null) {
        return startAt(settings, 0);
      }
      throw AppRefusal.PORT_TAKEN.with(settings.listen(), port, reason(taken));
    }
  }

  private static BenchServer startAt(Settings settings, int port) {
    BenchServer server = new BenchServer(settings);
    server.javalin.start(settings.listen(), port);
    server.gate.setPort(server.javalin.port());
    return server;
  }

  private static String reason(Throwable failure) {
    Throwable cause = failure;
    while (cause.getCause() != null) {
      cause = cause.getCause();
    }
    return String.valueOf(cause.getMessage());
  }

  public int port() {
    return javalin.port();
  }

  public String token() {
    return gate.token();
  }

  /** What to open in a browser, with the token. */
  public String address() {
    boolean anywhere = settings.listen().equals("0.0.0.0") || settings.listen().equals("::");
    String host = anywhere ? LOOPBACK : settings.listen();
    return "http://"
        + (host.contains(":") ? "[" + host + "]" : host)
        + ":"
        + port()
        + "/#"
        + gate.token();
  }

  /**
   * Opens a scan file, so that the bench shows it first.
   *
   * @throws rodwork.geometry.Refusal if it cannot be taken in
   */
  public void open(Path file, CastOptions options, Watch watch) {
    String name = String.valueOf(file.getFileName());
    byte[] content;
    try {
      content = Files.readAllBytes(file);
    } catch (IOException failure) {
      throw AppRefusal.FILE_UNREADABLE.with(file, String.valueOf(failure.getMessage()));
    }
    OpenedCast cast = OpenCast.of(content, name, options, watch);
    shelf.add(cast, Scan.of(name, content, options.unit()));
  }

  /** Begins to open the demo cast, so that it is there when the page asks for it. */
  public void prepareDemo() {
    Runnable open =
        () -> {
          try {
            routes.demo(Jaw.LOWER);
          } catch (RuntimeException _) {
            // The page will ask for it again, and be told then.
          }
        };
    Thread.ofPlatform().daemon().name("demo").start(open);
  }

  @Override
  public void close() {
    sockets.values().forEach(SurveySocket::close);
    javalin.stop();
  }

  private void socket(WsConfig config) {
    config.onConnect(
        connection -> {
          connection.enableAutomaticPings(PING_SECONDS, TimeUnit.SECONDS);
          String id = connection.pathParam("id");
          sockets.put(
              connection.sessionId(),
              new SurveySocket(
                  connection.session,
                  () -> shelf.get(id),
                  () -> shelf.thinned(id),
                  () -> shelf.teeth(id),
                  () -> shelf.opposing(id),
                  shelf.rulebook(id).planes()));
        });
    config.onMessage(
        message -> {
          SurveySocket socket = sockets.get(message.sessionId());
          if (socket == null) {
            message.session.disconnect(); // given up after an error: the bench opens a new line
          } else {
            socket.hear(message.message());
          }
        });
    config.onClose(closed -> forget(closed.sessionId()));
    config.onError(
        failed -> {
          forget(failed.sessionId());
          failed.session.disconnect();
        });
  }

  private void forget(String sessionId) {
    SurveySocket socket = sockets.remove(sessionId);
    if (socket != null) {
      socket.close();
    }
  }

  private void configure(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.jetty.modifyServer(server -> server.setStopTimeout(STOP_WITHIN_MILLIS));
    config.jetty.modifyHttpConfiguration(http -> http.setSendServerVersion(false));
    config.jetty.modifyServletContextHandler(BenchServer::sendFieldsAsTheyAre);
    config.staticFiles.add(
        files -> {
          files.directory = settings.bench().toString();
          files.location = Location.EXTERNAL;
          files.headers = Map.of("Cache-Control", "no-cache");
        });
    routes.addTo(config.routes);
    new TeethRoutes(shelf).addTo(config.routes);
    new OpposingRoutes(shelf).addTo(config.routes);
    PlanRoutes plans = new PlanRoutes(shelf);
    new PathRoutes(shelf, plans).addTo(config.routes);
    new TripodRoutes(shelf).addTo(config.routes);
    new AbutmentRoutes(shelf).addTo(config.routes);
    plans.addTo(config.routes);
    new HelpRoutes(shelf).addTo(config.routes);
    CaseRoutes cases = new CaseRoutes(shelf, settings.store());
    cases.addTo(config.routes);
    new PrescriptionRoutes(shelf, cases).addTo(config.routes);
    config.routes.ws("/api/casts/{id}/survey", this::socket);
    config.routes.before(this::guard);
    config.routes.wsBeforeUpgrade(this::guardSocket);
    config.routes.exception(Exception.class, Problems::answer);
    config.routes.exception(HttpResponseException.class, BenchServer::refusedByHttp);
  }

  /** Deflating a field would cost more time than the survey itself, on one machine. */
  private static void sendFieldsAsTheyAre(ServletContextHandler handler) {
    handler.addEventListener(
        new LifeCycle.Listener() {
          @Override
          public void lifeCycleStarted(LifeCycle started) {
            WebSocketServerComponents.getWebSocketComponents(handler)
                .getExtensionRegistry()
                .unregister("permessage-deflate");
          }
        });
  }

  private void guard(Context request) {
    gate.checkSender(request);
    request.header("Content-Security-Policy", policy(String.valueOf(request.header("Host"))));
    request.header("X-Content-Type-Options", "nosniff");
    request.header("Referrer-Policy", "no-referrer");
    request.header("Cross-Origin-Opener-Policy", "same-origin");
    request.header("Cross-Origin-Resource-Policy", "same-origin");
    boolean guarded =
        request.path().startsWith("/api/") || request.path().startsWith(HelpRoutes.BELOW);
    if (guarded && !isUpgrade(request)) {
      gate.checkToken(request);
      request.header("Cache-Control", "no-store");
    }
  }

  private void guardSocket(Context upgrade) {
    gate.checkSender(upgrade);
    gate.checkSocketToken(upgrade);
    shelf.get(upgrade.path().replaceFirst("^/api/casts/", "").replaceFirst("/survey$", ""));
  }

  private static boolean isUpgrade(Context request) {
    return "websocket".equalsIgnoreCase(request.header("Upgrade"));
  }

  private static String policy(String host) {
    return "default-src 'self'; connect-src 'self' ws://"
        + host
        + "; img-src 'self' data: blob:; style-src 'self' 'unsafe-inline'; worker-src 'self' blob:;"
        + " object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
  }

  /** What the HTTP layer itself refuses, said like every other problem. */
  private static void refusedByHttp(HttpResponseException refused, Context request) {
    Problems.answer(
        refused.getStatus() == HttpStatus.NOT_FOUND.getCode()
            ? AppRefusal.NOT_FOUND.with(request.path())
            : AppRefusal.REQUEST_UNREADABLE.with(String.valueOf(refused.getMessage())),
        request);
  }
}
