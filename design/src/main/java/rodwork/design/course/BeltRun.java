package rodwork.design.course;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Part of a crown that an arm goes round, sector by sector. Each sector has its own survey line,
 * which may jump where the crown is nearly upright; an arm is one smooth curve, so its heights are
 * drawn over or under such jumps.
 */
final class BeltRun {
  /** Half the width of a furrow in the survey line that an arm bridges [mm]. */
  private static final double BRIDGED_MM = 2;

  private final double from;
  private final List<CrownBelt.@Nullable Outline> outlines = new ArrayList<>();
  private final int reach;

  /**
   * From one angle to another.
   *
   * @param base middle of the proximal surface where the arm begins [degrees]
   * @param turn 1 with rising angles, −1 against
   * @param from beside the base [degrees]
   * @param to beside the base [degrees]
   */
  BeltRun(CrownBelt belt, double base, double turn, double from, double to) {
    this.from = from;
    double radii = 0;
    int seen = 0;
    for (double s = from; s < to; s += CrownBelt.stepDeg()) {
      CrownBelt.Outline outline = belt.at(CrownBelt.snapped(base + turn * s));
      outlines.add(outline);
      if (outline != null) {
        radii += outline.radiusMm();
        seen++;
      }
    }
    double step = Math.toRadians(CrownBelt.stepDeg()) * (seen == 0 ? 1 : radii / seen);
    this.reach = (int) Math.ceil(BRIDGED_MM / step);
  }

  /** Heights [mm] along the run. */
  interface Heights {
    /** At an angle beside the base [degrees]; NaN where the crown was not captured. */
    double at(double s);
  }

  /** A smooth line that lies nowhere below the one wished for. */
  Heights over(ToDoubleFunction<CrownBelt.Outline> wished) {
    return told(rolled(rolled(read(wished), Math::max, false), Double::sum, true));
  }

  /** A smooth line that lies nowhere above the one wished for. */
  Heights under(ToDoubleFunction<CrownBelt.Outline> wished) {
    return told(rolled(rolled(read(wished), Math::min, false), Double::sum, true));
  }

  /** A smooth line along the one wished for. */
  Heights along(ToDoubleFunction<CrownBelt.Outline> wished) {
    return told(rolled(read(wished), Double::sum, true));
  }

  private Heights told(double[] heights) {
    return s -> {
      int i = (int) Math.round((s - from) / CrownBelt.stepDeg());
      return heights.length == 0 ? Double.NaN : heights[Math.clamp(i, 0, heights.length - 1)];
    };
  }

  private double[] read(ToDoubleFunction<CrownBelt.Outline> wished) {
    return outlines.stream()
        .mapToDouble(o -> o == null ? Double.NaN : wished.applyAsDouble(o))
        .toArray();
  }

  /** Each value with those within reach; those not known are left out, also where none is known. */
  private double[] rolled(double[] values, DoubleBinaryOperator join, boolean mean) {
    double[] rolled = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      double sum = Double.NaN;
      int n = 0;
      for (int k = Math.max(0, i - reach); k <= Math.min(values.length - 1, i + reach); k++) {
        if (!Double.isNaN(values[k])) {
          sum = n == 0 ? values[k] : join.applyAsDouble(sum, values[k]);
          n++;
        }
      }
      rolled[i] = Double.isNaN(values[i]) ? Double.NaN : mean ? sum / n : sum;
    }
    return rolled;
  }
}
