package rodwork.design.arm;

import java.util.List;
import java.util.Map;

/**
 * What arms can be made of, and how they are judged.
 *
 * @param materials all of them
 * @param sections of arms by their making
 * @param rules of their forces
 */
public record ArmStock(
    List<ArmMaterial> materials, Map<ArmMaterial.Making, ArmSections> sections, ArmRules rules) {
  public ArmStock {
    materials = List.copyOf(materials);
    sections = Map.copyOf(sections);
  }

  /** A material by its id. */
  public ArmMaterial material(String id) {
    return materials.stream()
        .filter(m -> m.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no material " + id));
  }

  /** The sections that arms of a material have. */
  public ArmSections sections(ArmMaterial material) {
    ArmSections found = sections.get(material.making());
    if (found == null) {
      throw new IllegalArgumentException("no sections for " + material.making());
    }
    return found;
  }

  /** Every material in its own sections. */
  public List<ArmAdvice.Choice> choices() {
    return materials.stream()
        .map(m -> new ArmAdvice.Choice(m, sections(m).origin(), sections(m).tip()))
        .toList();
  }
}
