package rodwork.app.server;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.util.Map;
import java.util.concurrent.CancellationException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rodwork.app.AppRefusal;
import rodwork.app.report.Json;
import rodwork.geometry.Refusal;
import rodwork.rules.Wording;

/** Turns failures into {@link Problem}s and HTTP states. */
final class Problems {
  private static final Logger LOG = LoggerFactory.getLogger(Problems.class);
  private static final int UNPROCESSABLE = 422;

  private static final Map<String, Integer> STATUS =
      Map.of(
          AppRefusal.TOKEN_REFUSED.code(), 401,
          AppRefusal.HOST_REFUSED.code(), 403,
          AppRefusal.ORIGIN_REFUSED.code(), 403,
          AppRefusal.CAST_NOT_OPEN.code(), 404,
          AppRefusal.NOT_FOUND.code(), 404,
          AppRefusal.REQUEST_UNREADABLE.code(), 400,
          AppRefusal.TOO_MANY_CASTS.code(), 409,
          AppRefusal.UPLOAD_TOO_BIG.code(), 413,
          AppRefusal.MEMORY_SHORT.code(), 413,
          AppRefusal.FAULT.code(), 500);

  private Problems() {}

  /** A failure as a problem; what is no refusal is a fault of Rodwork and goes to the log. */
  static Problem of(Throwable failure) {
    return switch (failure) {
      case Refusal refusal -> problem(refusal);
      case CancellationException _ -> of(AppRefusal.REQUEST_UNREADABLE.with("it was stopped"));
      case OutOfMemoryError _ ->
          of(AppRefusal.MEMORY_SHORT.with("this scan", Runtime.getRuntime().maxMemory() >> 20));
      default -> {
        LOG.error("a fault", failure);
        yield of(
            AppRefusal.FAULT.with(
                failure.getClass().getSimpleName(), "the terminal in which rodwork runs"));
      }
    };
  }

  private static Problem problem(Refusal refusal) {
    return new Problem(
        refusal.code(),
        refusal.getMessage(),
        BenchAdvice.of(refusal),
        Json.pieces(Wording.of(refusal.pieces().toArray())));
  }

  /** A refusal that is part of an answer; null where there is none. */
  static @Nullable ObjectNode json(@Nullable Refusal refusal) {
    return refusal == null ? null : json(problem(refusal));
  }

  /** A problem that is told within an answer. */
  static ObjectNode json(Problem problem) {
    ObjectNode json = Json.object().put("code", problem.code());
    json.put("message", problem.message()).put("advice", problem.advice());
    return json.set("pieces", problem.pieces());
  }

  /** Answers a request with a problem. */
  static void answer(Throwable failure, Context context) {
    Problem problem = of(failure);
    context.status(STATUS.getOrDefault(problem.code(), UNPROCESSABLE));
    context.json(problem);
  }
}
