package rodwork.design.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.kennedy.KennedyClass;
import rodwork.anatomy.tooth.Surface;
import rodwork.design.plan.Part.RestKind;
import rodwork.geometry.Vec3;

/** The fulcrum line by class, and what can hold a base down across it: studylib 12822793. */
final class Levers {
  /** Nearer to the fulcrum line than this a rest holds nothing down [mm]. */
  private static final double NEAR_MM = 3;

  private final Dentition dentition;
  private final ArchFrame frame;
  private final List<Part.Rest> rests;
  private final List<Part.DentureBase> bases;

  Levers(
      Dentition dentition, ArchFrame frame, List<Part.Rest> rests, List<Part.DentureBase> bases) {
    this.dentition = dentition;
    this.frame = frame;
    this.rests = List.copyOf(rests);
    this.bases = bases;
  }

  /** A tooth that could carry an indirect retainer. */
  record Candidate(ToothNumber tooth, RestKind kind, Surface side, double offsetMm) {}

  KennedyClass kennedy() {
    return dentition.kennedy().kennedy().orElse(KennedyClass.III);
  }

  private double y(Vec3 point) {
    return point.minus(frame.origin()).dot(frame.y());
  }

  /** The most posterior rest of a side; in front of a free end the nearest to it. */
  private Optional<Part.Rest> last(Side side) {
    return rests.stream()
        .filter(r -> r.tooth().side() == side)
        .min(Comparator.comparingDouble(r -> y(r.middle())));
  }

  Optional<FulcrumLine> fulcrum() {
    Optional<Part.Rest> right;
    Optional<Part.Rest> left;
    switch (kennedy()) {
      case I, II -> {
        right = last(Side.RIGHT);
        left = last(Side.LEFT);
      }
      case IV -> {
        right = first(Side.RIGHT);
        left = first(Side.LEFT);
      }
      default -> {
        return Optional.empty();
      }
    }
    if (right.isEmpty() || left.isEmpty()) {
      return Optional.empty();
    }
    Part.Rest a = right.get();
    Part.Rest b = left.get();
    return Optional.of(new FulcrumLine(a.tooth(), b.tooth(), a.middle(), b.middle(), frame.z()));
  }

  private Optional<Part.Rest> first(Side side) {
    return rests.stream()
        .filter(r -> r.tooth().side() == side)
        .max(Comparator.comparingDouble(r -> y(r.middle())));
  }

  /** The place of a base farthest from the fulcrum line, with its sign [mm]. */
  private double farthest(FulcrumLine fulcrum) {
    double most = 0;
    for (Part.DentureBase base : bases) {
      if (base.space().freeEnd() || kennedy() == KennedyClass.IV) {
        for (Vec3 p : base.space().crest()) {
          double offset = fulcrum.offsetMm(p);
          most = Math.abs(offset) > Math.abs(most) ? offset : most;
        }
      }
    }
    return most;
  }

  /**
   * How well a rest holds the bases down: with its distance from the fulcrum line on the other side
   * of it; on their own side it holds nothing, and its ratio is 0.
   */
  Part.IndirectRetainer retainer(Part.Rest rest, FulcrumLine fulcrum) {
    double offset = fulcrum.offsetMm(rest.middle());
    double end = farthest(fulcrum);
    boolean across = offset * end < 0;
    return new Part.IndirectRetainer(
        rest, Math.abs(offset), across ? Math.abs(offset) / Math.abs(end) : 0);
  }

  /**
   * For each place that wants an indirect retainer the teeth that could carry it, best first: on
   * the other side of the fulcrum line, as far from it as can be, on no incisor.
   */
  List<List<Candidate>> candidates(FulcrumLine fulcrum, Predicate<ToothNumber> mayCarry) {
    double sign = Math.signum(farthest(fulcrum));
    List<Side> sides = new ArrayList<>();
    switch (kennedy()) {
      case I, IV -> sides.addAll(List.of(Side.RIGHT, Side.LEFT));
      case II -> {
        boolean freeRight =
            bases.stream()
                .anyMatch(
                    b ->
                        b.space().freeEnd() && b.space().missing().getFirst().side() == Side.RIGHT);
        sides.add(freeRight ? Side.LEFT : Side.RIGHT);
      }
      case III -> {}
    }
    List<List<Candidate>> all = new ArrayList<>();
    for (Side side : sides) {
      List<Candidate> places = new ArrayList<>();
      for (ToothNumber t : dentition.standing()) {
        if (t.side() != side || t.isIncisor() || !mayCarry.test(t)) {
          continue;
        }
        Vec3 at = dentition.tooth(t).orElseThrow().centroid();
        double offset = fulcrum.offsetMm(at);
        boolean canine = t.isAnterior();
        if (offset * sign < 0 && Math.abs(offset) > NEAR_MM) {
          Surface where =
              canine
                  ? Surface.LINGUAL
                  : kennedy() == KennedyClass.IV ? Surface.DISTAL : Surface.MESIAL;
          places.add(
              new Candidate(
                  t, canine ? RestKind.CINGULUM : RestKind.OCCLUSAL, where, Math.abs(offset)));
        }
      }
      places.sort(Comparator.comparingDouble(Candidate::offsetMm).reversed());
      all.add(places);
    }
    return all;
  }
}
