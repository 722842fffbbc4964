package rodwork.casework.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rodwork.anatomy.space.SpaceRules;
import rodwork.design.arm.ArmMaterial;
import rodwork.design.arm.Section;
import rodwork.geometry.Refusal;
import rodwork.survey.SurveyRules;
import rodwork.survey.path.PathRules;
import rodwork.survey.plane.PlaneRules;
import rodwork.survey.seating.SeatingRules;
import rodwork.survey.tripod.TripodRules;

class RulebookTest {
  private static final Rulebook SHIPPED = Rulebook.shipped();

  @Test
  void theShippedOneFillsEveryRecord() {
    assertThat(SHIPPED.title()).isEqualTo("Rodwork's own rulebook");
    assertThat(SHIPPED.hash()).matches("[0-9a-f]{64}");
    assertThat(SHIPPED.clasps().families()).hasSize(16);
    assertThat(SHIPPED.conflicts()).hasSizeGreaterThanOrEqualTo(31);
    assertThat(SHIPPED.arms().all()).allSatisfy(t -> assertThat(t.source()).isNotBlank());
    ArmMaterial cast = SHIPPED.material("cobalt-chromium-cast");
    assertThat(cast.proofMpa().from()).isEqualTo(470);
    assertThat(SHIPPED.sections(ArmMaterial.Making.CAST).origin())
        .isEqualTo(new Section.HalfRound(2, 1));
    assertThat(SHIPPED.sections()).hasSize(ArmMaterial.Making.values().length);
  }

  /** The constants that the modules still carry must not drift from the rulebook. */
  @Test
  void theConstantsOfTheSurveyAreThoseOfTheRulebook() {
    assertThat(values(SHIPPED.spaces().all())).isEqualTo(values(SpaceRules.SHIPPED.all()));
    assertThat(values(SHIPPED.survey().all())).isEqualTo(values(SurveyRules.SHIPPED.all()));
    assertThat(values(SHIPPED.tripod().all())).isEqualTo(values(TripodRules.SHIPPED.all()));
    assertThat(values(SHIPPED.planes().all())).isEqualTo(values(PlaneRules.SHIPPED.all()));
    assertThat(values(SHIPPED.path().all())).isEqualTo(values(PathRules.SHIPPED.all()));
    assertThat(values(SHIPPED.seatingKey().all())).isEqualTo(values(SeatingRules.SHIPPED.all()));
  }

  private static List<String> values(List<rodwork.rules.Threshold> all) {
    return all.stream()
        .map(t -> t.id() + " " + Math.round(t.value() * 1e6) + " " + t.unit())
        .toList();
  }

  @Test
  void oneChangedThresholdChangesThatAloneAndTheHash() {
    Rulebook changed = Rulebook.of("mine", edit("tilt-warn: {value: 10,", "tilt-warn: {value: 8,"));
    assertThat(changed.survey().tiltWarn().value()).isEqualTo(8);
    assertThat(changed.hash()).isNotEqualTo(SHIPPED.hash());
    List<String> now = values(changed.survey().all());
    List<String> before = values(SHIPPED.survey().all());
    assertThat(now.stream().filter(v -> !before.contains(v)).toList())
        .containsExactly("tilt-warn 8000000 degrees");
    assertThat(changed.clasps()).isEqualTo(SHIPPED.clasps());
    assertThat(changed.materials()).isEqualTo(SHIPPED.materials());
  }

  @Test
  void aSchoolPicksItsSideOfAConflict() {
    Rulebook changed = Rulebook.of("mine", edit("taken: half", "taken: three-quarters"));
    var wire =
        changed.clasps().families().stream()
            .filter(f -> f.id().equals("combination"))
            .findFirst()
            .orElseThrow();
    assertThat(wire.gauge().value()).isEqualTo(0.75);
    assertThat(wire.gauge().source()).contains("Ankara");
  }

  @Test
  void aRuleThatIsOffCanBeTurnedOn() {
    assertThat(clauses(SHIPPED)).doesNotContain("bar-stand-off-strict");
    Rulebook changed = Rulebook.of("mine", edit("otherwise: off", "otherwise: warns"));
    assertThat(clauses(changed)).contains("bar-stand-off-strict");
  }

  private static List<String> clauses(Rulebook book) {
    return book.clasps().families().stream()
        .flatMap(f -> f.clauses().stream())
        .map(c -> c.id())
        .distinct()
        .toList();
  }

  /** What is changed, and what the refusal must say beside the line of the change. */
  record Mistake(String code, String from, String to, String said) {}

  static List<Mistake> mistakes() {
    return List.of(
        new Mistake(
            "rulebook-field",
            "{value: 10, unit: degrees",
            "{value: ten, unit: degrees",
            "tilt-warn.value"),
        new Mistake(
            "rulebook-field",
            "undercut-cap: {value: 4, unit: mm",
            "undercut-cap: {value: 4, unit: cm",
            "mm"),
        new Mistake(
            "rulebook-field",
            "undercut-cap: {value: 4, unit: mm,",
            "undercut-cap: {unit: mm,",
            "value"),
        new Mistake(
            "rulebook-field",
            "standing: from memory, source: \"warn above 10 N\"",
            "standing: rumour, source: \"warn above 10 N\"",
            "clasp-pull-warn-above.standing"),
        new Mistake(
            "rulebook-threshold-unused",
            "tilt-warn: {value: 10,",
            "tilt-wam: {value: 10, unit: degrees, standing: own choice, source: x}\n    tilt-warn: {value: 10,",
            "tilt-wam"),
        new Mistake("rulebook-field", "taken: half", "taken: quarter", "quarter"),
        new Mistake(
            "rulebook-field",
            "decided-by: wire-undercut",
            "decided-by: wire-undercat",
            "wire-undercat"),
        new Mistake(
            "rulebook-field",
            "wants: {total-stand-off-6: {at-most: bar-stand-off-most}}",
            "wants: {total-stand-off-7: {at-most: bar-stand-off-most}}",
            "total-stand-off-7"),
        new Mistake(
            "rulebook-field",
            "wants: {tooth-kind: {is: molar}}",
            "wants: {tooth-kind: {is: wisdom}}",
            "premolar"),
        new Mistake(
            "rulebook-field",
            "wants: {vestibule-depth: {at-least: bar-vestibule-least}}",
            "wants: {vestibule-depth: {at-least: clasp-pull-good-to}}",
            "N"),
        new Mistake("rulebook-field", "material: pgp-wire", "material: string", "string"),
        new Mistake("rulebook-field", "uses: [tip, ring, arms]", "uses: [tip, rink, arms]", "rink"),
        new Mistake(
            "rulebook-field",
            "by: arm-stress-otherwise, at-most: arm-stress-share",
            "by: arm-stress-otherwise, at-most: clasp-pull-good-to",
            "not in 1"),
        new Mistake(
            "rulebook-field",
            "first: [combination, i-bar, rpi]",
            "first: [combination, e-bar, rpi]",
            "e-bar"),
        new Mistake("rulebook-field", "modulus: [170, 218]", "modulus: [218, 170]", "218"),
        new Mistake("rulebook-field", "otherwise: off", "otherwise: perhaps", "otherwise"),
        new Mistake(
            "rulebook-field",
            "title: Rodwork's own rulebook",
            "title: Mine\nsubtitle: too",
            "subtitle"),
        new Mistake(
            "rulebook-no-yaml", "tilt-warn: {value: 10,", "tilt-warn: {value: 10,, ", "line"),
        new Mistake(
            "rulebook-no-yaml",
            "tilt-warn: {value: 10,",
            "tilt-warn: {value: 10, value: 11,",
            "value"));
  }

  @ParameterizedTest
  @MethodSource("mistakes")
  void mistakesAreRefusedWithTheirLine(Mistake mistake) {
    String text = edit(mistake.from, mistake.to);
    Refusal refusal = refusal(text);
    assertThat(refusal.code()).isEqualTo(mistake.code);
    assertThat(refusal.getMessage()).contains("mine").contains(mistake.said);
    int at = SHIPPED.text().indexOf(mistake.from);
    long line = SHIPPED.text().substring(0, at).lines().count();
    String[] words = refusal.getMessage().split("line ", -1);
    long told = Long.parseLong(words[1].replaceAll("^(\\d+).*(?s:.)*", "$1"));
    assertThat(told).as(refusal.getMessage()).isBetween(line - 1, line + 2);
  }

  @Test
  void aMissingThresholdIsNamed() {
    String text = SHIPPED.text().replaceAll("    tilt-warn: .*\n.*\n", "");
    Refusal refusal = refusal(text);
    assertThat(refusal.code()).isEqualTo("rulebook-threshold-missing");
    assertThat(refusal.getMessage()).contains("tilt-warn", "degrees");
  }

  @Test
  void whateverIsGivenItNeverCrashes(@TempDir Path folder) throws IOException {
    for (String text :
        List.of(
            "",
            "\n",
            "a",
            "- 1",
            "{",
            "&a [*a]",
            "a: &x 1\nb: *x",
            "\u0000",
            "--- 1\n--- 2",
            "[".repeat(500))) {
      assertThat(refusal(text).code()).startsWith("rulebook-");
    }
    Path latin = Files.write(folder.resolve("latin.yaml"), new byte[] {'a', ':', ' ', (byte) 0xE9});
    assertThat(catchThrowableOfType(Refusal.class, () -> Rulebook.read(latin)).getMessage())
        .contains("UTF-8");
    Path none = folder.resolve("none.yaml");
    assertThat(catchThrowableOfType(Refusal.class, () -> Rulebook.read(none)).getMessage())
        .contains("no such file");
    assertThat(catchThrowableOfType(Refusal.class, () -> Rulebook.read(folder)).code())
        .isEqualTo("rulebook-unreadable");
  }

  private static Refusal refusal(String text) {
    return catchThrowableOfType(Refusal.class, () -> Rulebook.of("mine", text));
  }

  private static String edit(String from, String to) {
    assertThat(SHIPPED.text()).contains(from);
    return SHIPPED
        .text()
        .replaceFirst(
            java.util.regex.Pattern.quote(from), java.util.regex.Matcher.quoteReplacement(to));
  }
}
