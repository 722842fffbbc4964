package rodwork.app.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.FrameHints;
import rodwork.anatomy.Jaw;
import rodwork.app.AppRefusal;
import rodwork.app.operation.CaseCast;
import rodwork.app.operation.CastOptions;
import rodwork.app.operation.CastTeeth;
import rodwork.app.operation.FindTeeth;
import rodwork.app.operation.OpenCast;
import rodwork.app.operation.OpenedCast;
import rodwork.app.operation.OpposingScan;
import rodwork.app.operation.WantedPath;
import rodwork.app.operation.WantedTeeth;
import rodwork.app.report.BenchWork;
import rodwork.app.report.CaseOpposing;
import rodwork.app.report.CaseSaid;
import rodwork.app.report.ChoicesReader;
import rodwork.casework.rulebook.Rulebook;
import rodwork.casework.store.CaseCode;
import rodwork.casework.store.CaseFile;
import rodwork.casework.store.CaseStore;
import rodwork.design.abutment.Answers;
import rodwork.design.plan.Choices;
import rodwork.geometry.Watch;

/**
 * A case in place of a scan file: what it keeps holds wherever the command line says nothing.
 *
 * @param store it is kept in
 * @param file the case as it stands
 * @param cast its scan
 * @param said what it keeps beside the scan
 * @param bench the bench's own document: how the scan was understood there
 */
record CaseSource(CaseStore store, CaseFile file, CaseCast cast, CaseSaid said, BenchWork bench) {
  /**
   * The case of that code; empty where there is a file of that name.
   *
   * @throws rodwork.geometry.Refusal if there is neither
   */
  static Optional<CaseSource> of(Path named, Jaw jaw, StoreMixin folder) {
    if (Files.isRegularFile(named)) {
      return Optional.empty();
    }
    // A code has no folders in it: this was meant as a file.
    if (named.getNameCount() > 1 || !Files.exists(folder.folder())) {
      throw AppRefusal.FILE_UNREADABLE.with(named, "there is no such file, and no case store");
    }
    CaseStore store = folder.existing();
    CaseFile file = store.get(new CaseCode(String.valueOf(named)));
    CaseCast cast = CaseCast.of(store, file, jaw);
    return Optional.of(
        new CaseSource(
            store,
            file,
            cast,
            CaseSaid.of(store, file, cast.jaw()),
            BenchWork.of(store, file, cast.jaw())));
  }

  /** Its scan, with the unit and the directions that were told on the bench. */
  OpenedCast open(CastOptions options, Watch watch) {
    FrameHints kept = bench.hints();
    FrameHints given = options.hints();
    return OpenCast.of(
        cast.content(),
        cast.scan().getKey().label(),
        new CastOptions(
            cast.jaw(),
            new FrameHints(
                given.up() == null ? kept.up() : given.up(),
                given.front() == null ? kept.front() : given.front()),
            options.unit().or(bench::unit)),
        watch);
  }

  /** Its teeth: as they are given, else as they were found on the bench. */
  CastTeeth teeth(KnownTeethMixin given, OpenedCast opened, Watch watch) {
    if (given.given()) {
      return given.on(opened, watch);
    }
    WantedTeeth kept = new WantedTeeth(Set.of(), said.chart(), List.of()).withTori(given.tori());
    if (given.labelled()) {
      return given.on(opened, kept, watch);
    }
    Jaw jaw = kept.jaw(opened.jaw());
    return FindTeeth.corrected(
        opened, kept.chart(jaw), missing -> bench.teeth(jaw, missing), watch);
  }

  WantedPath path(PathMixin given, Jaw jaw) {
    WantedPath kept = said.path();
    return given.given() || kept == null ? given.wanted(jaw) : kept;
  }

  Choices choices(@Nullable Path given) {
    return given == null ? said.choices() : ChoicesReader.read(given);
  }

  Answers answers(AnswersMixin given) {
    return given.given() ? given.said() : said.answers();
  }

  /** What is given, else the opposing scan that the case keeps; null: neither. */
  @Nullable OpposingScan opposing(OpposingMixin given, OpenedCast over, Watch watch) {
    return given.given()
        ? given.over(over, watch)
        : CaseOpposing.of(store, file, cast.jaw()).map(kept -> kept.over(over, watch)).orElse(null);
  }

  Rulebook rulebook(RulebookMixin given) {
    return given.given() ? given.book() : CaseCast.rulebook(store, file);
  }
}
