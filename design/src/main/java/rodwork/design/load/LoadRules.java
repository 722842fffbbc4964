package rodwork.design.load;

import java.util.List;
import java.util.stream.Stream;
import rodwork.anatomy.chart.Firmness;
import rodwork.rules.Threshold;
import rodwork.rules.Thresholds;

/**
 * Every number that the load model rests on.
 *
 * @param teeth how teeth give
 * @param tissue how soft tissue gives
 * @param clasps what holds a tip
 * @param force on one base [N]
 * @param draws how many draws of the unknown are worked through
 * @param share of them that an interval holds
 * @param alike a ratio between its inverse and this makes no difference worth telling
 */
public record LoadRules(
    Teeth teeth,
    Tissue tissue,
    Clasps clasps,
    Between force,
    Threshold draws,
    Threshold share,
    Threshold alike) {

  public LoadRules {
    if (!(draws.value() >= 20 && draws.value() <= 100_000)
        || !(share.value() > 0 && share.value() < 1)
        || !(alike.value() >= 1)) {
      throw new IllegalArgumentException(
          "draws %s (20 to 100,000), share of an interval %s (0 to 1), alike %s (1 or more)"
              .formatted(draws.value(), share.value(), alike.value()));
    }
  }

  /**
   * Teeth.
   *
   * @param axial force over sinking along the long axis [N/mm]
   * @param uneven factor by which teeth of one mouth differ from each other, either way
   * @param tipping moment over angle about the centre of resistance [N·mm per radian]
   * @param depth of the centre of resistance below the gingival margin [mm]
   * @param looseSofter greatest factor by which a loose tooth gives more
   */
  public record Teeth(
      Between axial, Threshold uneven, Between tipping, Between depth, Threshold looseSofter) {}

  /**
   * Soft tissue under a base: pressure over sinking [N/mm³].
   *
   * @param firm ridge that is charted as firm
   * @param yielding charted as yielding
   * @param flabby charted as flabby
   * @param ridge of which nothing is known
   * @param palate under an upper major connector
   */
  public record Tissue(
      Between firm, Between yielding, Between flabby, Between ridge, Between palate) {
    /** The range of a ridge. */
    public Between of(Firmness firmness) {
      return switch (firmness) {
        case FIRM -> firm;
        case YIELDING -> yielding;
        case FLABBY -> flabby;
        case NOT_KNOWN -> ridge;
      };
    }
  }

  /**
   * Clasp tips.
   *
   * @param pull at which a tip slips, where its arm is not computed [N]
   * @param travel upwards until then [mm]
   */
  public record Clasps(Between pull, Between travel) {}

  /** The values of a rulebook. */
  public static LoadRules from(Thresholds book) {
    return new LoadRules(
        new Teeth(
            between(book, "load-tooth-axial", "N/mm"),
            book.get("load-teeth-uneven", "1"),
            between(book, "load-tooth-tipping", "N·mm"),
            between(book, "load-resistance-depth", "mm"),
            book.get("load-loose-softer", "1")),
        new Tissue(
            between(book, "load-ridge-firm", "N/mm³"),
            between(book, "load-ridge-yielding", "N/mm³"),
            between(book, "load-ridge-flabby", "N/mm³"),
            between(book, "load-ridge-unknown", "N/mm³"),
            between(book, "load-palate", "N/mm³")),
        new Clasps(between(book, "load-clasp-pull", "N"), between(book, "load-clasp-travel", "mm")),
        between(book, "load-force", "N"),
        book.get("load-draws", "1"),
        book.get("load-interval-share", "1"),
        book.get("load-alike", "1"));
  }

  private static Between between(Thresholds book, String id, String unit) {
    return new Between(book.get(id + "-least", unit), book.get(id + "-most", unit));
  }

  /** All of them, for listing. */
  public List<Threshold> all() {
    return Stream.concat(
            Stream.of(
                    teeth.axial,
                    teeth.tipping,
                    teeth.depth,
                    tissue.firm,
                    tissue.yielding,
                    tissue.flabby,
                    tissue.ridge,
                    tissue.palate,
                    clasps.pull,
                    clasps.travel,
                    force)
                .flatMap(b -> Stream.of(b.least(), b.most())),
            Stream.of(teeth.uneven, teeth.looseSofter, draws, share, alike))
        .toList();
  }
}
