package rodwork.anatomy.teeth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.Jaw;
import rodwork.rules.Wording;

/**
 * Finds the row of teeth of an arch without points: which stand, and a place on each.
 *
 * <p>{@link RowAlignment} lays the row by what a profile along the arch shows. Where nothing is
 * known of missing teeth that is not enough: a half-closed space looks much like a narrow tooth,
 * and a low premolar like a ridge. So the likeliest rows are grown into crowns as well, and the
 * walker's lead decides with the alignment: on a crown the walk is far ahead, in a space or on half
 * a tooth it is not. From the best row on, one doubtful tooth is taken out or one missing tooth put
 * in at a time, as long as that fits better.
 */
final class RowSearch {
  /** A number less sure than this is told. */
  private static final double UNSURE = 0.5;

  /** Costs are like negative logarithms: this much better is hardly chance. */
  private static final double CLEARLY_BETTER = 4;

  /** This much crown in a space that should be empty is told [mm]. */
  private static final double CROWN_IN_SPACE_MM = 4;

  /** With fewer teeth than this their order tells no numbers. */
  private static final int FEW = 3;

  /**
   * Lead that speaks neither for nor against a tooth. On the labelled arches teeth have 0.68 to
   * 0.98, in the mean 0.87, what is none 0.53 to 0.81.
   */
  private static final double EVEN_LEAD = 0.85;

  /** Cost of a lead of 0 against one of 1, in the alignment's own measure. */
  private static final double LEAD_COST = 40;

  /** A tooth that leads by less may be none. */
  private static final double DOUBTFUL_LEAD = 0.83;

  /** A row whose alignment costs so much more is not grown. */
  private static final double TOO_DEAR = 16;

  /** What must be gained to leave a row for another. */
  private static final double GAIN = 1;

  /** A tooth that moved by this share of its width has taken its neighbour's place. */
  private static final double SHIFTED = 0.75;

  private static final int ROUNDS = 5;

  private final CellGraph graph;
  private final boolean[] base;
  private final ArchPath path;
  private final ArchProfile profile;
  private final int[] row;

  /**
   * A row of teeth.
   *
   * @param tops a place on each tooth, in the arch frame [mm]
   * @param numbering how sure the number and place of each are [0 to 1]
   * @param remarks what a person should look at
   */
  record Found(
      Map<Integer, double[]> tops,
      Map<Integer, Double> numbering,
      List<ToothFinding.Remark> remarks) {}

  RowSearch(CellGraph graph, boolean[] base, Jaw jaw) {
    this.graph = graph;
    this.base = base;
    path = ArchPath.of(graph, base);
    if (path.steps() < 2) {
      throw TeethProblem.NO_TEETH.with("nothing reaches up to an occlusal plane");
    }
    profile = new ArchProfile(graph, path, base);
    row = UsualCrown.row(jaw == Jaw.UPPER);
  }

  /**
   * Finds the row.
   *
   * @param missing as a person says; empty: nothing is known
   * @param grow spreads crowns from a place on each tooth
   * @throws rodwork.geometry.Refusal {@link TeethProblem#NO_TEETH}
   */
  Found find(Set<Integer> missing, Function<Map<Integer, double[]>, CrownSpread> grow) {
    List<ToothFinding.Remark> remarks = new ArrayList<>();
    Row best = laid(missing, Set.of(), Set.of());
    if (best.tops.isEmpty()) {
      throw TeethProblem.NO_TEETH.with("its crest is as smooth as a ridge");
    }
    Map<Integer, Double> numbering = new TreeMap<>();
    if (missing.isEmpty() && best.tops.size() >= FEW) {
      best = climbed(best, grow, numbering);
    }
    best.alignment
        .certainty(best.answer)
        .forEach((tooth, sure) -> numbering.merge(tooth, sure, Math::min));
    Row settled = best;
    numbering.keySet().retainAll(settled.tops.keySet());
    if (settled.tops.size() < FEW) {
      remarks.add(TeethProblem.FEW_TEETH.remark(settled.tops.size()));
    }
    List<Integer> unsure =
        settled.tops.keySet().stream()
            .filter(t -> numbering.getOrDefault(t, 0.0) < UNSURE)
            .toList();
    if (missing.isEmpty() && settled.tops.size() < FEW && unsure.size() == settled.tops.size()) {
      // A bump or two on a ridge: nothing says that they are teeth at all.
      throw TeethProblem.NO_TEETH.with("nothing on its crest is surely a tooth");
    }
    if (!unsure.isEmpty()) {
      remarks.add(
          TeethProblem.NUMBERS_UNSURE.remark(
              unsure.stream().map(Wording.Piece.Tooth::new).toList()));
    }
    crownsInSpaces(settled.answer, missing, remarks);
    Set<Integer> other = new HashSet<>();
    missing.forEach(t -> other.add(t + (t / 10 % 2 == 1 ? 10 : -10)));
    if (!other.equals(missing)
        && laid(other, Set.of(), Set.of()).cost() < settled.cost() - CLEARLY_BETTER) {
      remarks.add(TeethProblem.MIRRORED.remark());
    }
    return new Found(settled.tops, numbering, remarks);
  }

  /** A row as it was laid, with what was assumed for it. */
  private record Row(
      RowAlignment alignment,
      RowAlignment.Answer answer,
      Map<Integer, double[]> tops,
      Set<Integer> out,
      Set<Integer> in) {
    /** Of the alignment, with the price of each tooth taken out. */
    double cost() {
      return answer.cost() + RowAlignment.ABSENT * out.stream().filter(t -> t % 10 != 8).count();
    }
  }

  /** A row grown into crowns: its whole cost, and the lead of each tooth. */
  private record Grown(Row row, double cost, Map<Integer, Double> lead) {}

  private Row climbed(
      Row first,
      Function<Map<Integer, double[]>, CrownSpread> grow,
      Map<Integer, Double> numbering) {
    Grown best = grown(first, grow);
    List<Grown> tried = new ArrayList<>();
    tried.add(best);
    Set<Set<Integer>> seen = new HashSet<>();
    for (int round = 0; round < ROUNDS; round++) {
      Grown next = null;
      for (Row candidate : around(best)) {
        if (candidate.cost() > best.row.cost() + TOO_DEAR
            || shifted(best.row.answer, candidate.answer)
            || !seen.add(new TreeSet<>(candidate.answer.teeth().keySet()))) {
          continue;
        }
        Grown other = grown(candidate, grow);
        tried.add(other);
        if (next == null || other.cost < next.cost) {
          next = other;
        }
      }
      if (next == null || next.cost > best.cost - GAIN) {
        break;
      }
      best = next;
    }
    for (Grown other : tried) {
      double sure = 1 - Math.exp(-Math.max(0, other.cost - best.cost) / 2);
      for (int tooth : best.row.tops.keySet()) {
        if (!other.row.tops.containsKey(tooth)) {
          numbering.merge(tooth, sure, Math::min);
        }
      }
    }
    return best.row;
  }

  /** Whether a tooth of one row lies where another row has its neighbour: all numbers moved on. */
  private static boolean shifted(RowAlignment.Answer from, RowAlignment.Answer to) {
    return to.teeth().entrySet().stream()
        .anyMatch(
            tooth -> {
              RowAlignment.Reach before = from.teeth().get(tooth.getKey());
              RowAlignment.Reach after = tooth.getValue();
              return before != null
                  && Math.abs(before.middle() - after.middle())
                      > SHIFTED * (after.to() - after.from());
            });
  }

  /** The rows with one doubtful tooth less or one more. */
  private List<Row> around(Grown grown) {
    List<Row> rows = new ArrayList<>();
    Row at = grown.row;
    for (int tooth : row) {
      Double lead = grown.lead.get(tooth);
      Set<Integer> out = new TreeSet<>(at.out);
      Set<Integer> in = new TreeSet<>(at.in);
      if (lead != null && lead < DOUBTFUL_LEAD && !at.in.contains(tooth)) {
        out.add(tooth);
        rows.add(laid(Set.of(), out, in));
      } else if (lead == null && tooth % 10 != 8 && !at.out.contains(tooth)) {
        in.add(tooth);
        rows.add(laid(Set.of(), out, in));
      }
    }
    return rows;
  }

  private Grown grown(Row laid, Function<Map<Integer, double[]>, CrownSpread> grow) {
    Map<Integer, Double> lead = grow.apply(new TreeMap<>(laid.tops)).certainty(graph);
    double cost = laid.cost();
    for (double each : lead.values()) {
      cost += LEAD_COST * (EVEN_LEAD - each);
    }
    return new Grown(laid, cost, lead);
  }

  /**
   * Lays a row.
   *
   * @param missing known to be; with any of them but third molars, all other teeth stand
   * @param out taken as missing though nothing is known of it
   * @param in taken as standing likewise
   */
  private Row laid(Set<Integer> missing, Set<Integer> out, Set<Integer> in) {
    RowAlignment.Known[] known = new RowAlignment.Known[row.length];
    double[] place = new double[row.length];
    Arrays.fill(place, Double.NaN);
    boolean told = missing.stream().anyMatch(t -> t % 10 != 8);
    for (int j = 0; j < row.length; j++) {
      boolean stands = in.contains(row[j]) || (told && row[j] % 10 != 8);
      RowAlignment.Known otherwise = stands ? RowAlignment.Known.STANDS : RowAlignment.Known.OPEN;
      known[j] =
          missing.contains(row[j]) || out.contains(row[j]) ? RowAlignment.Known.MISSING : otherwise;
    }
    RowAlignment alignment = new RowAlignment(path, profile, row, known, place);
    RowAlignment.Answer answer = alignment.best();
    return new Row(alignment, answer, CrownTops.of(graph, path, base, answer.teeth()), out, in);
  }

  private void crownsInSpaces(
      RowAlignment.Answer answer, Set<Integer> missing, List<ToothFinding.Remark> remarks) {
    for (int j = 1; j + 1 < row.length; j++) {
      RowAlignment.@Nullable Reach before = answer.teeth().get(row[j - 1]);
      RowAlignment.@Nullable Reach after = answer.teeth().get(row[j + 1]);
      if (missing.contains(row[j]) && before != null && after != null) {
        double crown = 0;
        for (int s = before.to(); s < after.from(); s++) {
          crown += profile.crown[s] * ArchPath.STEP_MM;
        }
        if (crown > CROWN_IN_SPACE_MM) {
          remarks.add(TeethProblem.MISSING_STANDS.remark(new Wording.Piece.Tooth(row[j]), crown));
        }
      }
    }
  }
}
