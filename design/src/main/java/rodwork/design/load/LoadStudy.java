package rodwork.design.load;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.geometry.Watch;

/**
 * One plan under a load on each of its bases, draw by draw. Its numbers are worth nothing alone:
 * they are there to be divided by those of another plan of the same mouth, see {@link
 * LoadComparison}. Immutable.
 *
 * @param denture where the plan bears
 * @param loads one a base
 */
public record LoadStudy(DentureOnCast denture, List<UnderLoad> loads) {

  /**
   * What one load does. Arrays hold one value a draw, NaN where the denture tips over.
   *
   * @param base that is bitten on
   * @param force the load [N]
   * @param sinking how far the base sinks where it is bitten on: the mean over its teeth [mm]
   * @param tissue force that all tissue bears [N]
   * @param teeth what each carrying tooth bears
   * @param tipsOver in how many draws nothing holds the denture
   */
  public record UnderLoad(
      DentureOnCast.Base base,
      Values force,
      Values sinking,
      Values tissue,
      Map<ToothNumber, OnTooth> teeth,
      int tipsOver) {
    public UnderLoad {
      teeth = Map.copyOf(teeth);
    }
  }

  /**
   * What a tooth bears.
   *
   * @param restN force on its rests
   * @param momentNmm size of the tipping moment about its centre of resistance [N·mm]
   * @param toDistalNmm the part of it that tips the crown to distal; negative: to mesial
   */
  public record OnTooth(Values restN, Values momentNmm, Values toDistalNmm) {}

  /** One value a draw. Immutable. */
  public static final class Values {
    private final double[] values;

    Values(double[] values) {
      this.values = values.clone();
    }

    public int count() {
      return values.length;
    }

    public double of(int draw) {
      return values[draw];
    }
  }

  public LoadStudy {
    loads = List.copyOf(loads);
  }

  /** Works a plan through. */
  public static LoadStudy of(DentureOnCast denture, LoadRules rules, Watch watch) {
    Mouth mouth = new Mouth(denture, rules);
    List<UnderLoad> loads = new ArrayList<>();
    for (DentureOnCast.Base base : denture.bases()) {
      watch.check();
      loads.add(underLoad(mouth, base, watch));
    }
    return new LoadStudy(denture, loads);
  }

  private static UnderLoad underLoad(Mouth mouth, DentureOnCast.Base base, Watch watch) {
    DentureOnCast denture = mouth.denture;
    int count = mouth.draws.count();
    double[] force = mouth.draw("force", mouth.rules.force());
    double[] sinking = empty(count);
    double[] tissue = empty(count);
    int teeth = denture.teeth().size();
    double[][] rest = new double[teeth][];
    double[][] moment = new double[teeth][];
    double[][] distal = new double[teeth][];
    for (int t = 0; t < teeth; t++) {
      rest[t] = empty(count);
      moment[t] = empty(count);
      distal[t] = empty(count);
    }
    int tipsOver = 0;
    for (int draw = 0; draw < count; draw++) {
      watch.check();
      RigidDenture springs = mouth.at(draw);
      double each = force[draw] / base.teeth().size();
      Optional<Equilibrium> found =
          Equilibrium.of(
              springs,
              base.teeth().stream().map(p -> new RigidDenture.Force(p.x(), p.y(), each)).toList());
      if (found.isEmpty()) {
        tipsOver++;
        continue;
      }
      Equilibrium rests = found.get();
      tissue[draw] = rests.bedN().stream().mapToDouble(n -> n).sum();
      sinking[draw] =
          base.teeth().stream()
              .mapToDouble(p -> rests.sinks().mm(p.x(), p.y()))
              .average()
              .orElseThrow();
      for (int t = 0; t < teeth; t++) {
        DentureOnCast.Carrier carrier = denture.teeth().get(t);
        rest[t][draw] = rests.restN(springs, t);
        moment[t][draw] = rests.momentNmm(t);
        distal[t][draw] =
            rests.towardsX().get(t) * carrier.distalX()
                + rests.towardsY().get(t) * carrier.distalY();
      }
    }
    Map<ToothNumber, OnTooth> onTeeth = new TreeMap<>();
    for (int t = 0; t < teeth; t++) {
      onTeeth.put(
          denture.teeth().get(t).tooth(),
          new OnTooth(new Values(rest[t]), new Values(moment[t]), new Values(distal[t])));
    }
    return new UnderLoad(
        base, new Values(force), new Values(sinking), new Values(tissue), onTeeth, tipsOver);
  }

  private static double[] empty(int count) {
    double[] values = new double[count];
    Arrays.fill(values, Double.NaN);
    return values;
  }

  /** The unknown of one mouth, by name: the same for every plan of it. */
  private static final class Mouth {
    private final DentureOnCast denture;
    private final LoadRules rules;
    private final Draws draws;
    private final Map<String, double[]> drawn = new HashMap<>();

    Mouth(DentureOnCast denture, LoadRules rules) {
      this.denture = denture;
      this.rules = rules;
      this.draws = new Draws((int) Math.round(rules.draws().value()));
    }

    double[] draw(String name, Between range) {
      return drawn.computeIfAbsent(name, n -> Arrays.stream(draws.of(n)).map(range::at).toArray());
    }

    /** A factor from the inverse of the most to the most. */
    private double factor(String name, double most, int draw) {
      return drawn
          .computeIfAbsent(
              name, n -> Arrays.stream(draws.of(n)).map(u -> Math.pow(most, 2 * u - 1)).toArray())[
          draw];
    }

    RigidDenture at(int draw) {
      double axial = draw("teeth, along the axis", rules.teeth().axial())[draw];
      double tipping = draw("teeth, tipping", rules.teeth().tipping())[draw];
      double depth = draw("teeth, centre of resistance", rules.teeth().depth())[draw];
      double uneven = rules.teeth().uneven().value();
      List<RigidDenture.Abutment> teeth = new ArrayList<>();
      for (DentureOnCast.Carrier c : denture.teeth()) {
        String name = "tooth " + c.tooth();
        double softer = rules.teeth().looseSofter().value();
        double loose =
            c.loose() ? Math.sqrt(softer) * factor(name + ", loose", Math.sqrt(softer), draw) : 1;
        teeth.add(
            new RigidDenture.Abutment(
                c.x() + depth * c.leanX(),
                c.y() + depth * c.leanY(),
                axial * factor(name + ", along the axis", uneven, draw) / loose,
                tipping * factor(name + ", tipping", uneven, draw) / loose));
      }
      List<RigidDenture.Rest> rests =
          denture.rests().stream()
              .map(r -> new RigidDenture.Rest(index(r.tooth()), r.x(), r.y()))
              .toList();
      double travel = draw("clasps, travel", rules.clasps().travel())[draw];
      double unknownPull = draw("clasps, pull", rules.clasps().pull())[draw];
      double share = draws(draw);
      List<RigidDenture.Tip> tips = new ArrayList<>();
      for (DentureOnCast.Tip t : denture.tips()) {
        double pull =
            t.pullN().map(p -> p.from() * Math.pow(p.to() / p.from(), share)).orElse(unknownPull);
        tips.add(new RigidDenture.Tip(index(t.tooth()), t.x(), t.y(), pull / travel, pull));
      }
      double palate = draw("palate", rules.tissue().palate())[draw];
      double[] ridges = new double[denture.bases().size()];
      for (int i = 0; i < ridges.length; i++) {
        DentureOnCast.Base b = denture.bases().get(i);
        ridges[i] = draw("ridge " + b.missing().getFirst(), rules.tissue().of(b.firmness()))[draw];
      }
      List<RigidDenture.Patch> bed =
          denture.bed().stream()
              .map(
                  c ->
                      new RigidDenture.Patch(
                          c.base(),
                          c.x(),
                          c.y(),
                          c.areaMm2()
                              * (c.base() == DentureOnCast.CONNECTOR ? palate : ridges[c.base()])))
              .toList();
      return new RigidDenture(teeth, rests, tips, bed);
    }

    /** Where in its range the pull of every computed arm lies: friction and alloy are shared. */
    private double draws(int draw) {
      return drawn.computeIfAbsent("clasps, computed pull", draws::of)[draw];
    }

    private int index(ToothNumber tooth) {
      for (int i = 0; i < denture.teeth().size(); i++) {
        if (denture.teeth().get(i).tooth().equals(tooth)) {
          return i;
        }
      }
      throw new IllegalArgumentException("tooth " + tooth + " carries nothing");
    }
  }
}
