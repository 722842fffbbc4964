package rodwork.app.operation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.app.report.LabelsFile;
import rodwork.casework.rulebook.Rulebook;
import rodwork.demo.DemoCast;
import rodwork.design.abutment.Abutment;
import rodwork.design.abutment.Answers;
import rodwork.design.clasp.Fact;
import rodwork.design.clasp.Judgement;
import rodwork.design.clasp.Judgement.Answer;
import rodwork.design.plan.Choices;
import rodwork.design.plan.Part;
import rodwork.design.preparation.Step;
import rodwork.geometry.Watch;
import rodwork.geometry.testing.Shared;
import rodwork.survey.Tilt;

/** What the ledger says a lowered survey line takes is what the list of preparations cuts. */
class LineLoweringTest {
  private static final Tilt TILTED = new Tilt(4, -3);

  /** Where these lack, a line is lowered; where the reciprocal height lacks, a plane is cut. */
  private static final Set<Fact> LINES = Set.of(Fact.ROOM_ABOVE_ORIGIN, Fact.ROOM_ABOVE_MIDDLE);

  private int lowered;

  @Test
  void onRealArchesWhatServesAfterIsNotRefused() {
    onArch("upper-14", Jaw.UPPER, "14");
    onArch("upper-15-24", Jaw.UPPER, "15 24");
    onArch("lower-35", Jaw.LOWER, "35");
    assertThat(lowered).as("lines that were lowered").isPositive();
  }

  private void onArch(String cast, Jaw jaw, String missing) {
    OpenedCast opened =
        OpenCast.of(
            Shared.file("arches/" + cast + ".ply"),
            new CastOptions(jaw, FrameHints.NONE, Optional.empty()),
            Watch.NONE);
    agrees(
        FindTeeth.labelled(
            opened,
            wanted(missing),
            LabelsFile.read(Shared.file("arches/" + cast + ".labels.json")),
            Watch.NONE));
  }

  @Test
  void onTheDemoCastsWhatServesAfterIsNotRefused() {
    for (Jaw jaw : List.of(Jaw.UPPER, Jaw.LOWER)) {
      agrees(
          FindTeeth.of(
              OpenDemo.of(jaw, Watch.NONE),
              wanted(
                  DemoCast.missing(jaw).stream()
                      .map(String::valueOf)
                      .collect(Collectors.joining(" "))),
              Watch.NONE));
    }
  }

  private static WantedTeeth wanted(String missing) {
    return new WantedTeeth(
        Stream.of(missing.split(" "))
            .map(Integer::parseInt)
            .map(ToothNumber::of)
            .collect(Collectors.toSet()),
        null,
        List.of());
  }

  private void agrees(CastTeeth teeth) {
    for (Tilt tilt : List.of(Tilt.REFERENCE, TILTED)) {
      JudgeAbutments.Judged judged =
          JudgeAbutments.of(
              teeth,
              new JudgeAbutments.Wanted(
                  new WantedPath.AtTilt(tilt), new TreeSet<>(), null, Answers.NONE),
              Rulebook.shipped(),
              Watch.NONE);
      Map<ToothNumber, List<String>> after = new HashMap<>();
      for (Abutment a : judged.abutments()) {
        for (Judgement j : a.judgement().inOrder()) {
          if (j.answer() == Answer.SERVES_AFTER && lowers(j)) {
            after.computeIfAbsent(a.tooth().number(), _ -> new ArrayList<>()).add(j.family().id());
          }
        }
      }
      int most = after.values().stream().mapToInt(List::size).max().orElse(0);
      for (int round = 0; round < most; round++) {
        Map<ToothNumber, String> families = new HashMap<>();
        for (Map.Entry<ToothNumber, List<String>> one : after.entrySet()) {
          families.put(one.getKey(), one.getValue().get(round % one.getValue().size()));
        }
        holds(MakePlan.on(judged, null, choosing(families), Watch.NONE));
      }
    }
  }

  private static boolean lowers(Judgement judgement) {
    return judgement.preparations().stream().anyMatch(p -> p.enamelMm().isPresent());
  }

  private void holds(MakePlan.Planned planned) {
    for (Part.Clasp clasp : planned.plan().clasps()) {
      if (clasp.judgement().answer() != Answer.SERVES_AFTER) {
        continue;
      }
      assertThat(planned.preparation().refused())
          .filteredOn(r -> r.tooth().equals(clasp.tooth()))
          .filteredOn(
              r -> r.kind() == Step.Kind.SURVEY_LINE || r.why().contains("for the reciprocal arm"))
          .as("%s on %s", clasp.judgement().family().id(), clasp.tooth())
          .isEmpty();
      for (Judgement.Preparation wanted : clasp.judgement().preparations()) {
        if (wanted.enamelMm().isPresent() && wanted.amountMm() >= 0.05) {
          boolean line = LINES.contains(fact(clasp.judgement(), wanted));
          lowered += line ? 1 : 0;
          assertThat(planned.preparation().steps())
              .filteredOn(s -> s.tooth().equals(clasp.tooth()))
              .filteredOn(s -> s.kind() == (line ? Step.Kind.SURVEY_LINE : Step.Kind.GUIDING_PLANE))
              .as("%s on %s: %s", clasp.judgement().family().id(), clasp.tooth(), wanted.words())
              .anySatisfy(s -> assertThat(s.amountMm()).isEqualTo(wanted.enamelMm().getAsDouble()));
        }
      }
    }
  }

  private static Fact fact(Judgement judgement, Judgement.Preparation wanted) {
    return judgement.family().clauses().stream()
        .filter(c -> c.id().equals(wanted.clause()))
        .map(c -> c.wants().fact())
        .findFirst()
        .orElseThrow();
  }

  private static Choices choosing(Map<ToothNumber, String> families) {
    return new Choices(
        Map.of(), families, Optional.empty(), Set.of(), List.of(), Map.of(), Set.of(), Map.of());
  }
}
