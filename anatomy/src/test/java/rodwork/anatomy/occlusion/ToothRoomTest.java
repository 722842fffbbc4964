package rodwork.anatomy.occlusion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.dentition.LabelledArch;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.registration.RigidMotion;

/** Room over the teeth of a real arch. Truth: planes over it, whose height is known everywhere. */
class ToothRoomTest {
  private static final LabelledArch ARCH = LabelledArch.load("lower-35");
  private static final Dentition DENTITION = ARCH.dentition();
  private static final TriangleMesh MESH = ARCH.arch().mesh();
  private static final ArchFrame FRAME = ARCH.arch().frame();

  private static List<ToothRoom> under(TriangleMesh opposing) {
    return ToothRoom.of(Clearance.of(ARCH.arch(), opposing, RigidMotion.NONE), DENTITION, MESH);
  }

  private static Tooth tooth(ToothRoom room) {
    return DENTITION.tooth(room.tooth()).orElseThrow();
  }

  /** A square of the plane {@code z = height + slope·y} of the arch frame, x from one side on. */
  private static TriangleMesh plane(double height, double slope, double fromX) {
    double[] xyz = new double[12];
    for (int k = 0; k < 4; k++) {
      double x = k == 0 || k == 3 ? fromX : 100;
      double y = k < 2 ? -100 : 100;
      Vec3 p =
          FRAME
              .origin()
              .plus(FRAME.x().times(x))
              .plus(FRAME.y().times(y))
              .plus(FRAME.z().times(height + slope * y));
      xyz[3 * k] = p.x();
      xyz[3 * k + 1] = p.y();
      xyz[3 * k + 2] = p.z();
    }
    return TriangleMesh.of(xyz, new int[] {0, 1, 2, 0, 2, 3});
  }

  /** The highest vertex of a crown against a plane through the frame's origin [mm]. */
  private static double highest(Tooth tooth, double slope) {
    double top = Double.NEGATIVE_INFINITY;
    for (int t : tooth.copyOfTriangles()) {
      for (int k = 0; k < 3; k++) {
        Vec3 q = FRAME.toArch(MESH.vertex(MESH.corner(t, k)).minus(FRAME.origin()));
        top = Math.max(top, q.z() - slope * q.y());
      }
    }
    return top;
  }

  @Test
  void underAPlaneTheHighestPlaceOfACrownHasTheLeastRoom() {
    double slope = 0.15;
    double height = 12;
    List<ToothRoom> rooms = under(plane(height, slope, -100));
    assertThat(rooms).hasSize(DENTITION.inOrder().size());
    for (ToothRoom room : rooms) {
      Tooth tooth = tooth(room);
      // Read amid triangles, whose edges are near 1 mm: a cusp's own tip is a little higher.
      double truth = height - highest(tooth, slope);
      assertThat(room.leastMm()).as("over %s", tooth).isBetween(truth, truth + 0.4);
      Vec3 at = FRAME.toArch(room.at().minus(FRAME.origin()));
      assertThat(height + slope * at.y() - at.z())
          .as("where it is on %s", tooth)
          .isCloseTo(room.leastMm(), within(1e-9));
      assertThat(room.leastMm())
          .as("the least of the thirds of %s", tooth)
          .isEqualTo(least(room.mesialMm(), room.middleMm(), room.distalMm()));
    }
  }

  private static double least(double... rooms) {
    double least = Double.POSITIVE_INFINITY;
    for (double room : rooms) {
      least = Double.isNaN(room) ? least : Math.min(least, room);
    }
    return least;
  }

  @Test
  void aPlaneThatRisesToMesialLeavesMoreRoomThere() {
    int molars = 0;
    for (Tooth tooth : DENTITION.inOrder()) {
      if (tooth.number().isMolar()) {
        ToothRoom level = of(tooth, 0);
        ToothRoom rising = of(tooth, 0.2);
        assertThat(rising.mesialMm()).as("mesial of %s", tooth).isGreaterThan(level.mesialMm());
        assertThat(rising.distalMm()).as("distal of %s", tooth).isLessThan(level.distalMm());
        assertThat(rising.middleMm()).isBetween(level.middleMm() - 0.5, level.middleMm() + 0.5);
        molars++;
      }
    }
    assertThat(molars).isGreaterThanOrEqualTo(3);
  }

  /** The room of one tooth under a plane that rises to its mesial side, about its middle. */
  private static ToothRoom of(Tooth tooth, double slope) {
    Vec3 mesial = tooth.axes().mesial().across(FRAME.z()).unit();
    Vec3 across = FRAME.z().cross(mesial);
    Vec3 middle = tooth.centroid().plus(FRAME.z().times(10));
    double[] xyz = new double[12];
    for (int k = 0; k < 4; k++) {
      double along = k == 0 || k == 3 ? -30 : 30;
      Vec3 p =
          middle
              .plus(mesial.times(along))
              .plus(across.times(k < 2 ? -30 : 30))
              .plus(FRAME.z().times(slope * along));
      xyz[3 * k] = p.x();
      xyz[3 * k + 1] = p.y();
      xyz[3 * k + 2] = p.z();
    }
    return under(TriangleMesh.of(xyz, new int[] {0, 1, 2, 0, 2, 3})).stream()
        .filter(room -> room.tooth().equals(tooth.number()))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void withoutAnythingOpposingTheRoomIsNotKnown() {
    int known = 0;
    int unknown = 0;
    for (ToothRoom room : under(plane(12, 0, 0))) {
      double x = FRAME.toArch(tooth(room).centroid().minus(FRAME.origin())).x();
      if (x > 8) {
        assertThat(room.leastMm()).as("over %s", room.tooth()).isPositive();
        known++;
      } else if (x < -8) {
        assertThat(room.leastMm()).as("over %s", room.tooth()).isNaN();
        assertThat(room.mesialMm()).isNaN();
        assertThat(room.at()).isEqualTo(tooth(room).centroid());
        unknown++;
      }
    }
    assertThat(known).isGreaterThan(3);
    assertThat(unknown).isGreaterThan(3);
  }
}
