package thudbook;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.syntax.elements.GivenClassesConjunction;
import com.tngtech.archunit.library.GeneralCodingRules;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.random.RandomGenerator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The rooms and what they may use. Property tests; plain test methods, since not every test runner
 * runs rules that are fields.
 */
class ArchitectureTest {
  private static final String ROOT = "thudbook";

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages(ROOT);

  private static final List<String> CORE =
      List.of("quantities", "sources", "envelopes", "gates", "predictions");

  /** In this order: a room may use only rooms above it. */
  private static final Map<String, List<String>> MAY_USE = mayUse();

  private static Map<String, List<String>> mayUse() {
    List<String> nouns =
        with(CORE, "access", "changes", "equipment", "recipes", "library", "sessions");
    Map<String, List<String>> rooms = new LinkedHashMap<>();
    rooms.put("quantities", List.of());
    rooms.put("sources", List.of("quantities"));
    rooms.put("envelopes", List.of("quantities"));
    rooms.put("gates", List.of("quantities", "envelopes"));
    rooms.put("predictions", List.of("quantities", "sources", "envelopes", "gates"));
    rooms.put("access", List.of());
    rooms.put("changes", List.of("quantities", "access"));
    rooms.put("equipment", List.of("quantities", "gates", "access", "changes"));
    rooms.put("recipes", with(CORE, "equipment", "access", "changes"));
    rooms.put(
        "library",
        List.of("quantities", "gates", "predictions", "equipment", "recipes", "access", "changes"));
    rooms.put("sessions", with(CORE, "equipment", "recipes", "library", "access", "changes"));
    rooms.put("photos", List.of("quantities"));
    rooms.put("documents", nouns);
    rooms.put("drawings", List.of("quantities"));
    rooms.put("notebook", with(nouns, "documents", "photos"));
    rooms.put("storage", with(nouns, "documents", "photos", "notebook"));
    rooms.put("web", List.of("quantities", "access"));
    rooms.put("api", with(nouns, "documents", "photos", "notebook", "drawings", "web"));
    rooms.put("pages", with(nouns, "documents", "photos", "notebook", "drawings", "web"));
    return rooms;
  }

  private static List<String> with(List<String> rooms, String... more) {
    List<String> all = new ArrayList<>(rooms);
    all.addAll(List.of(more));
    return List.copyOf(all);
  }

  static Stream<Arguments> rooms() {
    return MAY_USE.entrySet().stream().map(room -> arguments(room.getKey(), room.getValue()));
  }

  @Test
  void everyRoomIsInTheTableAndEveryRoomOfTheTableExists() {
    Set<String> found =
        CLASSES.stream()
            .map(ArchitectureTest::roomOf)
            .filter(room -> !room.isEmpty())
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(found).isEqualTo(new TreeSet<>(MAY_USE.keySet()));
  }

  @ParameterizedTest
  @MethodSource("rooms")
  void aRoomUsesOnlyWhatItMay(String room, List<String> allowed) {
    String[] others =
        Stream.concat(
                Stream.of(ROOT),
                MAY_USE.keySet().stream()
                    .filter(other -> !other.equals(room) && !allowed.contains(other))
                    .map(other -> ROOT + "." + other + ".."))
            .toArray(String[]::new);
    noClasses()
        .that()
        .resideInAPackage(ROOT + "." + room + "..")
        .should()
        .dependOnClassesThat(resideInAnyPackage(others))
        .check(CLASSES);
  }

  @Test
  void noCycles() {
    slices().matching(ROOT + ".(*)..").should().beFreeOfCycles().check(CLASSES);
  }

  @Test
  void theCoreIsPlainJavaAndOneNumericsLibrary() {
    noClasses()
        .that(resideInAnyPackage(packages(CORE)))
        .should()
        .dependOnClassesThat(
            not(
                resideInAnyPackage(
                    "java.lang..",
                    "java.util..",
                    "java.math..",
                    "java.time",
                    "org.hipparchus..",
                    "org.jspecify..",
                    ROOT + "..")))
        .check(CLASSES);
  }

  @Test
  void sqlOnlyInStorage() {
    noClasses()
        .that(not(resideInAPackage(ROOT + ".storage..")))
        .should()
        .dependOnClassesThat(
            resideInAnyPackage(
                "java.sql..",
                "javax.sql..",
                "org.jooq..",
                "org.flywaydb..",
                "com.zaxxer..",
                "org.sqlite.."))
        .check(CLASSES);
  }

  @Test
  void theGeneratedSchemaStaysInside() {
    noClasses()
        .that(not(resideInAPackage(ROOT + ".storage..")))
        .should()
        .dependOnClassesThat(resideInAPackage(ROOT + ".storage.schema.."))
        .check(CLASSES);
  }

  @Test
  void httpAndJsonLibrariesOnlyAtTheEdge() {
    noClasses()
        .that(
            not(
                resideInAnyPackage(
                    ROOT, ROOT + ".web", ROOT + ".api", ROOT + ".pages..", ROOT + ".documents")))
        .should()
        .dependOnClassesThat(
            resideInAnyPackage(
                "io.javalin..", "com.fasterxml..", "org.eclipse.jetty..", "jakarta.."))
        .check(CLASSES);
  }

  @Test
  void noClockOutsideTheRoot() {
    outsideTheRoot()
        .should()
        .callMethodWhere(
            target(owner(resideInAPackage("java.time..")))
                .and(target(nameMatching("now|system.*|tick.*"))))
        .orShould()
        .callMethodWhere(
            target(owner(type(System.class)))
                .and(target(nameMatching("currentTimeMillis|nanoTime"))))
        .check(CLASSES);
  }

  @Test
  void noRandomnessOutsideTheRoot() {
    outsideTheRoot()
        .should()
        .callMethod(Math.class, "random")
        .orShould()
        .callMethod(UUID.class, "randomUUID")
        .orShould()
        .dependOnClassesThat(assignableTo(RandomGenerator.class))
        .check(CLASSES);
  }

  @Test
  void noStandardStreamsOutsideTheRoot() {
    noClasses()
        .that(not(resideInAPackage(ROOT)))
        .should(GeneralCodingRules.ACCESS_STANDARD_STREAMS)
        .check(CLASSES);
  }

  private static GivenClassesConjunction outsideTheRoot() {
    return noClasses().that(not(resideInAPackage(ROOT)));
  }

  private static String roomOf(JavaClass type) {
    String[] parts = type.getPackageName().split("\\.", -1);
    return parts.length < 2 ? "" : parts[1];
  }

  private static String[] packages(List<String> rooms) {
    return rooms.stream().map(room -> ROOT + "." + room + "..").toArray(String[]::new);
  }
}
