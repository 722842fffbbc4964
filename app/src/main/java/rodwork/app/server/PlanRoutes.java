package rodwork.app.server;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.chart.Notation;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.ComparePlans;
import rodwork.app.operation.JudgeAbutments;
import rodwork.app.operation.MakePlan;
import rodwork.app.operation.OpenedCast;
import rodwork.app.report.AnswerReader;
import rodwork.app.report.ChoicesReader;
import rodwork.app.report.ComparisonJson;
import rodwork.app.report.Json;
import rodwork.app.report.PlanJson;
import rodwork.casework.drawing.PlanDrawing;
import rodwork.casework.drawing.Sheet;
import rodwork.design.cut.PreparedCast;
import rodwork.design.plan.Choices;
import rodwork.geometry.Watch;

/** The plan of a denture on a cast whose teeth are known, and its drawing: docs/protocol.md. */
final class PlanRoutes {
  /** More plans at once nobody can look over. */
  private static final int MOST_COMPARED = 3;

  private final Shelf shelf;
  private @Nullable Basis last;

  /** What a plan rests on: while it stays, another choice needs no new survey. */
  private record Basis(
      CastTeeth teeth, JudgeAbutments.Wanted wanted, JudgeAbutments.Judged judged) {
    boolean of(CastTeeth otherTeeth, JudgeAbutments.Wanted otherWanted) {
      return teeth.equals(otherTeeth) && wanted.equals(otherWanted);
    }
  }

  PlanRoutes(Shelf shelf) {
    this.shelf = shelf;
  }

  void addTo(RoutesConfig routes) {
    routes.post("/api/casts/{id}/plan", this::plan);
    routes.post("/api/casts/{id}/plan/compare", this::compare);
    routes.post("/api/casts/{id}/plan/prepared", this::prepared);
  }

  private void plan(Context request) {
    MakePlan.Planned planned = planned(request.pathParam("id"), Requests.json(request));
    ObjectNode json = Json.object();
    json.set("plan", PlanJson.of(planned));
    json.put(
        "drawing",
        PlanDrawing.svg(
            planned.judged().teeth().arch(),
            planned.judged().teeth().dentition(),
            planned.plan(),
            planned.judged().surveyed().cast().name(),
            Sheet.WHOLE,
            Notation.FDI));
    json.set("cuts", CutsJson.of(planned));
    request.contentType("application/json");
    request.result(Json.compact(json));
  }

  /** Two or three plans by different choices, each held against the first. */
  private void compare(Context request) {
    JsonNode body = Requests.json(request);
    JsonNode plans = body.path("plans");
    if (!plans.isArray() || plans.size() < 2 || plans.size() > MOST_COMPARED) {
      throw Requests.unreadable("plans is not two or three plans, each {\"name\",\"choices\"}");
    }
    String id = request.pathParam("id");
    List<ComparePlans.Named> named = new ArrayList<>();
    for (JsonNode plan : plans) {
      named.add(
          new ComparePlans.Named(
              plan.path("name").asText("a plan"), planned(id, body, plan, Watch.NONE)));
    }
    request.contentType("application/json");
    request.result(
        Json.compact(ComparisonJson.of(ComparePlans.of(named, Requests.chart(body), Watch.NONE))));
  }

  /** The cast with every cut of the plan's mouth preparation, to be surveyed like any other. */
  private void prepared(Context request) {
    String id = request.pathParam("id");
    MakePlan.Planned planned = planned(id, Requests.json(request));
    OpenedCast cast = shelf.get(id);
    OpenedCast cut =
        cast.shaped(
            cast.name() + ", prepared",
            PreparedCast.mesh(cast.mesh(), planned.preparation().cuts()));
    request.contentType("application/json");
    request.result(Json.compact(CastJson.info(shelf.setPrepared(id, cut), shelf)));
  }

  /** The plan that a request asks for. */
  MakePlan.Planned planned(String id, JsonNode body) {
    return planned(id, body, Watch.NONE);
  }

  /**
   * The same, for one who may stop waiting.
   *
   * @throws java.util.concurrent.CancellationException when the watch says so
   */
  MakePlan.Planned planned(String id, JsonNode body, Watch watch) {
    return planned(id, body, body, watch);
  }

  /**
   * A plan.
   *
   * @param body says path, chart and answers
   * @param chosen holds the choices, arms shaped by hand among them
   */
  private MakePlan.Planned planned(String id, JsonNode body, JsonNode chosen, Watch watch) {
    CastTeeth teeth = shelf.known(id, AppRefusal.PLAN_NEEDS_TEETH);
    Choices choices = ChoicesReader.of(chosen.path("choices"), "the request");
    JudgeAbutments.Wanted wanted =
        new JudgeAbutments.Wanted(
            Requests.path(body),
            new TreeSet<>(),
            Requests.chart(body),
            AnswerReader.of(body.path("answers")),
            choices.arms(),
            shelf.opposingScan(id));
    return MakePlan.on(judged(id, teeth, wanted, watch), wanted.chart(), choices, watch);
  }

  /** Judged once for many choices; one cast is planned at a time. */
  private synchronized JudgeAbutments.Judged judged(
      String id, CastTeeth teeth, JudgeAbutments.Wanted wanted, Watch watch) {
    Basis known = last;
    if (known == null || !known.of(teeth, wanted)) {
      known = new Basis(teeth, wanted, JudgeAbutments.of(teeth, wanted, shelf.rulebook(id), watch));
      last = known;
    }
    return known.judged;
  }
}
