package rodwork.design.abutment;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import rodwork.anatomy.space.Space;
import rodwork.anatomy.tooth.Surface;
import rodwork.anatomy.tooth.Tooth;
import rodwork.design.clasp.AbutmentJudgement;
import rodwork.design.clasp.BarSection;
import rodwork.design.course.ClaspAction;
import rodwork.design.course.ClaspCourse;

/**
 * One tooth as an abutment for what lies on one of its sides. A tooth between two spaces is two of
 * them: a clasp may come from either.
 *
 * @param tooth which
 * @param side mesial or distal: the side of the space, or of the embrasure used where there is none
 * @param space what lies there; empty where a tooth does
 * @param planes its surfaces that guide, or could: the one on that side, and the lingual one
 * @param sections the gum below its facial margin
 * @param judgement what was known, and what each family can do
 * @param courses the arms of every family, by id: those of a family that is ruled out too, for a
 *     person may choose it all the same
 * @param actions arms and forces of the families that are not ruled out, by id
 * @param noCourse why a family that is not ruled out has no arms, by id
 */
public record Abutment(
    Tooth tooth,
    Surface side,
    Optional<Space> space,
    List<GuidingPlane> planes,
    List<BarSection> sections,
    AbutmentJudgement judgement,
    Map<String, ClaspCourse.Attempt> courses,
    Map<String, ClaspAction> actions,
    Map<String, String> noCourse) {
  public Abutment {
    planes = List.copyOf(planes);
    sections = List.copyOf(sections);
    courses = Map.copyOf(courses);
    actions = Map.copyOf(actions);
    noCourse = Map.copyOf(noCourse);
  }

  /** The plane on the side of the space. */
  public Optional<GuidingPlane> proximalPlane() {
    return planes.stream().filter(p -> p.face() == side).findFirst();
  }
}
