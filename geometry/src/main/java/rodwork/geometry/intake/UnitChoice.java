package rodwork.geometry.intake;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.geometry.io.LengthUnit;
import rodwork.geometry.io.RawMesh;

/**
 * Finds a file's unit of length from the span of the scan, the longest side of its box.
 *
 * <p>A whole arch spans 40 to 90 mm (common practice; the real arches that this was tried on span
 * 58 to 82 mm). In cm, inches and metres that is 4 to 9, 1.6 to 3.5 and 0.04 to 0.09: the ranges do
 * not meet, so the span tells the unit.
 */
final class UnitChoice {
  static final double LEAST_ARCH_MM = 40;
  static final double MOST_ARCH_MM = 90;

  /** Part of an arch, or a cast on a broad base: taken with a warning. */
  static final double LEAST_LIKELY_MM = 15;

  static final double MOST_LIKELY_MM = 150;

  /** Outside of these nothing can be surveyed, whatever the user says. */
  static final double LEAST_GIVEN_MM = 1;

  static final double MOST_GIVEN_MM = 1000;

  private static final LengthUnit[] GUESSES = {
    LengthUnit.MILLIMETRE, LengthUnit.CENTIMETRE, LengthUnit.INCH, LengthUnit.METRE
  };

  private UnitChoice() {}

  static UnitFinding find(
      RawMesh raw, double span, Optional<LengthUnit> given, List<Remark> remarks) {
    LengthUnit declared = raw.facts().declaredUnit().orElse(null);
    UnitFinding found =
        given.isPresent()
            ? finding(given.get(), UnitFinding.Evidence.GIVEN, declared, span)
            : guess(raw, span, declared, remarks);
    String name = raw.facts().name();
    if (!(found.spanMm() >= LEAST_GIVEN_MM)) {
      throw IntakeProblem.TOO_SMALL.refusal(
          name, found.unit().label(), found.spanMm(), LEAST_GIVEN_MM);
    }
    if (found.spanMm() > MOST_GIVEN_MM) {
      throw IntakeProblem.TOO_LARGE.refusal(
          name, found.unit().label(), found.spanMm(), MOST_GIVEN_MM);
    }
    if (found.unit() != LengthUnit.MILLIMETRE) {
      remarks.add(
          RemarkKind.UNIT_SCALED.remark(1, found.unit().label(), found.unit().millimetres()));
    }
    if (!isArch(found.spanMm())) {
      remarks.add(
          RemarkKind.SPAN_UNUSUAL.remark(
              1, found.spanMm(), LEAST_ARCH_MM, MOST_ARCH_MM, found.unit().label()));
    }
    return found;
  }

  private static UnitFinding guess(
      RawMesh raw, double span, @Nullable LengthUnit declared, List<Remark> remarks) {
    if (declared != null && isArch(span * declared.millimetres())) {
      return finding(declared, UnitFinding.Evidence.DECLARED, declared, span);
    }
    for (LengthUnit unit : GUESSES) {
      if (isArch(span * unit.millimetres())) {
        if (declared != null) {
          remarks.add(
              RemarkKind.UNIT_CONTRADICTED.remark(
                  1,
                  declared.label(),
                  span * declared.millimetres(),
                  unit.label(),
                  span * unit.millimetres()));
        }
        return finding(unit, UnitFinding.Evidence.SPAN, declared, span);
      }
    }
    LengthUnit likely = declared == null ? LengthUnit.MILLIMETRE : declared;
    double mm = span * likely.millimetres();
    if (mm >= LEAST_LIKELY_MM && mm <= MOST_LIKELY_MM) {
      return finding(likely, UnitFinding.Evidence.ASSUMED, declared, span);
    }
    throw IntakeProblem.UNIT_UNKNOWN.refusal(
        raw.facts().name(),
        span,
        span,
        span * LengthUnit.CENTIMETRE.millimetres(),
        span * LengthUnit.INCH.millimetres(),
        span * LengthUnit.METRE.millimetres(),
        LEAST_ARCH_MM,
        MOST_ARCH_MM);
  }

  private static UnitFinding finding(
      LengthUnit unit, UnitFinding.Evidence evidence, @Nullable LengthUnit declared, double span) {
    return new UnitFinding(unit, evidence, declared, span, span * unit.millimetres());
  }

  private static boolean isArch(double mm) {
    return mm >= LEAST_ARCH_MM && mm <= MOST_ARCH_MM;
  }
}
