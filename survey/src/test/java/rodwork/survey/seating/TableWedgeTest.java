package rodwork.survey.seating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rodwork.anatomy.AnatomicSurface;
import rodwork.geometry.Refusal;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.MeshCheck;

/** Truth: plane geometry. */
class TableWedgeTest {
  private static TriangleMesh castOnABase() {
    return Bodies.join(
        Bodies.box(new Vec3(-30, -25, -12), new Vec3(30, 25, 0), 1),
        Bodies.moved(Bodies.ellipsoid(20, 15, 8, 0.8), new Vec3(0, 0, 2)));
  }

  @Test
  void theWedgeMakesUpForTheTilt() {
    TriangleMesh cast = castOnABase();
    AnatomicSurface surface = AnatomicSurface.of(MeshTopology.of(cast));
    double rad = Math.toRadians(7);
    Vec3 axis = new Vec3(0, Math.sin(rad), Math.cos(rad));
    TableWedge wedge = TableWedge.of(cast, surface, axis);
    assertThat(wedge.angleDeg()).isCloseTo(7, within(1e-6));
    MeshCheck.closedAndOriented(wedge.mesh());
    assertThat(MeshCheck.volume(wedge.mesh())).isPositive();
    double low = Double.POSITIVE_INFINITY;
    for (int v = 0; v < 8; v++) {
      low = Math.min(low, wedge.mesh().vertex(v).dot(axis));
    }
    for (int v = 0; v < 4; v++) {
      assertThat(wedge.mesh().z(v)).as("on the base").isCloseTo(-12, within(1e-6));
      assertThat(wedge.mesh().vertex(v + 4).dot(axis)).as("level").isCloseTo(low, within(1e-9));
    }
    assertThat(wedge.thinnestMm()).isEqualTo(3);
    assertThat(wedge.thickestMm()).isGreaterThan(3 + 50 * Math.sin(rad));
  }

  @Test
  void anOpenShellHasNothingToStandOn() {
    TriangleMesh shell = Bodies.sphere(20, 1);
    assertThatThrownBy(() -> TableWedge.of(shell, AnatomicSurface.whole(shell), Vec3.Z))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("no flat base");
  }
}
