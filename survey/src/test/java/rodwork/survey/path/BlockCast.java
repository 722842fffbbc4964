package rodwork.survey.path;

import java.util.ArrayList;
import java.util.List;
import rodwork.anatomy.AnatomicSurface;
import rodwork.anatomy.Arch;
import rodwork.anatomy.ArchFrame;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.tooth.Surface;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.MeshTopology;
import rodwork.geometry.mesh.TriangleMesh;
import rodwork.geometry.mesh.TriangleTree;
import rodwork.geometry.testing.Bodies;
import rodwork.geometry.testing.Reshape;
import rodwork.rules.Threshold;
import rodwork.survey.Tilt;
import rodwork.survey.plane.PlaneCutter;
import rodwork.survey.plane.PlaneRules;
import rodwork.survey.plane.PlaneSection;
import rodwork.survey.plane.PlaneSite;

/**
 * A cast with a known answer: four blocks whose walls are all parallel to one axis, set at a tilt.
 * A block's roof falls to its middle, so that its edges are ridges as on a tooth.
 */
final class BlockCast {
  final Arch arch;
  final List<PlaneSite> planes;

  /** The cast whose walls are parallel to the axis of a tilt. */
  BlockCast(Tilt walls) {
    ArchFrame frame = new ArchFrame(Vec3.ZERO, Vec3.Y, Vec3.Z, Jaw.UPPER, 0, 0);
    Vec3 axis = walls.axis(frame);
    double[][] w = {{-4, 0}, {4, 0}, {4, 7}, {0, 4.5}, {-4, 7}};
    TriangleMesh block = Bodies.prism(w, -4, 4, 0.8);
    TriangleMesh turnedBlock = Reshape.turned(block, Vec3.Z, 90);
    TriangleMesh cast =
        Bodies.join(
            Bodies.moved(turnedBlock, new Vec3(-22, -10, 0)),
            Bodies.moved(turnedBlock, new Vec3(22, -10, 0)),
            Bodies.moved(block, new Vec3(-14, 18, 0)),
            Bodies.moved(block, new Vec3(14, 18, 0)));
    Vec3 about = Vec3.Z.cross(axis);
    double angle = Math.toDegrees(Math.asin(Math.min(1, about.length())));
    TriangleMesh set = about.length() < 1e-12 ? cast : Reshape.turned(cast, about.unit(), angle);
    MeshTopology topology = MeshTopology.of(set);
    this.arch = new Arch(topology, AnatomicSurface.whole(set), frame);
    this.planes = new ArrayList<>();
    add(topology, turn(new Vec3(-22, -6, 5), about, angle), Vec3.Y, 16);
    add(topology, turn(new Vec3(22, -6, 5), about, angle), Vec3.Y, 26);
    add(topology, turn(new Vec3(-18, 18, 5), about, angle), Vec3.X.times(-1), 13);
    add(topology, turn(new Vec3(18, 18, 5), about, angle), Vec3.X, 23);
  }

  private static Vec3 turn(Vec3 p, Vec3 about, double angle) {
    return about.length() < 1e-12 ? p : Reshape.turned(p, about.unit(), angle);
  }

  private void add(MeshTopology topology, Vec3 place, Vec3 outward, int tooth) {
    PlaneCutter cutter = new PlaneCutter(topology, TriangleTree.of(topology.mesh()), Vec3.Z);
    List<PlaneSection> sections = new ArrayList<>();
    Vec3 across = Vec3.Z.cross(outward);
    for (int i = -2; i <= 2; i++) {
      sections.add(
          cutter.at(place.plus(across.times(0.6 * i)), outward, Vec3.Z, t -> true).orElseThrow());
    }
    Threshold height = PlaneRules.SHIPPED.heightBounded();
    planes.add(new PlaneSite(tooth, Surface.MESIAL, outward, height, 3, sections));
  }

  PathSites sites() {
    return new PathSites(planes, List.of(), List.of(), List.of());
  }
}
