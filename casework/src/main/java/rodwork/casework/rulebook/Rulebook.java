package rodwork.casework.rulebook;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rodwork.anatomy.space.SpaceRules;
import rodwork.casework.prescription.LaboratoryRules;
import rodwork.design.abutment.AbutmentRules;
import rodwork.design.arm.ArmMaterial;
import rodwork.design.arm.ArmRules;
import rodwork.design.arm.ArmSections;
import rodwork.design.arm.ArmStock;
import rodwork.design.clasp.ClaspBook;
import rodwork.design.load.LoadRules;
import rodwork.design.plan.PlanRules;
import rodwork.design.preparation.PreparationRules;
import rodwork.design.preparation.Preparer;
import rodwork.survey.SurveyRules;
import rodwork.survey.path.PathRules;
import rodwork.survey.plane.PlaneRules;
import rodwork.survey.seating.SeatingRules;
import rodwork.survey.standoff.StandOffRules;
import rodwork.survey.tripod.TripodRules;

/**
 * Everything that decisions rest on, as one immutable value made from one file.
 *
 * @param name what messages call the file
 * @param title its own title
 * @param hash SHA-256 of the file in hexadecimal digits: what a case keeps to say which rulebook it
 *     used
 * @param text the file
 * @param spaces which room between teeth is a space
 * @param seatingKey of the key that carries a path to a plaster cast
 * @param standOff of bars below the margin
 * @param arms forces of clasp arms
 * @param clasps families and preferences
 * @param abutmentLimits by which facts of abutments are told
 * @param plan sizes and limits of the parts of a denture
 * @param preparation limits of cuts in the mouth
 * @param laboratory sizes asked of the laboratory
 * @param load how teeth and tissue give under load
 * @param conflicts where sources disagree, and the side taken
 * @param materials that arms are made of
 * @param sections of arms by their making
 */
public record Rulebook(
    String name,
    String title,
    String hash,
    String text,
    SpaceRules spaces,
    SurveyRules survey,
    TripodRules tripod,
    PlaneRules planes,
    PathRules path,
    SeatingRules seatingKey,
    StandOffRules standOff,
    ArmRules arms,
    ClaspBook clasps,
    AbutmentRules.Limits abutmentLimits,
    PlanRules plan,
    PreparationRules preparation,
    LaboratoryRules laboratory,
    LoadRules load,
    List<Conflict> conflicts,
    List<ArmMaterial> materials,
    Map<ArmMaterial.Making, ArmSections> sections) {
  /** A rulebook is smaller than this [bytes]. */
  static final int MOST_BYTES = 1 << 20;

  private static final class Shipped {
    static final Rulebook BOOK = of("(shipped)", Resources.text("rulebook.yaml"));
  }

  public Rulebook {
    conflicts = List.copyOf(conflicts);
    materials = List.copyOf(materials);
    sections = Map.copyOf(sections);
  }

  /** The one that Rodwork ships with. */
  public static Rulebook shipped() {
    return Shipped.BOOK;
  }

  /**
   * Reads a file.
   *
   * @throws rodwork.geometry.Refusal if it cannot be read or used; names the line
   */
  public static Rulebook read(Path file) {
    String name = String.valueOf(file);
    try {
      long size = Files.size(file);
      if (size > MOST_BYTES) {
        throw RulebookProblem.TOO_LARGE.with(name, size, MOST_BYTES);
      }
      return of(name, Files.readString(file));
    } catch (NoSuchFileException _) {
      throw RulebookProblem.UNREADABLE.with(name, "there is no such file");
    } catch (CharacterCodingException _) {
      throw RulebookProblem.UNREADABLE.with(name, "it is not in UTF-8");
    } catch (IOException failure) {
      throw RulebookProblem.UNREADABLE.with(name, String.valueOf(failure.getMessage()));
    }
  }

  /**
   * Takes a text.
   *
   * @param name what messages call it
   * @throws rodwork.geometry.Refusal if it cannot be used; names the line
   */
  public static Rulebook of(String name, String text) {
    YamlTree tree = YamlTree.of(name, text);
    RulebookSchema.check(name, tree);
    return new RulebookReader(name, Entry.root(name, tree)).read(text, sha256(text));
  }

  /** All that the judgement of abutments rests on. */
  public AbutmentRules abutments() {
    return new AbutmentRules(
        clasps,
        planes,
        preparation.cuts(),
        standOff,
        new ArmStock(materials, sections, arms),
        abutmentLimits);
  }

  /** All that the list of mouth preparation rests on. */
  public Preparer.Rules cuts() {
    return new Preparer.Rules(
        preparation, planes, abutmentLimits.clearOfMargin(), survey.scanAccuracy());
  }

  /** A conflict of sources by its id; empty where the file does not tell it. */
  public Optional<Conflict> conflict(String id) {
    return conflicts.stream().filter(c -> c.id().equals(id)).findFirst();
  }

  /** A material by its id. */
  public ArmMaterial material(String id) {
    return materials.stream()
        .filter(m -> m.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no material " + id));
  }

  /** Sections of arms of one making; the schema wants them of all. */
  public ArmSections sections(ArmMaterial.Making making) {
    ArmSections found = sections.get(making);
    if (found == null) {
      throw new IllegalArgumentException("no sections for " + making);
    }
    return found;
  }

  private static String sha256(String text) {
    try {
      return HexFormat.of()
          .formatHex(
              MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException(impossible);
    }
  }
}
