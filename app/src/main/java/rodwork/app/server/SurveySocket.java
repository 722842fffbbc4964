package rodwork.app.server;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.ByteBuffer;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletionException;
import java.util.function.Function;
import java.util.function.Supplier;
import org.eclipse.jetty.websocket.api.Callback;
import org.eclipse.jetty.websocket.api.Session;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Tooth;
import rodwork.app.AppRefusal;
import rodwork.app.operation.FoundTeeth;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.RunSurvey;
import rodwork.app.operation.SurveyedCast;
import rodwork.app.operation.ThinnedCast;
import rodwork.app.operation.WantedPath;
import rodwork.app.report.Json;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.survey.Gauges;
import rodwork.survey.Profile;
import rodwork.survey.Survey;
import rodwork.survey.plane.PlaneRules;
import rodwork.survey.strip.ParallelStrip;
import rodwork.survey.tooth.CrownZone;
import rodwork.survey.tooth.ToothMark;
import rodwork.survey.tooth.ToothSurvey;

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
    SEAT,
    TOOTH,
    PLACED,
    STRIP;

    static @Nullable Kind named(String word) {
      for (Kind kind : values()) {
        if (kind.name().toLowerCase(java.util.Locale.ROOT).equals(word)) {
          return kind;
        }
      }
      return null;
    }
  }

  private static final Logger LOG = LoggerFactory.getLogger(SurveySocket.class);

  private final Session session;
  private final Supplier<OpenedCast> cast;
  private final Supplier<ThinnedCast> thinned;
  private final Supplier<Optional<FoundTeeth>> teeth;
  private final Supplier<Optional<LaidOpposing>> opposing;
  private final PlaneRules planes;
  private final SurveyFrame frame = new SurveyFrame();
  private final Map<Kind, NewestOnly> workers = new EnumMap<>(Kind.class);

  /** What places are read on: the newest survey, exact in any case. */
  private volatile @Nullable Latest latest;

  /** The sections of the strip, and the teeth that they were cut for. */
  private volatile @Nullable CutStrip strip;

  private record CutStrip(@Nullable FoundTeeth teeth, ParallelStrip sections) {}

  /** A survey that may have to be made yet, and is made once. */
  private static final class Latest {
    private final Function<Watch, SurveyedCast> make;
    private @Nullable SurveyedCast made;

    Latest(Function<Watch, SurveyedCast> make) {
      this.make = make;
    }

    synchronized SurveyedCast get(Watch watch) {
      SurveyedCast there = made;
      if (there == null) {
        there = make.apply(watch);
        made = there;
      }
      return there;
    }
  }

  /**
   * Takes a connection over.
   *
   * @param cast the cast as it is now; throws a refusal once it is closed
   * @param thinned the same with fewer triangles
   * @param teeth of the cast as they were last found
   * @param opposing what was last laid over it
   * @param planes the rules of its guiding planes
   */
  SurveySocket(
      Session session,
      Supplier<OpenedCast> cast,
      Supplier<ThinnedCast> thinned,
      Supplier<Optional<FoundTeeth>> teeth,
      Supplier<Optional<LaidOpposing>> opposing,
      PlaneRules planes) {
    this.session = session;
    this.cast = cast;
    this.thinned = thinned;
    this.teeth = teeth;
    this.opposing = opposing;
    this.planes = planes;
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
            "kind is "
                + message.path("kind")
                + ", not survey, read, profile, seat, tooth, placed or strip");
      }
      if (kind == Kind.SURVEY) {
        survey(seq, message);
      } else if (kind == Kind.TOOTH || kind == Kind.PLACED) {
        tooth(kind, seq, message);
      } else if (kind == Kind.STRIP) {
        strip(seq, new WantedPath.AtTilt(Requests.tilt(message)));
      } else {
        place(kind, seq, message);
      }
    } catch (JsonProcessingException broken) {
      tell(seq, AppRefusal.REQUEST_UNREADABLE.with("it is no JSON"));
    } catch (RuntimeException refused) {
      tell(seq, refused);
    }
  }

  private void survey(long seq, JsonNode message) {
    WantedPath path = new WantedPath.AtTilt(Requests.tilt(message));
    Gauges gauges = Requests.gauges(message);
    if (message.path("thinned").asBoolean(false)) {
      worker(Kind.SURVEY)
          .submitQuick(
              watch -> guarded(seq, watch, stop -> surveyThinned(seq, path, gauges, stop)));
      return;
    }
    boolean fieldAlone = message.path("fieldAlone").asBoolean(false);
    submit(
        Kind.SURVEY,
        seq,
        watch -> {
          SurveyedCast surveyed =
              fieldAlone
                  ? RunSurvey.field(cast.get(), path, gauges, watch)
                  : RunSurvey.of(cast.get(), path, gauges, watch);
          ByteBuffer bytes =
              fieldAlone ? frame.field(seq, surveyed, true) : frame.whole(seq, surveyed, watch);
          watch.check();
          latest = new Latest(_ -> surveyed);
          sendOff(bytes);
        });
  }

  private void surveyThinned(long seq, WantedPath path, Gauges gauges, Watch watch) {
    OpenedCast whole = cast.get();
    SurveyedCast surveyed = RunSurvey.thinned(whole, thinned.get(), path, gauges, watch);
    ByteBuffer bytes = frame.field(seq, surveyed, false);
    watch.check();
    latest = new Latest(reader -> RunSurvey.places(whole, path, gauges, reader));
    sendOff(bytes);
  }

  /** Waits until it is on its way, which keeps a slow reader from piling frames up in memory. */
  private void sendOff(ByteBuffer bytes) {
    Callback.Completable.with(sent -> session.sendBinary(bytes, sent)).join();
  }

  private void place(Kind kind, long seq, JsonNode message) {
    if (latest == null) {
      throw AppRefusal.NO_FIELD_YET.with();
    }
    Vec3 point = Requests.vector(message.path("point"), "point");
    int triangle = Requests.triangle(message, cast.get().mesh().triangleCount());
    Optional<Double> gauge = Requests.gauge(message);
    if (kind == Kind.SEAT && gauge.isEmpty()) {
      throw AppRefusal.REQUEST_UNREADABLE.with("a seat needs its gauge");
    }
    submit(
        kind,
        seq,
        watch -> {
          Latest newest = latest;
          if (newest == null) {
            throw AppRefusal.NO_FIELD_YET.with();
          }
          SurveyedCast now = newest.get(watch);
          ObjectNode json = Json.object();
          json.put("seq", seq);
          switch (kind) {
            case READ -> {
              json.put("kind", "reading");
              ObjectNode reading = PlaceJson.reading(now.survey().read(point, triangle));
              opposing
                  .get()
                  .ifPresent(
                      laid -> Json.put(reading, "clearanceMm", laid.scan().clearance().at(point)));
              json.set("reading", reading);
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
            case SURVEY, TOOTH, PLACED, STRIP -> throw new IllegalStateException("has its own way");
          }
          watch.check();
          send(json);
        });
  }

  /** One tooth at the path: the depth of each zone of its crown, or a mark asked for by place. */
  private void tooth(Kind kind, long seq, JsonNode message) {
    int fdi = message.path("tooth").asInt();
    Optional<CrownZone> zone = CrownZone.named(message.path("zone").asText());
    Optional<Double> gauge = Requests.gauge(message);
    if (kind == Kind.PLACED && (zone.isEmpty() || gauge.isEmpty())) {
      throw AppRefusal.REQUEST_UNREADABLE.with("a place needs its zone and its gauge");
    }
    submit(
        kind,
        seq,
        watch -> {
          Latest newest = latest;
          if (newest == null) {
            throw AppRefusal.NO_FIELD_YET.with();
          }
          Tooth tooth =
              teeth
                  .get()
                  .map(FoundTeeth::dentition)
                  .filter(there -> ToothNumber.exists(fdi))
                  .flatMap(there -> there.tooth(fdi))
                  .orElseThrow(
                      () ->
                          AppRefusal.TOOTH_NOT_FOUND.with(
                              ToothNumber.exists(fdi) ? ToothNumber.of(fdi) : fdi));
          Survey survey = newest.get(watch).survey();
          ObjectNode json = Json.object();
          json.put("seq", seq);
          if (kind == Kind.TOOTH) {
            json.put("kind", "tooth");
            json.set("depths", TeethJson.depths(ToothSurvey.of(survey, tooth)));
          } else {
            json.put("kind", "placed");
            TeethJson.mark(
                json, ToothMark.of(survey, tooth, zone.orElseThrow(), gauge.orElseThrow()));
          }
          watch.check();
          send(json);
        });
  }

  /** The parallel strip at a tilt; it needs no survey, only the teeth. */
  private void strip(long seq, WantedPath path) {
    submit(
        Kind.STRIP,
        seq,
        watch -> {
          FoundTeeth found = teeth.get().orElse(null);
          CutStrip cut = strip;
          if (cut == null || !Objects.equals(cut.teeth(), found)) {
            cut = new CutStrip(found, StripJson.strip(found, planes));
            strip = cut;
          }
          watch.check();
          ObjectNode json = Json.object();
          json.put("kind", "strip");
          json.put("seq", seq);
          json.set(
              "strip",
              StripJson.of(
                  found == null
                      ? List.of()
                      : cut.sections().at(path.on(found.cast()).axis(), planes)));
          watch.check();
          send(json);
        });
  }

  private void submit(Kind kind, long seq, NewestOnly.Job job) {
    worker(kind).submit(watch -> guarded(seq, watch, job));
  }

  private NewestOnly worker(Kind kind) {
    return Objects.requireNonNull(workers.get(kind));
  }

  private void guarded(long seq, Watch watch, NewestOnly.Job job) {
    try {
      job.run(watch);
    } catch (CancellationException _) {
      // Overtaken: a newer request is answered instead.
    } catch (CompletionException unsent) {
      hangUp(unsent);
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
    session.sendText(Json.compact(json), Callback.from(() -> {}, this::hangUp));
  }

  /**
   * An answer could not be sent. The bench would wait for it for good on a line that is still open,
   * so the line is cut: the bench opens a new one and asks again.
   */
  private void hangUp(Throwable failure) {
    if (session.isOpen()) {
      LOG.warn("an answer could not be sent, the bench is asked to connect again", failure);
      session.disconnect();
    }
  }

  @Override
  public void close() {
    workers.values().forEach(NewestOnly::close);
  }
}
