package rodwork.app.server;

import io.javalin.config.RoutesConfig;
import io.javalin.http.ContentType;
import rodwork.casework.rulebook.Rulebook;
import rodwork.casework.rulebook.RulebookPage;
import rodwork.casework.rulebook.RulebookText;

/** Pages to read beside the bench. */
final class HelpRoutes {
  /** The path below which everything wants the token, as the requests of the bench do. */
  static final String BELOW = "/help/";

  void addTo(RoutesConfig routes) {
    routes.get(
        BELOW + "rules",
        request -> {
          request.contentType(ContentType.TEXT_HTML.getMimeType() + "; charset=utf-8");
          request.result(RulebookText.html(RulebookPage.of(Rulebook.shipped())));
        });
  }
}
