package rodwork.app;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The chain of docs/architecture.md: a module uses only those before it. */
class ModuleChainTest {
  private static final String BASE = "rodwork.";

  /** What each module may use of the others; {@code app} may use all. */
  private static final Map<String, List<String>> MAY_USE = chain();

  private static Map<String, List<String>> chain() {
    Map<String, List<String>> chain = new LinkedHashMap<>();
    chain.put("geometry", List.of());
    chain.put("rules", List.of());
    chain.put("anatomy", List.of("geometry", "rules"));
    chain.put("survey", List.of("geometry", "rules", "anatomy"));
    chain.put("design", List.of("geometry", "rules", "anatomy", "survey"));
    chain.put("casework", List.of("geometry", "rules", "anatomy", "survey", "design"));
    chain.put("demo", List.of("geometry", "rules", "anatomy"));
    chain.put(
        "app", List.of("geometry", "rules", "anatomy", "survey", "design", "casework", "demo"));
    return chain;
  }

  private static final JavaClasses ALL =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("rodwork");

  @Test
  void everyModuleIsInTheChainAndHasClasses() {
    assertThat(ALL.stream().map(ModuleChainTest::moduleOf).collect(Collectors.toSet()))
        .containsExactlyInAnyOrderElementsOf(MAY_USE.keySet());
  }

  @Test
  void aModuleUsesOnlyThoseBeforeIt() {
    MAY_USE.forEach(
        (module, allowed) -> {
          String[] forbidden =
              MAY_USE.keySet().stream()
                  .filter(other -> !other.equals(module) && !allowed.contains(other))
                  .map(other -> BASE + other + "..")
                  .toArray(String[]::new);
          if (forbidden.length > 0) {
            noClasses()
                .that()
                .resideInAPackage(BASE + module + "..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(forbidden)
                .because(
                    "the chain runs geometry, rules, anatomy, survey, design, casework, app; demo beside")
                .check(ALL);
          }
        });
  }

  @Test
  void onlyTheAppKnowsScreensAndShells() {
    noClasses()
        .that()
        .resideOutsideOfPackage(BASE + "app..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("io.javalin..", "picocli..", "org.eclipse.jetty..", "org.slf4j..")
        .because("the whole chain is a pure function that can be tested without a server")
        .check(ALL);
  }

  @Test
  void commandsAndServerMeetInOperationsOnly() {
    noClasses()
        .that()
        .resideInAPackage(BASE + "app.server..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage(BASE + "app.command..")
        .check(ALL);
    classes()
        .that()
        .resideInAnyPackage(BASE + "app.operation..", BASE + "app.picture..")
        .should()
        .onlyBeAccessed()
        .byAnyPackage(BASE + "app..")
        .check(ALL);
  }

  @Test
  void everyPackageSaysWhatItIs() {
    assertThat(
            packages()
                .filter(p -> p.tryGetPackageInfo().isEmpty())
                .map(JavaPackage::getName)
                .toList())
        .as("packages without a package-info")
        .isEmpty();
  }

  private static Stream<JavaPackage> packages() {
    return ALL.stream().map(JavaClass::getPackage).distinct();
  }

  private static String moduleOf(JavaClass type) {
    return type.getPackageName().split("\\.", -1)[1];
  }
}
