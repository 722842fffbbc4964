package rodwork.design.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.Arch;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.cut.Cut;
import rodwork.design.cut.CutFrame;
import rodwork.design.cut.PreparedCast;
import rodwork.design.cut.ToothSide;
import rodwork.geometry.Vec3;
import rodwork.survey.testing.BallTooth;

/** Contours of a depression and of a seat in a ball are closed forms. */
class CutContoursTest {
  private static final Arch ARCH = BallTooth.arch();
  private static final Tooth TOOTH = BallTooth.dentition(ARCH).tooth(44).orElseThrow();

  @Test
  void contoursOfADepressionAreItsEllipses() {
    ToothSide side = new ToothSide(ARCH.mesh(), TOOTH, TOOTH.axes().outOf(Surface.FACIAL), Vec3.Z);
    double middle = side.frame.local(Vec3.ZERO).x();
    double height = side.frame.local(new Vec3(0, 0, BallTooth.RISE)).z() - 1;
    Vec3 place = side.frame.scan(middle, side.out(middle, height).orElseThrow(), height);
    Cut.Dimple cut = new Cut.Dimple(CutFrame.of(place, side.frame.out(), Vec3.Z), 2, 1, 0.25, 2);
    List<CutContours.Contour> contours =
        CutContours.of(ARCH.mesh(), new PreparedCast.Applied(TOOTH, cut));
    assertThat(contours)
        .extracting(CutContours.Contour::depthMm)
        .containsExactly(CutContours.EDGE_MM, 0.1, 0.2);
    for (CutContours.Contour contour : contours) {
      // Depth (1 − r²)² · 0.25 at r.
      double r = Math.sqrt(1 - Math.sqrt(contour.depthMm() / cut.depth()));
      for (CutContours.Piece piece : contour.pieces()) {
        Vec3 q = cut.frame().local(piece.from());
        assertThat(Math.hypot(q.x() / 2, q.z())).isCloseTo(r, within(0.03));
      }
    }
  }

  @Test
  void aSeatHasContoursDownToItsFloorAndNoneBelow() {
    Vec3 top = new Vec3(0, 0, BallTooth.RISE + BallTooth.RADIUS);
    Cut.Seat seat = new Cut.Seat(top, Vec3.Z.times(-1), Vec3.ZERO, 1.25, 1.25, 1.2, 0);
    List<CutContours.Contour> contours =
        CutContours.of(ARCH.mesh(), new PreparedCast.Applied(TOOTH, seat));
    assertThat(contours)
        .extracting(CutContours.Contour::depthMm)
        .startsWith(CutContours.EDGE_MM, 0.1)
        .endsWith(0.5, 1.0)
        .isSorted();
    for (CutContours.Contour contour : contours) {
      for (CutContours.Piece piece : contour.pieces()) {
        assertThat(Math.hypot(piece.to().x(), piece.to().y())).isLessThan(1.25 * 1.15 + 0.2);
      }
    }
  }
}
