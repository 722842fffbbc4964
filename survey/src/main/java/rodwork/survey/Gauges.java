package rodwork.survey;

import java.util.List;
import java.util.Locale;

/**
 * The undercut gauges of a survey, smallest first.
 *
 * <p>The three common sizes are 0.010, 0.020 and 0.030 inch, rounded by the trade to 0.25, 0.50 and
 * 0.75 mm (Dunn, Treatment planning for removable partial dentures; Ankara University open
 * textbook, chapter 7). A gauge keeps its nominal names; measured lengths convert exactly.
 *
 * @param sizesMm sizes [mm], rising, each above 0
 */
public record Gauges(List<Double> sizesMm) {
  public static final Gauges COMMON = new Gauges(List.of(0.25, 0.50, 0.75));

  public Gauges {
    sizesMm = List.copyOf(sizesMm);
    double last = 0;
    for (double size : sizesMm) {
      if (!(size > last)) {
        throw new IllegalArgumentException("gauge sizes must rise from above 0: " + sizesMm);
      }
      last = size;
    }
    if (sizesMm.isEmpty()) {
      throw new IllegalArgumentException("a survey needs at least one gauge");
    }
  }

  /** The gauge whose size a depth fits within a tolerance [mm]; NaN if none. */
  public double fitting(double depthMm, double toleranceMm) {
    for (double size : sizesMm) {
      if (Math.abs(depthMm - size) <= toleranceMm) {
        return size;
      }
    }
    return Double.NaN;
  }

  /** Which gauge a depth fits, in words. */
  public String describe(double depthMm, double toleranceMm) {
    double fits = fitting(depthMm, toleranceMm);
    if (!Double.isNaN(fits)) {
      return name(fits) + " fits";
    }
    double below = 0;
    for (double size : sizesMm) {
      if (depthMm < size) {
        return below == 0
            ? "less than %s".formatted(millimetres(size))
            : "between %s and %s".formatted(millimetres(below), millimetres(size));
      }
      below = size;
    }
    return "more than " + millimetres(below);
  }

  /** Both names of a gauge, such as {@code 0.25 mm · 0.010 in}. */
  public static String name(double sizeMm) {
    return String.format(Locale.ROOT, "%.2f mm · %.3f in", sizeMm, nominalInch(sizeMm));
  }

  /** The trade's inch name of a gauge: a hundredth of an inch for each 0.25 mm. */
  public static double nominalInch(double sizeMm) {
    return sizeMm / 25;
  }

  private static String millimetres(double size) {
    return String.format(Locale.ROOT, "%.2f", size);
  }
}
