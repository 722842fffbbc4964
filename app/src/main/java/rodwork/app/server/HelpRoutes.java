package rodwork.app.server;

import io.javalin.config.RoutesConfig;
import io.javalin.http.ContentType;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import rodwork.app.Rodwork;
import rodwork.casework.rulebook.Rulebook;
import rodwork.casework.rulebook.RulebookPage;
import rodwork.casework.rulebook.RulebookText;

/** Pages to read beside the bench. */
final class HelpRoutes {
  /** The path below which everything wants the token, as the requests of the bench do. */
  static final String BELOW = "/help/";

  /** Where the look of the pages goes. */
  private static final String LOOK = "{{look}}";

  private final Shelf shelf;

  HelpRoutes(Shelf shelf) {
    this.shelf = shelf;
  }

  void addTo(RoutesConfig routes) {
    routes.get(
        BELOW + "rules",
        request -> send(request, RulebookText.html(RulebookPage.of(rulebook(request)))));
    routes.get(
        BELOW + "tutorial",
        request -> send(request, text("tutorial.html").replace(LOOK, RulebookText.look())));
  }

  /** That of the cast which the page was opened beside; the bench's own where there is none. */
  private Rulebook rulebook(Context request) {
    String cast = request.queryParam("cast");
    return cast == null ? shelf.rulebook() : shelf.rulebook(cast);
  }

  private static void send(Context request, String page) {
    request.contentType(ContentType.TEXT_HTML.getMimeType() + "; charset=utf-8");
    request.result(page);
  }

  private static String text(String name) {
    try (InputStream in =
        Objects.requireNonNull(Rodwork.class.getResourceAsStream("help/" + name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }
}
