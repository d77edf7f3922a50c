package thudbook.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_SLUG;
import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_REVISION;
import static thudbook.storage.schema.Tables.RECIPE_SLUG;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.access.Author;
import thudbook.documents.Documents;
import thudbook.envelopes.Drive;
import thudbook.equipment.Gate;
import thudbook.equipment.GateStore;
import thudbook.library.Facet;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
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
      RecipeStore.Stored stored = database.recipes().find(recipe.slug()).orElseThrow();
      assertThat(stored.recipe()).isEqualTo(recipe);
      assertThat(stored.document()).isEqualTo(Documents.write(recipe));
      assertThat(stored.version()).isEqualTo(1);
      assertThat(stored.author()).isEqualTo(Author.SAMPLES);
      assertThat(stored.createdAt()).isEqualTo(Written.NOON);
      assertThat(stored.changedAt()).isEqualTo(Written.NOON);
    }
    for (Gate gate : List.of(TWIN, DOOR)) {
      GateStore.Stored stored = database.gates().find(gate.slug()).orElseThrow();
      assertThat(stored.gate()).isEqualTo(gate);
      assertThat(stored.document()).isEqualTo(Documents.write(gate));
    }
  }

  @Test
  void gatesAreListedByTitleWithoutAccents() {
    assertThat(database.gates().all())
        .extracting(stored -> stored.gate().title())
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

  @Test
  void anOldSlugStillAnswers() {
    database
        .connections()
        .<Integer>write(
            db -> {
              long recipe =
                  db.select(RECIPE.ID)
                      .from(RECIPE)
                      .where(RECIPE.SLUG.eq("tide-kick"))
                      .fetchSingle()
                      .value1();
              long gate =
                  db.select(GATE.ID)
                      .from(GATE)
                      .where(GATE.SLUG.eq("keeper-twin"))
                      .fetchSingle()
                      .value1();
              db.insertInto(RECIPE_SLUG)
                  .set(RECIPE_SLUG.SLUG, "ebb-kick")
                  .set(RECIPE_SLUG.RECIPE, recipe)
                  .execute();
              db.insertInto(GATE_SLUG)
                  .set(GATE_SLUG.SLUG, "twin")
                  .set(GATE_SLUG.GATE, gate)
                  .execute();
              db.update(GATE).set(GATE.SLUG, "twin").where(GATE.ID.eq(gate)).execute();
              return db.update(RECIPE)
                  .set(RECIPE.SLUG, "ebb-kick")
                  .where(RECIPE.ID.eq(recipe))
                  .execute();
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
  void aRevisionKnowsTheHashOfItsTextAndItsTags() {
    var revision =
        database
            .connections()
            .read(
                db ->
                    db.select(RECIPE_REVISION.SHA256, RECIPE_REVISION.TAG_IDS)
                        .from(RECIPE_REVISION)
                        .join(RECIPE)
                        .on(RECIPE.ID.eq(RECIPE_REVISION.RECIPE))
                        .where(RECIPE.SLUG.eq("tide-kick"))
                        .fetchSingle());
    assertThat(revision.value1()).isEqualTo(StoredText.sha256(Documents.write(KICK)));
    assertThat(revision.value2()).isEqualTo("[1, 2]");
    // Reference: SHA-256 of the three bytes "abc", as sha256sum and Python's hashlib give it (the
    // example of FIPS 180-2, appendix B.1; its place from memory).
    assertThat(StoredText.sha256("abc"))
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }
}
