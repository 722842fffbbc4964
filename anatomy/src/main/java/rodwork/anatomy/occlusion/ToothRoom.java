package rodwork.anatomy.occlusion;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.anatomy.dentition.Dentition;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.geometry.Vec3;
import rodwork.geometry.mesh.TriangleMesh;

/**
 * The least room between the biting surface of a tooth and the opposing teeth, along the occlusal
 * direction of the arch.
 *
 * <p>Looked at amid each triangle that faces the occlusal side, so no finer than the scan. A rest
 * in the mesial or distal fossa lies in the third of that name. NaN: nothing opposes, or the
 * opposing scan does not cover the place.
 *
 * @param tooth that it belongs to
 * @param leastMm over the whole biting surface [mm]; negative where the scans run into each other
 * @param at where that is, scan frame [mm]; amid the crown where it is not known
 * @param mesialMm over the mesial third [mm]
 * @param middleMm over the middle third [mm]
 * @param distalMm over the distal third [mm]
 */
public record ToothRoom(
    ToothNumber tooth, double leastMm, Vec3 at, double mesialMm, double middleMm, double distalMm) {

  /** Of every tooth on the scan, from the patient's right to left. */
  public static List<ToothRoom> of(Clearance clearance, Dentition dentition, TriangleMesh mesh) {
    List<ToothRoom> rooms = new ArrayList<>();
    for (Tooth tooth : dentition.inOrder()) {
      rooms.add(of(clearance, tooth, mesh));
    }
    return rooms;
  }

  private static ToothRoom of(Clearance clearance, Tooth tooth, TriangleMesh mesh) {
    Map<AcrossThird, Double> least = new EnumMap<>(AcrossThird.class);
    double all = Double.NaN;
    Vec3 at = tooth.centroid();
    for (int t : tooth.trianglesOf(Surface.OCCLUSAL)) {
      Vec3 place = mesh.pointOn(t, 1 / 3.0, 1 / 3.0);
      double room = clearance.at(place);
      if (Double.isNaN(room)) {
        continue;
      }
      least.merge(tooth.place(place).across(), room, Math::min);
      if (!(room >= all)) {
        all = room;
        at = place;
      }
    }
    return new ToothRoom(
        tooth.number(),
        all,
        at,
        least.getOrDefault(AcrossThird.MESIAL, Double.NaN),
        least.getOrDefault(AcrossThird.MIDDLE, Double.NaN),
        least.getOrDefault(AcrossThird.DISTAL, Double.NaN));
  }
}
