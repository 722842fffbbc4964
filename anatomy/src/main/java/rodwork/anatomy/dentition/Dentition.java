package rodwork.anatomy.dentition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.Answer;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothEntry.Presence;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.kennedy.ArchState;
import rodwork.anatomy.kennedy.Kennedy;
import rodwork.anatomy.kennedy.KennedyFinding;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.space.SpaceFinder;
import rodwork.anatomy.space.SpaceRules;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Teeth;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.rules.Wording;

/**
 * The teeth of one arch: what the chart says, what the scan shows, and what follows. Immutable.
 *
 * @param chart what a person says
 * @param labels the tooth of each triangle
 * @param teeth those on the scan, planned extractions among them
 * @param standing those that will stand when the denture is made
 * @param spaces between and behind them, closed ones among them, from the patient's right to left
 * @param kennedy the class, with the rule that decided and what should be asked
 * @param remarks where chart and scan disagree, one sentence each
 */
public record Dentition(
    Chart chart,
    ToothLabels labels,
    Teeth teeth,
    SortedSet<ToothNumber> standing,
    List<Space> spaces,
    KennedyFinding kennedy,
    List<Wording> remarks) {

  public Dentition {
    standing = Collections.unmodifiableSortedSet(new TreeSet<>(standing));
    spaces = List.copyOf(spaces);
    remarks = List.copyOf(remarks);
  }

  /**
   * Measures the teeth of an arch by the rules that Rodwork ships with.
   *
   * @param labels of the arch's mesh
   * @param watch stops the work
   */
  public static Dentition of(Arch arch, ToothLabels labels, Chart chart, Watch watch) {
    return of(arch, labels, chart, SpaceRules.SHIPPED, watch);
  }

  /**
   * Measures the teeth of an arch.
   *
   * @param labels of the arch's mesh
   * @param rules which room between neighbours is a space
   * @param watch stops the work
   */
  public static Dentition of(
      Arch arch, ToothLabels labels, Chart chart, SpaceRules rules, Watch watch) {
    Teeth teeth = Teeth.of(arch, labels, chart.jaw(), watch);
    SortedSet<ToothNumber> standing = new TreeSet<>();
    SortedSet<ToothNumber> extracted = new TreeSet<>();
    SortedSet<ToothNumber> ignored = new TreeSet<>();
    for (int i = 0; i < ToothNumber.PLACES; i++) {
      ToothNumber tooth = ToothNumber.inOrder(chart.jaw(), i);
      Presence said = chart.tooth(tooth).presence();
      boolean seen = teeth.tooth(tooth).isPresent();
      if (said == Presence.TO_BE_EXTRACTED) {
        extracted.add(tooth);
      } else if (seen && (said != Presence.MISSING || !chart.names(tooth))) {
        standing.add(tooth);
      }
      if (tooth.isThirdMolar()
          && !standing.contains(tooth)
          && !chart.tooth(tooth).replace().or(false)) {
        ignored.add(tooth);
      }
    }
    watch.check();
    List<Space> spaces =
        new SpaceFinder(arch, labels, teeth, chart.jaw(), rules).find(standing, ignored);
    ArchState state = ArchState.of(chart.jaw(), standing);
    state = new ArchState(chart.jaw(), state.standing(), extracted, state.answers());
    for (Space space : spaces) {
      for (ToothNumber tooth : space.missing()) {
        if (space.bounded()) {
          state = state.with(ArchState.Ask.CLOSED, tooth, Answer.of(space.closed()));
        }
      }
    }
    return new Dentition(
        chart,
        labels,
        teeth,
        standing,
        spaces,
        Kennedy.classify(state.withAnswersOf(chart)),
        remarks(teeth, chart));
  }

  /** The same teeth with another chart beside them: spaces and class stay as they were found. */
  public Dentition withChart(Chart other) {
    return new Dentition(other, labels, teeth, standing, spaces, kennedy, remarks);
  }

  /**
   * Whether the chart says that an implant carries what stands there: it bounds spaces like a
   * tooth, and is recognised, told, and not judged.
   */
  public boolean isImplant(ToothNumber number) {
    return chart.tooth(number).presence() == Presence.IMPLANT;
  }

  public Optional<Tooth> tooth(ToothNumber number) {
    return teeth.tooth(number);
  }

  public Optional<Tooth> tooth(int fdi) {
    return teeth.tooth(ToothNumber.of(fdi));
  }

  /** The teeth on the scan from the patient's right to left. */
  public Collection<Tooth> inOrder() {
    return teeth.byNumber().values();
  }

  /** The tooth that a triangle belongs to. */
  public Optional<Tooth> at(int triangle) {
    int fdi = labels.of(triangle);
    return fdi == ToothLabels.GUM
        ? Optional.empty()
        : teeth.tooth(ToothNumber.of(fdi)).filter(t -> t.has(triangle));
  }

  /** The open spaces: those that count. */
  public List<Space> openSpaces() {
    return spaces.stream().filter(s -> !s.closed()).toList();
  }

  /** The open space beside a standing tooth on its mesial or distal side. */
  public Optional<Space> spaceBeside(ToothNumber tooth, Surface side) {
    boolean towardsLeft = (side == Surface.MESIAL) == (tooth.side() == Side.RIGHT);
    return openSpaces().stream()
        .filter(s -> (towardsLeft ? s.right() : s.left()).filter(tooth::equals).isPresent())
        .findFirst();
  }

  /** What stands at the ends of open spaces, implants among them. */
  public SortedSet<ToothNumber> besideSpaces() {
    List<ToothNumber> beside = new ArrayList<>();
    for (Space space : openSpaces()) {
      space.right().ifPresent(beside::add);
      space.left().ifPresent(beside::add);
    }
    return new TreeSet<>(beside);
  }

  /** The proximal surfaces of teeth next to an open space, from the patient's right to left. */
  public List<ProximalSurface> proximalSurfaces() {
    List<ProximalSurface> found = new ArrayList<>();
    for (ToothNumber number : besideSpaces()) {
      if (isImplant(number)) {
        continue;
      }
      Tooth tooth = teeth.tooth(number).orElseThrow();
      for (Surface side : List.of(Surface.MESIAL, Surface.DISTAL)) {
        spaceBeside(number, side)
            .ifPresent(space -> found.add(ProximalSurface.of(tooth, side, space)));
      }
    }
    return found;
  }

  /**
   * A proximal surface next to a space.
   *
   * @param tooth that it belongs to
   * @param side mesial or distal
   * @param space that it looks into
   * @param triangles of the crown on that side between the line angles, in rising order
   * @param out into the space: unit vector, perpendicular to the tooth's axis
   */
  public record ProximalSurface(
      Tooth tooth, Surface side, Space space, List<Integer> triangles, Vec3 out) {
    static ProximalSurface of(Tooth tooth, Surface side, Space space) {
      List<Integer> triangles = Arrays.stream(tooth.trianglesOf(side)).boxed().toList();
      return new ProximalSurface(tooth, side, space, triangles, tooth.axes().outOf(side));
    }
  }

  private static List<Wording> remarks(Teeth teeth, Chart chart) {
    List<Wording> remarks = new ArrayList<>();
    for (int i = 0; i < ToothNumber.PLACES; i++) {
      ToothNumber tooth = ToothNumber.inOrder(chart.jaw(), i);
      Presence said = chart.tooth(tooth).presence();
      boolean seen = teeth.tooth(tooth).isPresent();
      if (seen && said == Presence.MISSING && chart.names(tooth)) {
        remarks.add(
            Wording.of(
                "The chart calls ",
                tooth,
                " missing, and the scan shows it; the chart is followed."));
      }
      if (!seen && said != Presence.MISSING) {
        remarks.add(
            Wording.of(
                "The scan does not show ",
                tooth,
                ", which the chart does not call missing; it is taken as missing."));
      }
    }
    for (ToothNumber tooth : teeth.tooSmall()) {
      remarks.add(Wording.of("Too little of ", tooth, " is on the scan to measure it."));
    }
    if (teeth.byNumber().size() >= 4 && teeth.handedness() < 0.5) {
      remarks.add(
          Wording.of(
              String.format(
                  Locale.ROOT,
                  "The numbers run the wrong way round (%.0f of 100 teeth are on the side of their"
                      + " number): the scan may be mirrored, or upper taken for lower.",
                  100 * teeth.handedness())));
    }
    return remarks;
  }
}
