package rodwork.app.server;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.ByteBuffer;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletionException;
import java.util.function.Supplier;
import org.eclipse.jetty.websocket.api.Callback;
import org.eclipse.jetty.websocket.api.Session;
import org.jspecify.annotations.Nullable;
import rodwork.app.AppRefusal;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.RunSurvey;
import rodwork.app.operation.SurveyedCast;
import rodwork.app.operation.WantedPath;
import rodwork.app.report.Json;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.survey.Gauges;
import rodwork.survey.Profile;
import rodwork.survey.Tilt;

/**
 * One open bench: surveys as the tilt moves, reads places as the pointer moves. Each kind of
 * request has its own {@link NewestOnly}, so that a reading need not wait for a survey.
 */
final class SurveySocket implements AutoCloseable {
  /** The kinds of request, by the word that the protocol has for them. */
  private enum Kind {
    SURVEY,
    READ,
    PROFILE,
    SEAT;

    static @Nullable Kind named(String word) {
      for (Kind kind : values()) {
        if (kind.name().toLowerCase(java.util.Locale.ROOT).equals(word)) {
          return kind;
        }
      }
      return null;
    }
  }

  private final Session session;
  private final Supplier<OpenedCast> cast;
  private final SurveyFrame frame = new SurveyFrame();
  private final Map<Kind, NewestOnly> workers = new EnumMap<>(Kind.class);
  private volatile @Nullable SurveyedCast latest;

  /**
   * Takes a connection over.
   *
   * @param cast the cast as it is now; throws a refusal once it is closed
   */
  SurveySocket(Session session, Supplier<OpenedCast> cast) {
    this.session = session;
    this.cast = cast;
    for (Kind kind : Kind.values()) {
      workers.put(kind, new NewestOnly("bench-" + kind, System::nanoTime));
    }
  }

  /** One message of the browser. */
  void hear(String text) {
    long seq = -1;
    try {
      JsonNode message = Json.read(text);
      seq = Requests.seq(message);
      Kind kind = Kind.named(message.path("kind").asText());
      if (kind == null) {
        throw AppRefusal.REQUEST_UNREADABLE.with(
            "kind is " + message.path("kind") + ", not survey, read, profile or seat");
      }
      if (kind == Kind.SURVEY) {
        boolean fieldAlone = message.path("fieldAlone").asBoolean(false);
        survey(seq, Requests.tilt(message), Requests.gauges(message), fieldAlone);
      } else {
        place(kind, seq, message);
      }
    } catch (JsonProcessingException broken) {
      tell(seq, AppRefusal.REQUEST_UNREADABLE.with("it is no JSON"));
    } catch (RuntimeException refused) {
      tell(seq, refused);
    }
  }

  private void survey(long seq, Tilt tilt, Gauges gauges, boolean fieldAlone) {
    submit(
        Kind.SURVEY,
        seq,
        watch -> {
          WantedPath path = new WantedPath.AtTilt(tilt);
          SurveyedCast surveyed =
              fieldAlone
                  ? RunSurvey.field(cast.get(), path, gauges, watch)
                  : RunSurvey.of(cast.get(), path, gauges, watch);
          ByteBuffer bytes =
              fieldAlone ? frame.field(seq, surveyed) : frame.whole(seq, surveyed, watch);
          watch.check();
          latest = surveyed;
          // Waiting until it is on its way keeps a slow reader from piling frames up in memory.
          Callback.Completable.with(sent -> session.sendBinary(bytes, sent)).join();
        });
  }

  private void place(Kind kind, long seq, JsonNode message) {
    SurveyedCast surveyed = latest;
    if (surveyed == null) {
      throw AppRefusal.NO_FIELD_YET.with();
    }
    Vec3 point = Requests.vector(message.path("point"), "point");
    int triangle = Requests.triangle(message, surveyed.cast().mesh().triangleCount());
    Optional<Double> gauge = Requests.gauge(message);
    if (kind == Kind.SEAT && gauge.isEmpty()) {
      throw AppRefusal.REQUEST_UNREADABLE.with("a seat needs its gauge");
    }
    submit(
        kind,
        seq,
        watch -> {
          SurveyedCast now = latest == null ? surveyed : latest;
          ObjectNode json = Json.object();
          json.put("seq", seq);
          switch (kind) {
            case READ -> {
              json.put("kind", "reading");
              json.set("reading", PlaceJson.reading(now.survey().read(point, triangle)));
            }
            case PROFILE -> {
              Profile profile = now.survey().profile(point, triangle, gauge);
              json.put("kind", "profile");
              json.set("profile", PlaceJson.profile(profile, gauge));
            }
            case SEAT -> {
              double size = gauge.orElseThrow();
              json.put("kind", "seat");
              PlaceJson.seat(json, now.survey().seat(point, triangle, size), size);
            }
            case SURVEY -> throw new IllegalStateException("surveys have their own way");
          }
          watch.check();
          send(json);
        });
  }

  private void submit(Kind kind, long seq, NewestOnly.Job job) {
    NewestOnly worker = workers.get(kind);
    if (worker != null) {
      worker.submit(watch -> guarded(seq, watch, job));
    }
  }

  private void guarded(long seq, Watch watch, NewestOnly.Job job) {
    try {
      job.run(watch);
    } catch (CancellationException _) {
      // Overtaken: a newer request is answered instead.
    } catch (CompletionException _) {
      // The browser is gone; the connection is closed by its own handler.
    } catch (RuntimeException | OutOfMemoryError failure) {
      tell(seq, failure);
    }
  }

  private void tell(long seq, Throwable failure) {
    Problem problem = Problems.of(failure);
    ObjectNode json = Json.object();
    json.put("kind", "problem");
    json.put("seq", seq);
    json.putObject("problem")
        .put("code", problem.code())
        .put("message", problem.message())
        .put("advice", problem.advice());
    send(json);
  }

  private void send(ObjectNode json) {
    session.sendText(Json.compact(json), Callback.NOOP);
  }

  @Override
  public void close() {
    workers.values().forEach(NewestOnly::close);
  }
}
