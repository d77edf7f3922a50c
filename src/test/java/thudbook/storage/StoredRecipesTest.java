package thudbook.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static thudbook.storage.schema.Tables.REVISION;
import static thudbook.storage.schema.Tables.THING;
import static thudbook.storage.schema.Tables.THING_SLUG;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jooq.DSLContext;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.access.Author;
import thudbook.access.Hands;
import thudbook.changes.Kept;
import thudbook.documents.Documents;
import thudbook.envelopes.Drive;
import thudbook.equipment.Gate;
import thudbook.library.Facet;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore.Use;
import thudbook.recipes.StageEntry;

/** Scenario: recipes and gates go into a real file and come back as they were written. */
class StoredRecipesTest {
  private static final Gate TWIN = Written.gate("keeper-twin", "Keeper twin");
  private static final Gate DOOR = Written.gate("storm-door", "Élan door");
  private static final Recipe KICK =
      Written.recipe("tide-kick", "Tide kick", List.of("dry", "kick"), "keeper-twin");
  private static final Recipe BARE =
      Written.recipe("bare", "Only a title", List.of(), null, null, List.of());

  @TempDir Path folder;
  private Database database;

  @BeforeEach
  void open() {
    database = Database.open(folder);
    add(List.of(TWIN, DOOR), List.of(KICK, BARE));
  }

  @AfterEach
  void close() {
    database.close();
  }

  private void add(List<Gate> gates, List<Recipe> recipes) {
    Written.add(
        database,
        gates.stream().map(Written::added).toList(),
        recipes.stream().map(recipe -> Written.added(recipe, null)).toList(),
        Author.SAMPLES);
  }

  @Test
  void everyDocumentReadsBackEqual() {
    for (Recipe recipe : List.of(KICK, BARE)) {
      Kept<Recipe> stored = database.recipes().find(recipe.slug()).orElseThrow();
      assertThat(stored.thing()).isEqualTo(recipe);
      assertThat(stored.document()).isEqualTo(Documents.write(recipe));
      assertThat(stored.version()).isEqualTo(1);
      assertThat(stored.origin().author()).isEqualTo(Author.SAMPLES);
      assertThat(stored.origin().createdAt()).isEqualTo(Written.NOON);
      assertThat(stored.origin().changedAt()).isEqualTo(Written.NOON);
    }
    for (Gate gate : List.of(TWIN, DOOR)) {
      Kept<Gate> stored = database.gates().find(gate.slug()).orElseThrow();
      assertThat(stored.thing()).isEqualTo(gate);
      assertThat(stored.document()).isEqualTo(Documents.write(gate));
    }
  }

  @Test
  void gatesAreListedByTitleWithoutAccents() {
    assertThat(database.gates().all())
        .extracting(stored -> stored.thing().title())
        .containsExactly("Élan door", "Keeper twin");
  }

  @Test
  void anIdFindsWhatItsSlugFinds() {
    String id = KICK.id().toString();
    assertThat(database.recipes().find(id)).isEqualTo(database.recipes().find("tide-kick"));
    assertThat(database.recipes().find(id.toUpperCase(Locale.ROOT))).isPresent();
    assertThat(database.gates().find(TWIN.id().toString()))
        .isEqualTo(database.gates().find("keeper-twin"));
    assertThat(database.recipes().find("keeper-twin")).isEmpty();
    assertThat(database.gates().find("tide-kick")).isEmpty();
  }

  private static int rename(DSLContext db, String noun, String from, String to) {
    long thing =
        db.select(THING.ID)
            .from(THING)
            .where(THING.NOUN.eq(noun), THING.SLUG.eq(from))
            .fetchSingle()
            .value1();
    db.insertInto(THING_SLUG)
        .set(THING_SLUG.NOUN, noun)
        .set(THING_SLUG.SLUG, to)
        .set(THING_SLUG.THING, thing)
        .execute();
    return db.update(THING).set(THING.SLUG, to).where(THING.ID.eq(thing)).execute();
  }

  @Test
  void anOldSlugStillAnswers() {
    database
        .connections()
        .<Integer>write(
            db -> {
              rename(db, "recipe", "tide-kick", "ebb-kick");
              return rename(db, "gate", "keeper-twin", "twin");
            });
    assertThat(database.recipes().find("tide-kick"))
        .isPresent()
        .isEqualTo(database.recipes().find("ebb-kick"));
    assertThat(database.gates().find("keeper-twin"))
        .isPresent()
        .isEqualTo(database.gates().find("twin"));
    assertThat(database.recipes().slugTaken("tide-kick")).isTrue();
    assertThat(database.recipes().using(TWIN.id()))
        .containsExactly(new Use("ebb-kick", "Tide kick", List.of("quick")));
  }

  @Test
  void everyIdAndSlugThatIsTakenIsToldAndNothingIsKept() {
    Recipe fresh = Written.recipe("fresh", "Fresh", List.of("new tag"), "keeper-twin");
    assertThatThrownBy(() -> add(List.of(TWIN), List.of(fresh, KICK, fresh)))
        .isInstanceOfSatisfying(
            Refusal.class,
            refusal -> {
              assertThat(refusal.kind()).isEqualTo(Refusal.Kind.CONFLICT);
              assertThat(refusal.faults())
                  .extracting(Fault::message)
                  .containsExactly(
                      "The id " + TWIN.id() + " is taken by another gate.",
                      "The slug keeper-twin is taken by another gate.",
                      "The id " + KICK.id() + " is taken by another recipe.",
                      "The slug tide-kick is taken by another recipe.",
                      "The id " + fresh.id() + " is taken by another recipe.",
                      "The slug fresh is taken by another recipe.");
            });
    assertThat(database.recipes().slugTaken("fresh")).isFalse();
    assertThat(database.library().catalogue().labels(Facet.TAG).values())
        .containsExactlyInAnyOrder("dry", "kick");
  }

  @Test
  void theRecipesOfAGateAreToldByTitleWithTheirChannelsInOrder() {
    Recipe both =
        Written.recipe(
            "both",
            "Anvil on both",
            List.of(),
            KICK.source(),
            KICK.envelope(),
            Stream.of("slow", "quick", "slow")
                .map(channel -> new StageEntry("keeper-twin", channel, Drive.UNITY, null))
                .toList());
    Recipe byId = Written.recipe("by-id", "Zinc, by id", List.of(), TWIN.id().toString());
    add(List.of(), List.of(both, byId));
    assertThat(database.recipes().using(TWIN.id()))
        .containsExactly(
            new Use("both", "Anvil on both", List.of("slow", "quick")),
            new Use("tide-kick", "Tide kick", List.of("quick")),
            new Use("by-id", "Zinc, by id", List.of("quick")));
    assertThat(database.recipes().using(DOOR.id())).isEmpty();
  }

  @Test
  void aRevisionKnowsTheHashOfItsTextAndOfTheOneBefore() {
    Recipe renamed = KICK.withTags(List.of("other"));
    Written.acts(database, () -> Written.NOON, () -> {})
        .keeper(Documents.RECIPE)
        .change(KICK.id(), 1, renamed, Hands.OWNER, "other tags");
    var revisions =
        database
            .connections()
            .read(
                db ->
                    db.select(REVISION.SHA256, REVISION.PARENT)
                        .from(REVISION)
                        .join(THING)
                        .on(THING.ID.eq(REVISION.THING))
                        .where(THING.SLUG.eq("tide-kick"))
                        .orderBy(REVISION.NUMBER)
                        .fetch());
    String first = StoredText.sha256(Documents.write(KICK));
    assertThat(revisions.getValues(REVISION.SHA256))
        .containsExactly(first, StoredText.sha256(Documents.write(renamed)));
    assertThat(revisions.getValues(REVISION.PARENT)).containsExactly(null, first);
    // Reference: SHA-256 of the three bytes "abc", as sha256sum and Python's hashlib give it (the
    // example of FIPS 180-2, appendix B.1; its place from memory).
    assertThat(StoredText.sha256("abc"))
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }
}
