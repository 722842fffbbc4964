package rodwork.design.cut;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import rodwork.geometry.Vec3;

/** Lays upright walls against a side of a tooth. */
public final class WallMaker {
  /** A wall is at least this high [mm]: less is no wall but a scratch. */
  private static final double LEAST_MM = 0.1;

  private static final double ROUNDING_MM = 1e-9;

  /** Upright lines of a wall that follows a bulge. */
  private static final int LINES = 13;

  private WallMaker() {}

  /**
   * A place of the marginal ridge.
   *
   * @param across from the origin of the side [mm]
   * @param height of the ridge along the path [mm]
   */
  public record Ridge(double across, double height) {}

  /**
   * A wall and how high it came out.
   *
   * @param wall the cut
   * @param heightMm mean height from the foot to where the window begins
   * @param stepMm how far the tooth stands out where the wall has run out below its foot: the ledge
   *     that is left
   * @param greatestMm farthest in, along the upright lines
   * @param middle of it on the surface, scan frame [mm]
   */
  public record Made(
      Cut.Wall wall, double heightMm, double stepMm, double greatestMm, Vec3 middle) {}

  /**
   * The upright line of a side below a place of its ridge.
   *
   * @param line from the gum to the ridge
   */
  public record Upright(Ridge ridge, ToothSide.Line line) {}

  /** The lines below the places of a ridge; those that the crown does not reach are left out. */
  public static List<Upright> uprights(ToothSide side, List<Ridge> ridges) {
    List<Upright> lines = new ArrayList<>();
    for (Ridge ridge : ridges) {
      ToothSide.Line line = side.line(ridge.across, ridge.height);
      if (!line.isEmpty()) {
        lines.add(new Upright(ridge, line));
      }
    }
    return lines;
  }

  /**
   * The least-cutting plane below a ridge.
   *
   * @param below how far below the ridge it begins [mm]
   * @param height wanted [mm]; less where the crown ends first
   */
  public static Optional<Made> below(
      ToothSide side, List<Upright> uprights, double below, double height) {
    List<double[]> lines = new ArrayList<>();
    double sum = 0;
    double step = 0;
    for (Upright upright : uprights) {
      double top = upright.ridge.height - below;
      Standing one = Standing.of(upright.line, top - height, top);
      if (one.height >= LEAST_MM) {
        lines.add(one.row(upright.ridge.across));
        sum += one.height;
        step = Math.max(step, one.step);
      }
    }
    return made(side, lines, sum, step);
  }

  /**
   * The least-cutting wall of one foot and height.
   *
   * @param from across where it begins [mm]
   * @param to across where it ends [mm]
   * @param foot along the path [mm]
   * @param height of it [mm]; less where the crown ends first
   */
  public static Optional<Made> standing(
      ToothSide side, double from, double to, double foot, double height) {
    return following(
        side,
        from,
        to,
        ToothSide.HIGHEST_MM,
        line -> Standing.of(line, foot, Math.min(foot + height, line.height().getLast())));
  }

  /**
   * An upright line of a wall between two heights of its side.
   *
   * @param foot where it ends below [mm]
   * @param height of it [mm]; 0 where the side has nothing there
   * @param out how far out it stands [mm]
   * @param deepest farthest in that it goes, above it too: nothing there may stand out either [mm]
   * @param step how far the tooth stands out below it [mm]
   */
  private record Standing(double foot, double height, double out, double deepest, double step) {
    static Standing of(ToothSide.Line line, double wanted, double top) {
      double foot = Math.max(wanted, line.height().getFirst());
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < line.height().size(); i++) {
        if (line.height().get(i) >= foot - ROUNDING_MM) {
          most = Math.max(most, line.out().get(i));
          if (line.height().get(i) <= top + ROUNDING_MM) {
            least = Math.min(least, line.out().get(i));
          }
        }
      }
      return Double.isFinite(least)
          ? new Standing(foot, top - foot, least, most - least, Cut.Wall.ledge(line, foot, least))
          : new Standing(foot, 0, 0, 0, 0);
    }

    /** A line whose wall is as far out as the side at its foot, or as far in as is wanted. */
    static Standing under(ToothSide.Line line, double foot, double out) {
      int widest = line.widest();
      return Double.isNaN(out)
          ? new Standing(foot, 0, 0, 0, 0)
          : new Standing(
              foot, line.height().get(widest) - foot, out, line.out().get(widest) - out, 0);
    }

    double[] row(double across) {
      return new double[] {across, out, foot, deepest};
    }
  }

  /**
   * A wall that lowers the survey line.
   *
   * @param from across where it begins [mm]
   * @param to across where it ends [mm]
   * @param by how far down the line goes [mm]
   * @param upTo nothing higher is looked at [mm]
   */
  public static Optional<Made> lowering(
      ToothSide side, double from, double to, double by, double upTo) {
    return following(
        side,
        from,
        to,
        upTo,
        line -> {
          double foot = line.height().get(line.widest()) - by;
          return Standing.under(line, foot, line.at(foot));
        });
  }

  /**
   * A wall that takes a given enamel from the bulge.
   *
   * @param by how far in it goes [mm]
   */
  public static Optional<Made> reducing(
      ToothSide side, double from, double to, double by, double upTo) {
    return following(
        side,
        from,
        to,
        upTo,
        line -> {
          double wall = line.out().get(line.widest()) - by;
          int foot = line.widest();
          while (foot > 0 && line.out().get(foot) > wall) {
            foot--;
          }
          return Standing.under(line, line.height().get(foot), wall);
        });
  }

  private static Optional<Made> following(
      ToothSide side,
      double from,
      double to,
      double upTo,
      Function<ToothSide.Line, Standing> wall) {
    List<double[]> lines = new ArrayList<>();
    double sum = 0;
    double step = 0;
    for (int i = 0; i < LINES; i++) {
      double s = from + (to - from) * i / (LINES - 1);
      ToothSide.Line line = side.line(s, upTo);
      if (line.isEmpty()) {
        continue;
      }
      Standing one = wall.apply(line);
      if (one.height > 0) {
        lines.add(one.row(s));
        sum += one.height;
        step = Math.max(step, one.step);
      }
    }
    return made(side, lines, sum, step);
  }

  private static Optional<Made> made(
      ToothSide side, List<double[]> lines, double sum, double step) {
    if (lines.isEmpty()) {
      return Optional.empty();
    }
    lines.sort((a, b) -> Double.compare(a[0], b[0]));
    double[] middle = lines.get(lines.size() / 2);
    double mean = sum / lines.size();
    return Optional.of(
        new Made(
            new Cut.Wall(side.frame, column(lines, 0), column(lines, 1), column(lines, 2)),
            mean,
            step,
            lines.stream().mapToDouble(l -> l[3]).max().orElse(0),
            side.frame.scan(middle[0], middle[1], middle[2] + mean / 2)));
  }

  private static double[] column(List<double[]> lines, int k) {
    return lines.stream().mapToDouble(l -> l[k]).toArray();
  }
}
