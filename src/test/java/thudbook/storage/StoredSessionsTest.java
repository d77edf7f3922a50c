package thudbook.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.access.Author;
import thudbook.changes.Changes;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.changes.Revision;
import thudbook.changes.Store;
import thudbook.documents.Documents;
import thudbook.documents.SameIdentity;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.sessions.Recall;
import thudbook.sessions.RecallStore;
import thudbook.sessions.Session;

/** Sessions and recalls as they are kept, every act done and undone. Property tests. */
class StoredSessionsTest {
  private static final Instant NOW = Instant.parse("2026-11-02T10:00:00Z");
  private static final Author PIA = new Author("Pia");
  private static final UUID ID = new UUID(1, 1);

  @TempDir private Path folder;
  private Database database;
  private Keeper<Session> sessions;
  private Changes changes;
  private Store<Session> store;

  @BeforeEach
  void open() {
    database = Database.open(folder);
    store = database.sessions();
    InstantSource clock = InstantSource.fixed(NOW);
    sessions = Written.acts(database, clock, () -> {}).keeper(Documents.SESSION);
    changes = Written.acts(database, clock, () -> {});
  }

  @AfterEach
  void close() {
    database.close();
  }

  private static Session session(String slug, String title, String... recipes) {
    List<Session.Entry> entries =
        List.of(recipes).stream()
            .map(recipe -> new Session.Entry(recipe, "a note", null, true, false))
            .toList();
    Session session = new Session(ID, slug, title, null, "Oona", entries, "Notes.");
    return session;
  }

  private Kept<Session> stored() {
    return store.find(ID.toString()).orElseThrow();
  }

  @Test
  void writtenChangedUndoneAndKept() {
    Session first = session("rehearsal", "Rehearsal", "kick");
    Session second = session("second-rehearsal", "Second rehearsal", "kick", "gong");
    long added = sessions.create(first, PIA, "planned it");
    assertThat(store.find("rehearsal").orElseThrow().thing()).isEqualTo(first);
    assertThat(sessions.change(ID, 1, first, PIA, "nothing")).isEqualTo(added);
    long changed = sessions.change(ID, 1, second, PIA, "changed recipe");
    assertThat(stored().thing()).isEqualTo(second);
    assertThat(stored().version()).isEqualTo(2);
    assertThat(store.find("rehearsal")).isEqualTo(store.find("second-rehearsal"));
    assertThat(store.slugTaken("rehearsal")).isTrue();
    assertThat(changes.find(changed).orElseThrow().effects())
        .singleElement()
        .satisfies(effect -> assertThat(effect.revision()).isEqualTo(2));
    long undone = changes.undo(changed, PIA);
    assertThat(stored().document()).isEqualTo(Documents.write(first));
    changes.undo(undone, PIA);
    assertThat(stored().document()).isEqualTo(Documents.write(second));
    assertThat(store.revisions(ID, 0, 10)).extracting(Revision::number).containsExactly(4, 3, 2, 1);
    sessions.restore(ID, stored().version(), 1, PIA);
    assertThat(stored().thing()).isEqualTo(first.withSlug("second-rehearsal"));
    assertVerified();
  }

  @Test
  void binnedTakenBackAndBothUndone() {
    long added = sessions.create(session("rehearsal", "Rehearsal"), PIA, "planned it");
    long binned = sessions.bin(ID, 1, PIA);
    assertThat(store.all()).isEmpty();
    assertThat(store.binned(100)).containsExactly(stored());
    assertThatThrownBy(() -> sessions.bin(ID, 2, PIA)).isInstanceOf(Refusal.class);
    changes.undo(binned, PIA);
    assertThat(store.all()).containsExactly(stored());
    sessions.bin(ID, stored().version(), PIA);
    sessions.unbin(ID, PIA);
    assertThat(stored().binnedAt()).isNull();
    changes.undo(added, PIA);
    assertThat(stored().binnedAt()).isEqualTo(NOW);
    assertVerified();
  }

  @Test
  void whatIsTakenOrOvertakenIsRefused() {
    Session first = session("rehearsal", "Rehearsal");
    sessions.create(first, PIA, "planned it");
    assertThatThrownBy(() -> sessions.create(first, PIA, "again"))
        .isInstanceOfSatisfying(
            Refusal.class,
            refusal -> {
              assertThat(refusal.kind()).isEqualTo(Refusal.Kind.CONFLICT);
              assertThat(refusal.faults()).extracting("code").contains("id-taken", "slug-taken");
            });
    assertThatThrownBy(() -> sessions.change(ID, 7, session("rehearsal", "Other"), PIA, "late"))
        .isInstanceOfSatisfying(
            Refusal.class, refusal -> assertThat(refusal.kind()).isEqualTo(Refusal.Kind.STALE));
    assertThat(stored().document()).isEqualTo(Documents.write(first));
  }

  @Test
  void aRecallIsKeptByItsLatestStepAndNotOpenedAgain() {
    Recipe recipe =
        Documents.RECIPE.fromJson(
            "{\"id\":\"00000000-0000-0007-0000-000000000007\",\"slug\":\"kick\",\"title\":\"Kick\"}"
                .getBytes(StandardCharsets.UTF_8),
            new SameIdentity(new UUID(7, 7), "kick"));
    InstantSource clock = InstantSource.fixed(NOW);
    Written.acts(database, clock, () -> {})
        .keeper(Documents.RECIPE)
        .create(recipe, PIA, "wrote it down");
    sessions.create(session("rehearsal", "Rehearsal", "kick"), PIA, "planned it");
    RecallStore recalls = database.recalls();
    Recall begun =
        new Recall(new UUID(9, 9), recipe.id(), 1, ID, PIA, NOW, null, 3, "{\"ticked\":[\"a\"]}");
    assertThat(recalls.keep(begun)).isTrue();
    assertThat(recalls.unfinished(recipe.id(), ID, PIA)).contains(begun);
    assertThat(recalls.unfinished(recipe.id(), null, PIA)).isEmpty();
    Recall late = new Recall(begun.id(), recipe.id(), 1, ID, PIA, NOW, null, 2, "{}");
    assertThat(recalls.keep(late)).isFalse();
    assertThat(recalls.find(begun.id())).contains(begun);
    Recall done = begun.finished(NOW.plusSeconds(600));
    assertThat(recalls.keep(done)).isTrue();
    assertThat(recalls.keep(begun)).isFalse();
    assertThat(recalls.find(begun.id())).contains(done);
    assertThat(recalls.unfinished(recipe.id(), ID, PIA)).isEmpty();
    assertThat(recalls.uses(recipe.id(), 5))
        .containsExactly(
            new RecallStore.Use(NOW.plusSeconds(600), PIA, 1, "rehearsal", "Rehearsal"));
    Recall nothing = new Recall(new UUID(9, 8), new UUID(5, 5), 1, null, PIA, NOW, null, 0, "{}");
    assertThat(recalls.keep(nothing)).isFalse();
  }

  private void assertVerified() {
    assertThat(Database.verify(folder).wrong()).isEmpty();
  }
}
