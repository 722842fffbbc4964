package rodwork.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.Chart;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.teeth.ToothLabels;
import rodwork.geometry.Vec3;
import rodwork.geometry.Watch;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.survey.Gauges;
import rodwork.survey.Survey;
import rodwork.survey.SurveyRules;
import rodwork.survey.Surveyor;
import rodwork.survey.Tilt;
import rodwork.survey.path.SiteFinder;
import rodwork.survey.tripod.Landmark;
import rodwork.survey.tripod.Landmarks;
import rodwork.survey.tripod.MarkBearings;
import rodwork.survey.tripod.Tripod;
import rodwork.survey.tripod.TripodMark;
import rodwork.survey.tripod.TripodPlaces;
import rodwork.survey.tripod.TripodRules;
import rodwork.survey.tripod.Unprepared;

/** Tripod marks on the demo casts. Truth: labels, base and cusps as they were made. */
class TripodOnDemoTest {
  private static final TripodRules RULES = TripodRules.SHIPPED;
  private static final List<Tilt> TILTS =
      List.of(Tilt.REFERENCE, new Tilt(6, 0), new Tilt(-7, 3), new Tilt(0, -8));

  private static Arch arch(DemoCast cast) {
    BitSet base = new BitSet();
    for (int t = 0; t < cast.mesh().triangleCount(); t++) {
      base.set(t, cast.label(t) == DemoCast.BASE);
    }
    return new Arch(
        MeshTopology.of(cast.mesh()), AnatomicSurface.given(cast.mesh(), base), cast.frame());
  }

  private static Dentition dentition(DemoCast cast, Arch arch) {
    int[] labels = new int[cast.mesh().triangleCount()];
    for (int t = 0; t < labels.length; t++) {
      labels[t] = Math.max(DemoCast.GUM, cast.label(t));
    }
    return Dentition.of(
        arch,
        ToothLabels.of(labels),
        Chart.missing(cast.jaw(), cast.missing().stream().map(ToothNumber::of).toList()),
        Watch.NONE);
  }

  @ParameterizedTest
  @EnumSource(names = {"UPPER", "LOWER"})
  void proposalsKeepOffAbutmentsAndPlaster(Jaw jaw) {
    DemoCast cast = Casts.of(jaw);
    Arch arch = arch(cast);
    Dentition dentition = dentition(cast, arch);
    SortedSet<ToothNumber> abutments = SiteFinder.likelyAbutments(dentition);
    Set<Vec3> plaster = new HashSet<>();
    TriangleMesh mesh = cast.mesh();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (cast.label(t) == DemoCast.BASE) {
        plaster.add(mesh.vertex(mesh.corner(t, 0)));
      }
    }
    Surveyor surveyor = Surveyor.of(arch, SurveyRules.SHIPPED);
    for (Tilt tilt : TILTS) {
      Survey survey = surveyor.survey(tilt.axis(arch.frame()), Gauges.COMMON, Watch.NONE);
      Tripod tripod =
          new TripodPlaces(surveyor, survey, RULES)
              .best(Unprepared.of(mesh, dentition, abutments), Watch.NONE);
      List<Optional<MarkBearings>> bearings =
          MarkBearings.of(tripod, mesh, dentition, RULES.picking().value());
      for (int i = 0; i < 3; i++) {
        TripodMark mark = tripod.marks().get(i);
        assertThat(abutments)
            .as("mark %s at %s", i + 1, tilt)
            .extracting(ToothNumber::fdi)
            .doesNotContain(cast.label(mark.triangle()));
        assertThat(plaster.stream().mapToDouble(p -> p.distance(mark.point())).min().orElseThrow())
            .as("mark %s at %s, from the plaster", i + 1, tilt)
            .isGreaterThan(RULES.fromRim().value() - 0.5);
        assertThat(survey.depth(mesh.corner(mark.triangle(), 0))).isZero();
        assertThat(
                dentition.openSpaces().stream()
                        .flatMap(space -> space.crest().stream())
                        .anyMatch(crest -> crest.distance(mark.point()) < 5)
                    || dentition.inOrder().stream()
                        .anyMatch(tooth -> tooth.axes().origin().distance(mark.point()) < 30))
            .as("mark %s at %s lies near a tooth or on a ridge", i + 1, tilt)
            .isTrue();
        MarkBearings from = bearings.get(i).orElseThrow();
        assertThat(from.errorMm()).as("mark %s at %s", i + 1, tilt).isLessThan(0.8);
        for (MarkBearings.Bearing bearing : from.both()) {
          assertThat(bearing.distanceMm())
              .isCloseTo(bearing.landmark().point().distance(mark.point()), within(1e-9));
        }
      }
    }
  }

  @Test
  void whereTooLittleIsLeftOnlySeatsAndProximalSurfacesAreSpared() {
    DemoCast cast = Casts.of(Jaw.LOWER);
    Arch arch = arch(cast);
    Dentition dentition = dentition(cast, arch);
    var tiers = Unprepared.of(cast.mesh(), dentition, dentition.standing());
    int crowns = 0;
    int seats = 0;
    for (int t = 0; t < cast.mesh().triangleCount(); t++) {
      boolean tooth = cast.label(t) > 0;
      crowns += tiers.get(1).test(t) && tooth ? 1 : 0;
      seats += tiers.get(2).test(t) && tooth ? 1 : 0;
      assertThat(tiers.get(2).test(t) || tooth).as("gum is never prepared").isTrue();
    }
    assertThat(crowns).isLessThan(20);
    assertThat(seats).isGreaterThan(2000);
    int fossa = nearest(cast, 47, 0, 0);
    assertThat(tiers.get(2).test(fossa)).isFalse();
    int ridge = nearest(cast, 47, 0.4 * 10.5, 0);
    assertThat(tiers.get(2).test(ridge)).isFalse();
  }

  /** The triangle at the top of a crown, so far to mesial and to facial [mm]. */
  private static int nearest(DemoCast cast, int fdi, double m, double f) {
    DemoTooth tooth = cast.tooth(fdi);
    int best = -1;
    double least = 1e9;
    for (int t = 0; t < cast.mesh().triangleCount(); t++) {
      Vec3 q = tooth.toTooth(cast.mesh().pointOn(t, 1 / 3.0, 1 / 3.0));
      double off = Math.hypot(q.x() - m, q.y() - f) + 0.01 * Math.abs(q.z() - tooth.lengthMm());
      if (cast.label(t) == fdi && q.z() > 0.5 * tooth.lengthMm() && off < least) {
        least = off;
        best = t;
      }
    }
    return best;
  }

  @Test
  void cuspTipsLieWhereTheyWereMade() {
    DemoCast cast = Casts.of(Jaw.LOWER);
    List<Landmark> landmarks = Landmarks.of(cast.mesh(), dentition(cast, arch(cast)));
    // As LowerCast and Molar have them: width 10.5, depth 10, cusps in rows at 0.27 of the depth.
    double row = 2.7;
    tip(cast, landmarks, 47, Landmark.Kind.MESIOFACIAL_CUSP, 0.22 * 10.5, row);
    tip(cast, landmarks, 47, Landmark.Kind.DISTOFACIAL_CUSP, -0.22 * 10.5, row - 0.1);
    tip(cast, landmarks, 47, Landmark.Kind.MESIOLINGUAL_CUSP, 0.21 * 10.5, -row - 0.1);
    tip(cast, landmarks, 47, Landmark.Kind.DISTOLINGUAL_CUSP, -0.21 * 10.5, -row);
    tip(cast, landmarks, 44, Landmark.Kind.FACIAL_CUSP, 0.1, 1.1);
    assertThat(landmarks)
        .filteredOn(mark -> mark.kind() == Landmark.Kind.MESIOINCISAL_ANGLE)
        .hasSize(4);
    assertThat(landmarks)
        .filteredOn(mark -> mark.kind() == Landmark.Kind.FACIAL_PAPILLA)
        .as("seven contacts, each told once")
        .hasSize(7)
        .allSatisfy(mark -> assertThat(mark.other()).isPresent());
    assertThat(landmarks.stream().map(Landmark::toString))
        .doesNotHaveDuplicates()
        .contains("mesiofacial cusp of 47", "cusp of 33");
  }

  private static void tip(
      DemoCast cast, List<Landmark> landmarks, int fdi, Landmark.Kind kind, double m, double f) {
    Landmark found =
        landmarks.stream()
            .filter(mark -> mark.tooth().fdi() == fdi && mark.kind() == kind)
            .findFirst()
            .orElseThrow();
    Vec3 q = cast.tooth(fdi).toTooth(found.point());
    assertThat(Math.hypot(q.x() - m, q.y() - f)).as(found.toString()).isLessThan(0.6);
  }
}
