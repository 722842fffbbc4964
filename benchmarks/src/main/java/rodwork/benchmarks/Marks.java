package rodwork.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** The marks that Rodwork set itself, beside what was measured. */
final class Marks {
  private static final double SURVEY_MS = 50;
  private static final double ADJACENCY_MS = 1000;
  private static final double COLD_MS = 2000;

  /**
   * One mark.
   *
   * @param limitMs what the median may be at most [ms]
   */
  record Mark(String what, double limitMs, String limitFrom, double measuredMs) {
    boolean met() {
      return measuredMs <= limitMs;
    }
  }

  private final List<Row> rows;
  private final List<Mark> marks = new ArrayList<>();

  private Marks(List<Row> rows) {
    this.rows = rows;
  }

  /** Every mark whose figures are among the rows. */
  static List<Mark> among(List<Row> rows) {
    Marks m = new Marks(rows);
    Predicate<Row> survey = r -> r.task().startsWith("new axis: depths, lines");
    m.add(
        "a whole survey of " + Casts.REAL + " at a new axis, warm, 2 cores",
        survey.and(r -> r.size().equals(Casts.REAL) && r.cores() == 2),
        SURVEY_MS,
        "fixed");
    m.against(
        "the same survey beside Embree's tree and answer, 2 cores",
        r -> r.who().equals("Rodwork, whole survey") && r.cores() == 2,
        r -> r.who().startsWith("Embree") && r.who().endsWith("tree and answer") && r.cores() == 2,
        "Embree in the same run");
    m.against(
        "binary STL of 1M triangles to a welded mesh",
        r -> r.task().equals("STL read and welded") && r.who().equals("Rodwork"),
        r -> r.task().equals("STL read and welded") && r.who().startsWith("VTK"),
        "VTK's reader with merging in the same run");
    m.add(
        "the same with adjacency, warm",
        r -> r.task().endsWith("with its adjacency") && r.size().equals("1M"),
        ADJACENCY_MS,
        "fixed");
    m.add(
        "`rodwork survey " + Casts.REAL + ".stl`, cold start",
        r -> r.task().startsWith("cold start") && r.size().equals(Casts.REAL),
        COLD_MS,
        "fixed");
    return m.marks;
  }

  private void add(String what, Predicate<Row> measured, double limitMs, String from) {
    find(measured).ifPresent(r -> marks.add(new Mark(what, limitMs, from, r.medianMs())));
  }

  private void against(String what, Predicate<Row> ours, Predicate<Row> theirs, String from) {
    find(theirs).ifPresent(peer -> add(what, ours, peer.medianMs(), from));
  }

  private Optional<Row> find(Predicate<Row> wanted) {
    return rows.stream().filter(wanted).findFirst();
  }
}
