package rodwork.survey.path;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.NavigableSet;
import java.util.SortedSet;
import java.util.TreeSet;
import rodwork.anatomy.Arch;
import rodwork.anatomy.chart.Side;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.HeightThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.anatomy.tooth.ToothPlace;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.rules.Threshold;
import rodwork.survey.plane.PlaneRules;
import rodwork.survey.plane.PlaneSite;
import rodwork.survey.plane.PlaneSites;

/** Says where a search has to look on a cast whose teeth are known. */
public final class SiteFinder {
  /** Places of a terminal stand for a piece of surface of this size [mm]. */
  private static final double TERMINAL_CELL_MM = 1.0;

  /** Where a dead space shows: this far over the margin [mm]. */
  private static final double GAP_FROM_MM = 0.3;

  private static final double GAP_TO_MM = 2;

  private final Arch arch;
  private final TriangleMesh mesh;
  private final Dentition dentition;
  private final PathRules rules;
  private final PlaneRules planeRules;
  private final PlaneSites planeSites;

  private SiteFinder(
      Arch arch, TriangleTree tree, Dentition dentition, PathRules rules, PlaneRules planeRules) {
    this.arch = arch;
    this.mesh = arch.mesh();
    this.dentition = dentition;
    this.rules = rules;
    this.planeRules = planeRules;
    this.planeSites = new PlaneSites(arch, tree, planeRules);
  }

  /** The sites of a cast. */
  public static PathSites find(
      Arch arch, TriangleTree tree, Dentition dentition, PathRules rules, PlaneRules planeRules) {
    SiteFinder finder = new SiteFinder(arch, tree, dentition, rules, planeRules);
    List<Tooth> abutments =
        likelyAbutments(dentition).stream()
            .map(number -> dentition.tooth(number).orElseThrow())
            .toList();
    return new PathSites(
        finder.planes(abutments),
        finder.terminals(abutments),
        new ZoneFinder(arch, dentition, rules.zones()).find(abutments),
        finder.fronts(abutments));
  }

  /**
   * The teeth that will likely carry clasps: those beside open spaces; on a side where no back
   * tooth is among them, for there is no space or one among front teeth alone, the last premolar
   * and the first molar, so that the denture does not turn. The chart's own word goes before.
   * Implants are not judged.
   */
  public static SortedSet<ToothNumber> likelyAbutments(Dentition dentition) {
    List<ToothNumber> standing =
        dentition.standing().stream().filter(t -> !dentition.isImplant(t)).toList();
    NavigableSet<ToothNumber> likely = new TreeSet<>(dentition.besideSpaces());
    for (Side side : Side.values()) {
      if (dentition.besideSpaces().stream()
          .filter(tooth -> !dentition.isImplant(tooth))
          .noneMatch(tooth -> tooth.side() == side && !tooth.isAnterior())) {
        standing.stream()
            .filter(tooth -> tooth.side() == side && tooth.isPremolar())
            .reduce((a, b) -> a.place() >= b.place() ? a : b)
            .ifPresent(likely::add);
        standing.stream()
            .filter(tooth -> tooth.side() == side && tooth.isMolar())
            .reduce((a, b) -> a.place() <= b.place() ? a : b)
            .ifPresent(likely::add);
      }
    }
    for (ToothNumber tooth : standing) {
      if (dentition.chart().tooth(tooth).abutment().or(false)) {
        likely.add(tooth);
      }
    }
    likely.removeIf(
        tooth ->
            !dentition.chart().tooth(tooth).abutment().or(true)
                || dentition.isImplant(tooth)
                || dentition.tooth(tooth).isEmpty());
    return likely;
  }

  private List<PlaneSite> planes(List<Tooth> abutments) {
    List<PlaneSite> planes = new ArrayList<>();
    for (Dentition.ProximalSurface proximal : dentition.proximalSurfaces()) {
      Threshold height =
          proximal.space().freeEnd() ? planeRules.heightFreeEnd() : planeRules.heightBounded();
      planeSites.site(proximal.tooth(), proximal.side(), height).ifPresent(planes::add);
    }
    for (Tooth tooth : abutments) {
      if (!tooth.number().isAnterior()) {
        planeSites.site(tooth, Surface.LINGUAL, planeRules.heightBounded()).ifPresent(planes::add);
      }
    }
    return planes;
  }

  private List<TerminalSite> terminals(List<Tooth> abutments) {
    List<TerminalSite> sites = new ArrayList<>();
    for (Tooth tooth : abutments) {
      for (Surface face : List.of(Surface.FACIAL, Surface.LINGUAL)) {
        List<SurfaceCells.Cell> cells =
            SurfaceCells.of(
                arch,
                Arrays.stream(tooth.trianglesOf(face)).filter(t -> mayHold(tooth, t)).toArray(),
                TERMINAL_CELL_MM);
        for (AcrossThird third : AcrossThird.values()) {
          List<Vec3> places =
              cells.stream()
                  .map(SurfaceCells.Cell::point)
                  .filter(point -> tooth.place(point).across() == third)
                  .toList();
          if (!places.isEmpty()) {
            sites.add(
                new TerminalSite(tooth.number().fdi(), face == Surface.FACIAL, third, places));
          }
        }
      }
    }
    return sites;
  }

  private boolean mayHold(Tooth tooth, int triangle) {
    Vec3 point = mesh.pointOn(triangle, 1 / 3.0, 1 / 3.0);
    ToothPlace place = tooth.place(point);
    return place.height() == HeightThird.GINGIVAL
        && tooth.margin().distanceMm(point) >= rules.fromMargin().value();
  }

  private List<FrontSite> fronts(List<Tooth> abutments) {
    List<FrontSite> fronts = new ArrayList<>();
    for (Tooth tooth : abutments) {
      boolean shows =
          dentition
              .chart()
              .tooth(tooth.number())
              .aestheticZone()
              .or(tooth.number().place() <= rules.lastShown().value());
      if (shows) {
        Vec3 out = tooth.axes().facial().across(arch.frame().z()).unit();
        planeSites
            .middle(tooth, out)
            .ifPresent(
                facial ->
                    fronts.add(new FrontSite(tooth.number().fdi(), facial, out, gaps(tooth))));
      }
    }
    return fronts;
  }

  private List<Vec3> gaps(Tooth tooth) {
    List<Vec3> gaps = new ArrayList<>();
    for (Dentition.ProximalSurface proximal : dentition.proximalSurfaces()) {
      if (proximal.tooth().number().equals(tooth.number())) {
        int[] low =
            proximal.triangles().stream()
                .mapToInt(Integer::intValue)
                .filter(
                    t -> {
                      double over = tooth.overMarginMm(mesh.pointOn(t, 1 / 3.0, 1 / 3.0));
                      return over >= GAP_FROM_MM && over <= GAP_TO_MM;
                    })
                .toArray();
        SurfaceCells.of(arch, low, TERMINAL_CELL_MM).forEach(cell -> gaps.add(cell.point()));
      }
    }
    return gaps;
  }
}
