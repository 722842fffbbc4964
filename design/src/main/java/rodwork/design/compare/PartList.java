package rodwork.design.compare;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.plan.Part;
import rodwork.design.plan.Plan;

/**
 * The parts of a plan by place, in words, and what is measured on them.
 *
 * @param parts at each place, in the order of the plan
 * @param measures of the parts
 */
public record PartList(Map<At, List<String>> parts, Map<Of, Measured> measures) {

  /** Kinds of parts, in the order in which they are told. */
  public enum Kind {
    REST("rest"),
    GUIDING_PLATE("guiding plate"),
    CLASP("clasp"),
    MINOR_CONNECTOR("minor connector"),
    MAJOR_CONNECTOR("major connector"),
    BASE("base"),
    FULCRUM("fulcrum line"),
    INDIRECT_RETAINER("indirect retainer");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * A place.
   *
   * @param tooth that the part belongs to, of a base the first of its space; empty for the rest
   */
  public record At(Kind kind, Optional<ToothNumber> tooth) implements Comparable<At> {
    private static final Comparator<At> ORDER =
        Comparator.comparing(At::kind)
            .thenComparing(at -> at.tooth.map(ToothNumber::order).orElse(-1));

    @Override
    public int compareTo(At other) {
      return ORDER.compare(this, other);
    }
  }

  /** A measure of a place. */
  public record Of(At at, String what) {}

  /** A value with the difference below which two of them are the same. */
  public record Measured(double value, String unit, double step) {
    boolean differs(Measured other) {
      return Math.abs(value - other.value) >= step;
    }
  }

  private static final double LENGTH_STEP_MM = 0.1;
  private static final double AREA_STEP_MM2 = 1;
  private static final double RATIO_STEP = 0.01;

  public PartList {
    parts = Map.copyOf(parts);
    // The order is that of the plan, so that what is told comes tooth by tooth.
    measures = Collections.unmodifiableMap(new LinkedHashMap<>(measures));
  }

  /** Of a plan. */
  public static PartList of(Plan plan) {
    Lister lister = new Lister();
    for (Part.Rest r : plan.rests()) {
      lister.part(Kind.REST, r.tooth(), side(r.side()) + " " + r.kind().words());
      lister.mm(Kind.REST, r.tooth(), side(r.side()) + " length", r.lengthMm());
      lister.mm(Kind.REST, r.tooth(), side(r.side()) + " width", r.widthMm());
    }
    for (Part.GuidingPlate p : plan.plates()) {
      lister.part(Kind.GUIDING_PLATE, p.tooth(), side(p.side()));
    }
    for (Part.Clasp c : plan.clasps()) {
      lister.part(
          Kind.CLASP,
          c.tooth(),
          String.format(
              Locale.ROOT,
              "%s, %.2f mm, from %s, %s%s",
              c.judgement().family().name(),
              c.gaugeMm(),
              side(c.side()),
              c.judgement().answer().words(),
              c.standsOnMark() ? "" : ", no place for its tip yet"));
      c.retentive()
          .ifPresent(
              l -> lister.mm(Kind.CLASP, c.tooth(), "length of the retentive arm", l.lengthMm()));
    }
    for (Part.MinorConnector m : plan.minorConnectors()) {
      lister.part(Kind.MINOR_CONNECTOR, m.tooth(), side(m.side()));
      lister.mm(Kind.MINOR_CONNECTOR, m.tooth(), side(m.side()) + " length", m.line().lengthMm());
    }
    plan.majorConnector().ifPresent(lister::connector);
    for (Part.DentureBase b : plan.bases()) {
      ToothNumber first = b.space().missing().getFirst();
      lister.part(
          Kind.BASE, first, b.space().missing() + (b.space().freeEnd() ? ", free end" : ""));
      lister.add(Kind.BASE, first, "area", new Measured(b.areaMm2(), "mm²", AREA_STEP_MM2));
    }
    plan.fulcrum().ifPresent(f -> lister.part(Kind.FULCRUM, null, f.right() + " to " + f.left()));
    for (Part.IndirectRetainer i : plan.indirectRetainers()) {
      ToothNumber t = i.rest().tooth();
      lister.part(Kind.INDIRECT_RETAINER, t, side(i.rest().side()) + " " + i.rest().kind().words());
      lister.mm(Kind.INDIRECT_RETAINER, t, "distance from the fulcrum line", i.distanceMm());
      lister.add(
          Kind.INDIRECT_RETAINER,
          t,
          "share of the base end's distance",
          new Measured(i.ratio(), "1", RATIO_STEP));
    }
    return new PartList(lister.parts, lister.measures);
  }

  private static String side(Surface side) {
    return side.name().toLowerCase(Locale.ROOT);
  }

  private static final class Lister {
    private final Map<At, List<String>> parts = new LinkedHashMap<>();
    private final Map<Of, Measured> measures = new LinkedHashMap<>();

    void part(Kind kind, @Nullable ToothNumber tooth, String words) {
      parts
          .computeIfAbsent(new At(kind, Optional.ofNullable(tooth)), _ -> new ArrayList<>())
          .add(words);
    }

    void mm(Kind kind, ToothNumber tooth, String what, double value) {
      add(kind, tooth, what, new Measured(value, "mm", LENGTH_STEP_MM));
    }

    void add(Kind kind, @Nullable ToothNumber tooth, String what, Measured value) {
      measures.put(new Of(new At(kind, Optional.ofNullable(tooth)), what), value);
    }

    void connector(Part.MajorConnector m) {
      part(
          Kind.MAJOR_CONNECTOR,
          null,
          m.kind().words() + (m.opening().isPresent() ? ", with an opening" : ""));
      add(Kind.MAJOR_CONNECTOR, null, "area", new Measured(m.areaMm2(), "mm²", AREA_STEP_MM2));
      add(
          Kind.MAJOR_CONNECTOR,
          null,
          "least width",
          new Measured(m.leastWidthMm(), "mm", LENGTH_STEP_MM));
    }
  }
}
