package rodwork.survey.path;

import java.util.List;
import rodwork.geometry.Vec3;
import rodwork.survey.plane.PlaneSection;

/**
 * A tooth that shows when the patient smiles.
 *
 * @param tooth FDI number
 * @param facial its section at mid-facial
 * @param facialOutward facial direction there [unit vector]
 * @param gaps places on its proximal surfaces beside a space, near the gum, where a dead space
 *     would show [scan frame, mm]
 */
public record FrontSite(int tooth, PlaneSection facial, Vec3 facialOutward, List<Vec3> gaps) {
  public FrontSite {
    gaps = List.copyOf(gaps);
  }
}
