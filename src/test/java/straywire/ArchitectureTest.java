package straywire;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.name;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.Location;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Which package may know which. */
class ArchitectureTest {
  /** A package knows itself and those before it. */
  private static final List<String> LAYERS =
      List.of(
          "format",
          "logic",
          "parts",
          "module",
          "electrical",
          "sim",
          "faults",
          "advice",
          "saying",
          "review",
          "observe",
          "symptoms",
          "ranking",
          "steps",
          "casebook",
          "figures",
          "sitting",
          "pages",
          "web",
          "cli");

  private static final JavaClasses PROGRAM_AND_TESTS =
      new ClassFileImporter().importPackages("straywire");

  private static final JavaClasses PROGRAM =
      PROGRAM_AND_TESTS.that(
          describe(
              "are no tests",
              c ->
                  c.getSource()
                      .filter(s -> Location.of(s.getUri()).contains("/test-classes/"))
                      .isEmpty()));

  /** Rule files become classes of their own when they are compiled; they count as advice. */
  private static final Set<String> COMPILED_RULES = Set.of("rules");

  @Test
  void everyPackageIsOneOfTheLayersAndTheLayersAreNotEmpty() {
    Set<String> packages = new TreeSet<>();
    for (JavaClass each : PROGRAM) {
      packages.add(layer(each));
    }
    packages.removeAll(COMPILED_RULES);
    assertThat(LAYERS).containsAll(packages);
    assertThat(packages).containsAll(LAYERS);
    assertThat(PROGRAM_AND_TESTS.size()).isGreaterThan(PROGRAM.size());
  }

  private static String layer(JavaClass of) {
    String[] names = of.getPackageName().split("\\.", -1);
    return names.length < 2 ? "" : names[1];
  }

  @Test
  void aPackageKnowsOnlyThoseLeftOfIt() {
    for (int i = 0; i < LAYERS.size() - 1; i++) {
      String[] above =
          LAYERS.subList(i + 1, LAYERS.size()).stream()
              .map(layer -> "straywire." + layer + "..")
              .toArray(String[]::new);
      noClasses()
          .that()
          .resideInAPackage("straywire." + LAYERS.get(i) + "..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(above)
          .allowEmptyShould(true)
          .check(PROGRAM);
    }
  }

  @Test
  void packagesFormNoCycles() {
    slices().matching("straywire.(*)..").should().beFreeOfCycles().check(PROGRAM);
  }

  @Test
  void onlyAdviceAndReviewKnowTheRuleEngine() {
    noClasses()
        .that(
            not(
                resideInAnyPackage(
                    "straywire.advice..", "straywire.review..", "straywire.rules..")))
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("org.drools..", "org.kie..")
        .check(PROGRAM);
    assertThat(PROGRAM)
        .as("something does know it, so that the rule above looks at something")
        .anyMatch(
            each ->
                each.getDirectDependenciesFromSelf().stream()
                    .anyMatch(d -> d.getTargetClass().getPackageName().startsWith("org.kie")));
  }

  @Test
  void onlyTheCommandLinePrints() {
    noClasses()
        .that(not(resideInAPackage("straywire.cli..")))
        .should()
        .accessTargetWhere(
            describe("System.out or System.err", access -> standardStream(access.getTarget())))
        .check(PROGRAM);
    noClasses()
        .that(not(resideInAPackage("straywire.cli..")))
        .should()
        .callMethod(Throwable.class, "printStackTrace")
        .check(PROGRAM);
  }

  private static boolean standardStream(AccessTarget target) {
    return target.getOwner().isEquivalentTo(System.class)
        && Set.of("out", "err").contains(target.getName());
  }

  @Test
  void nothingIsRandomWithoutASeedInProgramAndTests() {
    noClasses().should().callConstructor(Random.class).check(PROGRAM_AND_TESTS);
    noClasses().should().callMethod(Math.class, "random").check(PROGRAM_AND_TESTS);
    // What a browser must show to be served is the one thing that nobody may foresee.
    noClasses()
        .that(not(name("straywire.web.AccessToken")))
        .should()
        .dependOnClassesThat()
        .haveNameMatching(
            "java\\.util\\.concurrent\\.ThreadLocalRandom|java\\.security\\.SecureRandom")
        .check(PROGRAM_AND_TESTS);
    assertThat(PROGRAM_AND_TESTS)
        .as("something does draw at random, with a seed")
        .anyMatch(
            each ->
                each.getConstructorCallsFromSelf().stream()
                    .anyMatch(call -> call.getTargetOwner().isEquivalentTo(Random.class)));
  }
}
