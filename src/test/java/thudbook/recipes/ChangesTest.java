package thudbook.recipes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.access.Hands;
import thudbook.changes.Act;
import thudbook.changes.Change.Effect;
import thudbook.changes.Change.Kind;
import thudbook.changes.Changes;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.changes.Revision;
import thudbook.changes.Write;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.equipment.StudioChannel;
import thudbook.library.Facet;
import thudbook.library.Ordering;
import thudbook.library.Wanted;
import thudbook.predictions.Metric;
import thudbook.predictions.Predictor;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.storage.Database;
import thudbook.storage.Written;

/** Scenario: everything that is done to recipes and gates of a real file, and undoing it. */
class ChangesTest {
  private static final Gate TWIN = Written.gate("keeper-twin", "Keeper twin");
  private static final Recipe KICK =
      Written.recipe("tide-kick", "Tide kick", List.of("dry", "kick"), "keeper-twin");

  @TempDir Path folder;
  private final AtomicReference<Instant> now = new AtomicReference<>(Written.NOON);
  private final AtomicInteger wakings = new AtomicInteger();
  private Database database;
  private Keeper<Recipe> recipes;
  private Keeper<Gate> gates;
  private Changes changes;

  @BeforeEach
  void open() {
    database = Database.open(folder);
    recipes = Written.acts(database, now::get, wakings::incrementAndGet).keeper(Documents.RECIPE);
    gates = Written.acts(database, now::get, wakings::incrementAndGet).keeper(Documents.GATE);
    changes = Written.acts(database, now::get, wakings::incrementAndGet);
    changes.write(Written.writes(List.of(TWIN), List.of(KICK)), Hands.OWNER, "wrote the first two");
  }

  @AfterEach
  void close() {
    database.close();
  }

  @Test
  void aSaveMakesARevisionWithTimeAuthorAndWords() {
    now.set(Written.NOON.plusSeconds(60));
    recipes.change(KICK.id(), 1, renamed("Ebb kick"), Hands.OWNER, "changed the title");
    Kept<Recipe> stored = stored();
    assertThat(stored.version()).isEqualTo(2);
    assertThat(stored.revision()).isEqualTo(2);
    assertThat(stored.origin().createdAt()).isEqualTo(Written.NOON);
    assertThat(stored.origin().changedAt()).isEqualTo(Written.NOON.plusSeconds(60));
    List<Revision<Recipe>> revisions = database.recipes().revisions(KICK.id(), 0, 10);
    assertThat(revisions).extracting(Revision::number).containsExactly(2, 1);
    assertThat(revisions)
        .extracting(Revision::what)
        .containsExactly("changed the title", "wrote the first two");
    assertThat(revisions.get(1).thing()).isEqualTo(KICK);
    assertThat(database.recipes().revisions(KICK.id(), 2, 10)).containsExactly(revisions.get(1));
  }

  @Test
  void aTextThatIsTheSameMakesNoRevision() {
    long first = database.recipes().revision(KICK.id(), 1).orElseThrow().change();
    assertThat(recipes.change(KICK.id(), 1, KICK, Hands.OWNER, "nothing")).isEqualTo(first);
    assertThat(stored().version()).isEqualTo(1);
  }

  @Test
  void theSecondToSaveIsToldTheVersionAndWritesNothing() {
    recipes.change(KICK.id(), 1, renamed("One"), Hands.OWNER, "first");
    assertThatThrownBy(() -> recipes.change(KICK.id(), 1, renamed("Two"), Hands.OWNER, "second"))
        .isInstanceOfSatisfying(
            Refusal.class,
            refusal -> {
              assertThat(refusal.kind()).isEqualTo(Refusal.Kind.STALE);
              assertThat(refusal.faults()).extracting(Fault::expected).containsExactly("2");
            });
    assertThat(stored().thing().title()).isEqualTo("One");
    assertThat(changes.newest(10)).hasSize(2);
  }

  @Test
  void ofTwentySavesAtOnceExactlyOneWinsEachOfTwentyRounds() throws Exception {
    ExecutorService clients = Executors.newFixedThreadPool(20);
    try {
      for (int round = 1; round <= 20; round++) {
        long version = stored().version();
        CyclicBarrier together = new CyclicBarrier(20);
        List<Future<Boolean>> saves = new ArrayList<>();
        for (int client = 0; client < 20; client++) {
          Recipe mine = renamed("Round " + round + " of client " + client);
          Callable<Boolean> save =
              () -> {
                together.await();
                try {
                  recipes.change(KICK.id(), version, mine, Hands.OWNER, "mine");
                  return true;
                } catch (Refusal refusal) {
                  assertThat(refusal.kind()).isEqualTo(Refusal.Kind.STALE);
                  return false;
                }
              };
          saves.add(clients.submit(save));
        }
        int won = 0;
        for (Future<Boolean> save : saves) {
          won += save.get() ? 1 : 0;
        }
        assertThat(won).as("winners of round %d", round).isEqualTo(1);
        assertThat(stored().version()).isEqualTo(version + 1);
      }
    } finally {
      clients.shutdownNow();
    }
  }

  @Test
  void aRenamedSlugStillLeadsToItsRecipeAndToNoOther() {
    Recipe renamed = KICK.withSlug("ebb-kick");
    recipes.change(KICK.id(), 1, renamed, Hands.OWNER, "renamed");
    assertThat(database.recipes().find("tide-kick").orElseThrow().thing()).isEqualTo(renamed);
    Recipe thief = Written.recipe("thief", "Thief", List.of(), "keeper-twin").withSlug("tide-kick");
    assertThatThrownBy(() -> recipes.create(thief, Hands.OWNER, "thief"))
        .hasMessage("The slug tide-kick is taken by another recipe.");
    recipes.change(KICK.id(), 2, KICK, Hands.OWNER, "and back");
    assertThat(stored().thing().slug()).isEqualTo("tide-kick");
  }

  @Test
  void theAddressOfAPageOfOursIsNobodysSlug() {
    Recipe kept = Written.recipe("other", "New", List.of(), "keeper-twin").withSlug("new");
    assertThatThrownBy(() -> recipes.create(kept, Hands.OWNER, "new"))
        .hasMessage("The slug new leads to the page on which a new recipe is written.");
    assertThatThrownBy(() -> recipes.change(KICK.id(), 1, KICK.withSlug("new"), Hands.OWNER, "new"))
        .hasMessage("The slug new leads to the page on which a new recipe is written.");
    assertThatThrownBy(() -> gates.change(TWIN.id(), 1, TWIN.withSlug("new"), Hands.OWNER, "new"))
        .hasMessage("The slug new leads to the page on which a new gate is written.");
    assertThat(database.recipes().slugTaken("new")).isTrue();
    assertThat(database.gates().slugTaken("new")).isTrue();
  }

  @Test
  void tagsAndStagesFollowTheNewestRevision() {
    Recipe other = Written.recipe("tide-kick", "Tide kick", List.of("kick", "wet"), "storm-door");
    recipes.change(KICK.id(), 1, other, Hands.OWNER, "other tags and gate");
    assertThat(database.library().catalogue().labels(Facet.TAG).values())
        .containsExactlyInAnyOrder("kick", "wet");
    assertThat(database.recipes().using(TWIN.id())).isEmpty();
  }

  @Test
  void anEarlierRevisionComesBackAsANewOne() {
    recipes.change(KICK.id(), 1, renamed("Ebb kick"), Hands.OWNER, "title");
    recipes.restore(KICK.id(), 2, 1, Hands.OWNER);
    assertThat(stored().thing()).isEqualTo(KICK);
    assertThat(stored().revision()).isEqualTo(3);
    assertThatThrownBy(() -> recipes.restore(KICK.id(), 3, 9, Hands.OWNER))
        .hasMessage("There is no revision 9 of Tide kick.");
  }

  @Test
  void theBinTakesAndGivesBackAndUndoDoesTheOpposite() {
    long binned = recipes.bin(List.of(KICK.id()), Hands.OWNER);
    assertThat(database.library().catalogue().labels(Facet.TAG)).isEmpty();
    assertThat(stored().binnedAt()).isEqualTo(Written.NOON);
    assertThat(database.recipes().binned(10)).hasSize(1);
    assertThatThrownBy(() -> recipes.change(KICK.id(), 2, renamed("X"), Hands.OWNER, "x"))
        .hasMessage("Tide kick is in the bin: take it out first.");
    assertThatThrownBy(() -> recipes.bin(List.of(KICK.id()), Hands.OWNER))
        .hasMessage("Tide kick is in the bin already.");
    long undone = changes.undo(binned, Hands.OWNER);
    assertThat(stored().binnedAt()).isNull();
    assertThat(changes.find(binned).orElseThrow().undoneBy()).isEqualTo(undone);
    assertThatThrownBy(() -> changes.undo(binned, Hands.OWNER))
        .hasMessage("This change was undone already.");
    changes.undo(undone, Hands.OWNER);
    assertThat(stored().binnedAt()).isNotNull();
    recipes.unbin(List.of(KICK.id()), Hands.OWNER);
    assertThat(stored().binnedAt()).isNull();
  }

  @Test
  void binningManyIsAllOrNothing() {
    UUID nobody = new UUID(1, 2);
    assertThatThrownBy(() -> recipes.bin(List.of(KICK.id(), nobody), Hands.OWNER))
        .hasMessage("There is no recipe " + nobody + ".");
    assertThat(stored().binnedAt()).isNull();
  }

  @Test
  void undoingASaveBringsTheTextBeforeIfNothingCameSince() {
    long save = recipes.change(KICK.id(), 1, renamed("A"), Hands.OWNER, "a");
    long later = recipes.change(KICK.id(), 2, renamed("B"), Hands.OWNER, "b");
    assertThatThrownBy(() -> changes.undo(save, Hands.OWNER))
        .hasMessageStartingWith("B was changed or binned since");
    changes.undo(later, Hands.OWNER);
    assertThat(stored().thing().title()).isEqualTo("A");
    assertThat(changes.find(later).orElseThrow().effects())
        .containsExactly(new Effect("recipe", "tide-kick", "A", Kind.CHANGED, 3));
  }

  @Test
  void undoingAnImportThrowsAllOfItIntoTheBinWithItsGate() {
    Gate door = Written.gate("storm-door", "Storm door");
    Recipe knock = Written.recipe("knock", "Knock", List.of(), "storm-door");
    long added =
        changes.write(Written.writes(List.of(door), List.of(knock)), Hands.OWNER, "import");
    changes.undo(added, Hands.OWNER);
    assertThat(database.recipes().find("knock").orElseThrow().binnedAt()).isNotNull();
    assertThat(database.gates().find("storm-door").orElseThrow().binnedAt()).isNotNull();
    assertThat(database.gates().all()).hasSize(1);
  }

  @Test
  void aGateThatOthersUseByNowIsNotTakenFromThemByAnUndo() {
    Gate door = Written.gate("storm-door", "Storm door");
    long added = gates.create(door, Hands.OWNER, "a gate");
    recipes.create(Written.recipe("knock", "Knock", List.of(), "storm-door"), Hands.OWNER, "uses");
    assertThatThrownBy(() -> changes.undo(added, Hands.OWNER))
        .hasMessage("Knock uses the gate Storm door.");
    assertThat(database.gates().find("storm-door").orElseThrow().binnedAt()).isNull();
  }

  @Test
  void whatRecipesUseOfAGateStays() {
    assertThatThrownBy(() -> gates.bin(TWIN.id(), 1, Hands.OWNER))
        .isInstanceOfSatisfying(
            Refusal.class,
            refusal -> {
              assertThat(refusal.kind()).isEqualTo(Refusal.Kind.CONFLICT);
              assertThat(refusal.faults()).extracting(Fault::found).containsExactly("tide-kick");
            });
    Gate slowOnly = with(TWIN, TWIN.channels().subList(1, 2));
    assertThatThrownBy(() -> gates.change(TWIN.id(), 1, slowOnly, Hands.OWNER, "less"))
        .hasMessage("Tide kick uses the channel quick of Keeper twin.");
    Gate quickOnly = with(TWIN, TWIN.channels().subList(0, 1));
    gates.change(TWIN.id(), 1, quickOnly, Hands.OWNER, "less");
    recipes.bin(List.of(KICK.id()), Hands.OWNER);
    gates.bin(TWIN.id(), 2, Hands.OWNER);
    assertThat(database.gates().binned(100)).hasSize(1);
    assertThat(database.gates().all()).isEmpty();
    gates.unbin(TWIN.id(), Hands.OWNER);
    assertThat(database.gates().all()).hasSize(1);
  }

  @Test
  void aGateThatIsSavedMarksItsRecipesAndTellsWhatTheyWere() {
    double before = metric(Metric.HOLD);
    long change = gates.change(TWIN.id(), 1, opensEarlier(TWIN), Hands.OWNER, "measured again");
    assertThat(wakings.get()).isPositive();
    assertThat(database.predictions().progress(change))
        .hasValue(new PredictionStore.Progress(1, 1));
    new Repredictions(database.predictions(), database.gates()).remakeAll();
    assertThat(database.predictions().progress(change))
        .hasValue(new PredictionStore.Progress(1, 0));
    PredictionStore.Moved moved = database.predictions().moved(change, 0, 10).get(0);
    assertThat(moved.before().get(Metric.HOLD)).isEqualTo(before);
    double after =
        Predictor.predict(Resolution.of(KICK, database.gates()).complete().orElseThrow())
            .metrics()
            .get(Metric.HOLD)
            .orElseThrow();
    assertThat(moved.now().get(Metric.HOLD)).isEqualTo(after).isNotEqualTo(before);
  }

  @Test
  void aRenamedGateIsStillFoundByItsRecipesAndStillMarksThem() {
    gates.change(TWIN.id(), 1, TWIN.withSlug("twins"), Hands.OWNER, "renamed");
    new Repredictions(database.predictions(), database.gates()).remakeAll();
    assertThat(Resolution.of(KICK, database.gates()).missing()).isEmpty();
    long change =
        gates.change(TWIN.id(), 2, opensEarlier(TWIN.withSlug("twins")), Hands.OWNER, "again");
    assertThat(database.predictions().progress(change)).isPresent();
  }

  @Test
  void aGateThatIsSavedBetweenPredictingAndWritingMarksThePrediction() {
    Act old =
        Written.act(
            database,
            List.of(),
            List.of(
                Write.changed(Documents.RECIPE, renamed("Late"), 1L).with(new Predicted(null, 0))));
    gates.change(TWIN.id(), 1, opensEarlier(TWIN), Hands.OWNER, "in between");
    new Repredictions(database.predictions(), database.gates()).remakeAll();
    database.changes().write(old, Hands.OWNER, Written.NOON, "late");
    assertThat(database.predictions().marked(0, 10)).hasSize(1);
  }

  @Test
  void aDraftIsKeptUntilItIsDroppedAndALateOneDoesNotCount() {
    UUID key = new UUID(3, 4);
    DraftStore drafts = database.drafts();
    assertThat(drafts.keep(draft(key, 5, "{\"title\": [\"five\"]}"))).isTrue();
    assertThat(drafts.keep(draft(key, 4, "{\"title\": [\"four\"]}"))).isFalse();
    assertThat(drafts.find(key).orElseThrow().form()).isEqualTo("{\"title\": [\"five\"]}");
    assertThat(drafts.keep(draft(key, 6, "{\"title\": [\"six\"]}"))).isTrue();
    assertThat(drafts.unfinished(Hands.OWNER, 10))
        .containsExactly(draft(key, 6, "{\"title\": [\"six\"]}"));
    drafts.drop(key);
    assertThat(drafts.find(key)).isEmpty();
  }

  private static DraftStore.Draft draft(UUID key, long step, String form) {
    return new DraftStore.Draft(
        key, "recipe", KICK.id(), 1L, Hands.OWNER, Written.NOON, step, form);
  }

  private double metric(Metric metric) {
    return database
        .library()
        .page(Wanted.ALL, Ordering.TITLE, Hands.OWNER, 10, null)
        .rows()
        .get(0)
        .metrics()
        .get(metric)
        .orElseThrow();
  }

  private Kept<Recipe> stored() {
    return database.recipes().find(KICK.id().toString()).orElseThrow();
  }

  private static Recipe renamed(String title) {
    return Written.recipe("tide-kick", title, List.of("dry", "kick"), "keeper-twin");
  }

  private static Gate with(Gate gate, List<StudioChannel> channels) {
    return new Gate(gate.id(), gate.slug(), gate.title(), gate.caution(), channels, gate.notes());
  }

  /** The same gate with thresholds a volt lower, which lengthens every hold. */
  private static Gate opensEarlier(Gate gate) {
    return with(
        gate,
        gate.channels().stream()
            .map(
                studio ->
                    new StudioChannel(
                        Written.channel(studio.channel().name(), 1.4).channel(), studio.measured()))
            .toList());
  }
}
