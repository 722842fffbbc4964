package rodwork.design.plan;

import java.util.List;
import java.util.Optional;
import rodwork.anatomy.Jaw;
import rodwork.anatomy.chart.ToothNumber;
import rodwork.geometry.Vec3;
import rodwork.rules.Finding;
import rodwork.rules.Wording;

/**
 * The plan of one denture. Immutable; positions are in the scan frame [mm].
 *
 * @param jaw upper or lower
 * @param kennedy the class, in words
 * @param axis path of placement, from tissue to the occlusal side
 * @param choices what a person chose
 * @param rests of clasps and indirect retainers, from the patient's right to left
 * @param plates guiding plates
 * @param clasps one a tooth at most
 * @param minorConnectors from rests to the major connector
 * @param majorConnector empty where there is nothing to connect
 * @param bases one an open space that is replaced
 * @param fulcrum empty where no base can turn
 * @param indirectRetainers on the other side of the fulcrum
 * @param tori that the chart tells of, and how the connector lies to them
 * @param findings every rule that was asked
 * @param questions what is not known and would change the plan, one sentence each
 */
public record Plan(
    Jaw jaw,
    String kennedy,
    Vec3 axis,
    Choices choices,
    List<Part.Rest> rests,
    List<Part.GuidingPlate> plates,
    List<Part.Clasp> clasps,
    List<Part.MinorConnector> minorConnectors,
    Optional<Part.MajorConnector> majorConnector,
    List<Part.DentureBase> bases,
    Optional<FulcrumLine> fulcrum,
    List<Part.IndirectRetainer> indirectRetainers,
    List<TorusMark> tori,
    List<Finding> findings,
    List<Wording> questions) {
  public Plan {
    rests = List.copyOf(rests);
    plates = List.copyOf(plates);
    clasps = List.copyOf(clasps);
    minorConnectors = List.copyOf(minorConnectors);
    bases = List.copyOf(bases);
    indirectRetainers = List.copyOf(indirectRetainers);
    tori = List.copyOf(tori);
    findings = List.copyOf(findings);
    questions = List.copyOf(questions);
  }

  /** The teeth replaced, from the patient's right to left. */
  public List<ToothNumber> replaced() {
    return bases.stream().flatMap(b -> b.teeth().stream()).map(t -> t.tooth()).sorted().toList();
  }

  public Optional<Part.Clasp> clasp(ToothNumber tooth) {
    return clasps.stream().filter(c -> c.tooth().equals(tooth)).findFirst();
  }

  /** The rests of a tooth. */
  public List<Part.Rest> rests(ToothNumber tooth) {
    return rests.stream().filter(r -> r.tooth().equals(tooth)).toList();
  }
}
