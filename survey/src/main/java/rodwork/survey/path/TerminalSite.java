package rodwork.survey.path;

import java.util.List;
import rodwork.anatomy.tooth.AcrossThird;
import rodwork.geometry.Vec3;

/**
 * Where the terminal of a clasp may lie: one third of one surface of an abutment, in its gingival
 * third and clear of the margin.
 *
 * @param tooth FDI number
 * @param facial on the facial surface; else on the lingual one
 * @param third along the arch
 * @param places points of the surface there [scan frame, mm]
 */
public record TerminalSite(int tooth, boolean facial, AcrossThird third, List<Vec3> places) {

  public TerminalSite {
    places = List.copyOf(places);
  }

  /** Whether the tooth is on the patient's right. */
  public boolean right() {
    return tooth / 10 == 1 || tooth / 10 == 4;
  }
}
