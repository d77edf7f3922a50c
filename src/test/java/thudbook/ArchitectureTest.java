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

import com.tngtech.archunit.base.DescribedPredicate;
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
import thudbook.access.Author;
import thudbook.access.Visitor;
import thudbook.changes.Kept;
import thudbook.predictions.Predictor;

/**
 * The rooms and what they may use. Property tests; plain test methods, since not every test runner
 * runs rules that are fields.
 */
class ArchitectureTest {
  private static final String ROOT = "thudbook";
  private static final String PAGES_ROOT = ROOT + ".pages";
  private static final String TEMPLATES = PAGES_ROOT + ".templates";

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages(ROOT);

  private static final List<String> CORE =
      List.of("quantities", "sources", "envelopes", "gates", "predictions");

  /** In this order: a room may use only rooms above it. */
  private static final Map<String, List<String>> MAY_USE = mayUse();

  /** The rooms within {@code pages}, in the same order. {@code Pages} alone stands above them. */
  private static final Map<String, List<String>> PAGES = pages();

  /** The packages of rooms that have more than one, and what each may use of its room. */
  private static final Map<String, List<String>> WITHIN =
      Map.of(
          "documents.tree", List.of(),
          "documents", List.of("documents.tree"),
          "documents.exchange", List.of("documents", "documents.tree"),
          "library", List.of(),
          "library.typed", List.of("library"),
          "storage.keeping", List.of(),
          "storage", List.of("storage.keeping", "storage.schema"));

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
    rooms.put("patching", with(CORE, "changes", "equipment", "recipes"));
    rooms.put(
        "library",
        List.of("quantities", "gates", "predictions", "equipment", "recipes", "access", "changes"));
    rooms.put("sessions", with(CORE, "equipment", "recipes", "library", "access", "changes"));
    rooms.put("photos", List.of("quantities"));
    rooms.put("documents", nouns);
    rooms.put("wording", with(CORE, "changes", "equipment", "recipes", "library", "sessions"));
    rooms.put("drawings", List.of("quantities"));
    rooms.put("plots", with(CORE, "equipment", "wording", "drawings"));
    rooms.put("notebook", with(nouns, "documents", "photos"));
    rooms.put("storage", with(nouns, "documents", "photos", "notebook"));
    rooms.put("web", List.of("quantities", "access"));
    rooms.put("api", with(nouns, "documents", "photos", "notebook", "web"));
    rooms.put(
        "pages",
        with(
            nouns,
            "patching",
            "documents",
            "photos",
            "notebook",
            "wording",
            "drawings",
            "plots",
            "web"));
    rooms.put("settings", List.of("quantities"));
    rooms.put("commands", with(nouns, "documents", "wording", "storage", "api", "settings"));
    return rooms;
  }

  private static Map<String, List<String>> pages() {
    Map<String, List<String>> rooms = new LinkedHashMap<>();
    rooms.put("frame", List.of());
    rooms.put("help", List.of("frame"));
    rooms.put("reading", List.of("frame"));
    rooms.put("history", List.of("frame", "reading"));
    rooms.put("finding", List.of("frame", "reading"));
    rooms.put("writing", List.of("frame", "reading"));
    rooms.put("rack", List.of("frame", "history"));
    rooms.put("sessions", List.of("frame", "reading"));
    rooms.put("sharing", List.of("frame"));
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

  static Stream<Arguments> roomsOfPages() {
    return PAGES.entrySet().stream().map(room -> arguments(room.getKey(), room.getValue()));
  }

  @Test
  void everyRoomIsInTheTableAndEveryRoomOfTheTableExists() {
    assertThat(rooms(ROOT)).isEqualTo(new TreeSet<>(MAY_USE.keySet()));
  }

  @Test
  void everyRoomOfPagesIsInItsTableAndSoAreItsTemplates() {
    Set<String> expected = new TreeSet<>(PAGES.keySet());
    assertThat(rooms(TEMPLATES)).isEqualTo(expected);
    expected.add("templates");
    assertThat(rooms(PAGES_ROOT)).isEqualTo(expected);
  }

  @Test
  void nothingButWhatJoinsTheRoomsStandsAboveThem() {
    assertThat(
            CLASSES.stream()
                .filter(type -> type.getPackageName().equals(PAGES_ROOT))
                .map(JavaClass::getSimpleName)
                .filter(name -> !name.equals("package-info")))
        .containsExactly("Pages");
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

  /** Templates hold to the arrows of the room whose name their folder has. */
  @ParameterizedTest
  @MethodSource("roomsOfPages")
  void aRoomOfPagesUsesOnlyWhatItMay(String room, List<String> allowed) {
    String[] others =
        Stream.concat(
                Stream.of(PAGES_ROOT),
                PAGES.keySet().stream()
                    .filter(other -> !other.equals(room) && !allowed.contains(other))
                    .flatMap(ArchitectureTest::roomAndItsTemplates))
            .toArray(String[]::new);
    noClasses()
        .that(resideInAnyPackage(roomAndItsTemplates(room).toArray(String[]::new)))
        .should()
        .dependOnClassesThat(resideInAnyPackage(others))
        .check(CLASSES);
  }

  static Stream<Arguments> packagesWithin() {
    return WITHIN.entrySet().stream().map(each -> arguments(each.getKey(), each.getValue()));
  }

  @Test
  void everyPackageOfARoomWithSeveralIsInTheirTable() {
    for (String room : List.of("documents", "library", "storage")) {
      Set<String> expected = new TreeSet<>();
      WITHIN.keySet().stream()
          .filter(name -> name.startsWith(room + "."))
          .forEach(name -> expected.add(name.substring(room.length() + 1)));
      if (room.equals("storage")) {
        expected.add("schema");
      }
      assertThat(rooms(ROOT + "." + room)).as(room).isEqualTo(expected);
    }
  }

  @ParameterizedTest
  @MethodSource("packagesWithin")
  void aPackageUsesOnlyWhatItMayOfItsRoom(String name, List<String> allowed) {
    String room = name.split("\\.", -1)[0];
    String[] others =
        Stream.concat(WITHIN.keySet().stream(), Stream.of("storage.schema"))
            .filter(other -> other.equals(room) || other.startsWith(room + "."))
            .filter(other -> !other.equals(name) && !allowed.contains(other))
            .map(other -> ROOT + "." + other)
            .toArray(String[]::new);
    noClasses()
        .that()
        .resideInAPackage(ROOT + "." + name)
        .should()
        .dependOnClassesThat(resideInAnyPackage(others))
        .check(CLASSES);
  }

  /** The tree of a document, and the keeping of a file, know no noun. */
  @Test
  void treeAndKeepingKnowNoNoun() {
    for (String name : List.of("documents.tree", "storage.keeping")) {
      noClasses()
          .that()
          .resideInAPackage(ROOT + "." + name)
          .should()
          .dependOnClassesThat(
              resideInAPackage(ROOT + "..")
                  .and(not(resideInAnyPackage(ROOT + ".quantities", ROOT + "." + name))))
          .check(CLASSES);
    }
  }

  private static Stream<String> roomAndItsTemplates(String room) {
    return Stream.of(PAGES_ROOT + "." + room + "..", TEMPLATES + "." + room + "..");
  }

  /** The generated schema goes in circles by itself. */
  @Test
  void noCyclesBetweenAnyTwoPackages() {
    DescribedPredicate<JavaClass> schema = resideInAPackage(ROOT + ".storage.schema..");
    slices()
        .matching(ROOT + ".(**)")
        .should()
        .beFreeOfCycles()
        .ignoreDependency(schema, schema)
        .check(CLASSES);
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

  /** Answers hear through {@code Listening}, which predicts each sound once. */
  @Test
  void answersPredictThroughListening() {
    noClasses()
        .that(
            not(
                resideInAnyPackage(
                    packages(List.of("predictions", "recipes", "patching", "storage")))))
        .and(
            not(
                // What turns knobs, compares channels, keeps shapes, or is sent a sound.
                nameMatching(
                    ".*\\.(Predict|PredictionRoute|DialTolerance|LevelsPlot\\$Line|ShapePlot\\$Earlier)")))
        .should()
        .dependOnClassesThat(type(Predictor.class))
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
                    ROOT,
                    ROOT + ".web",
                    ROOT + ".api",
                    ROOT + ".pages..",
                    ROOT + ".commands",
                    ROOT + ".documents..")))
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

  /** Who is there comes with a request or a command, and is handed down. */
  @Test
  void nobodySaysWhoIsThereButWhereTheyComeIn() {
    noClasses()
        .that(not(resideInAnyPackage(ROOT + ".access", ROOT + ".web", ROOT + ".commands")))
        .should()
        .accessTargetWhere(
            target(owner(type(Visitor.class))).and(target(nameMatching("alone|<init>"))))
        .check(CLASSES);
  }

  /** Names of authors come from visitors or are read where they were kept; all others are new. */
  @Test
  void noAuthorIsKnownByNameButTheHandThatLoadsSamples() {
    noClasses()
        .that(not(resideInAnyPackage(ROOT, ROOT + ".access")))
        .should()
        .accessField(Author.class, "SAMPLES")
        .check(CLASSES);
    noClasses()
        .that(not(resideInAnyPackage(ROOT + ".access", ROOT + ".storage")))
        .and(not(type(Kept.class)))
        .should()
        .accessTargetWhere(target(owner(type(Author.class))).and(target(nameMatching("<init>"))))
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

  /** The names of the packages right below one. */
  private static Set<String> rooms(String above) {
    String begin = above + ".";
    return CLASSES.stream()
        .map(JavaClass::getPackageName)
        .filter(name -> name.startsWith(begin))
        .map(name -> name.substring(begin.length()).split("\\.", 2)[0])
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static String[] packages(List<String> rooms) {
    return rooms.stream().map(room -> ROOT + "." + room + "..").toArray(String[]::new);
  }
}
