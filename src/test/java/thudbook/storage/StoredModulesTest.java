package thudbook.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
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
import thudbook.equipment.Module;
import thudbook.equipment.Rack;
import thudbook.quantities.Refusal;

/** Modules as they are kept, every act done and undone. Property tests. */
class StoredModulesTest {
  private static final Instant NOW = Instant.parse("2026-11-02T10:00:00Z");
  private static final Author PIA = new Author("Pia");
  private static final UUID ID = new UUID(1, 1);

  @TempDir private Path folder;
  private Database database;
  private Keeper<Module> modules;
  private Changes changes;
  private Store<Module> store;

  @BeforeEach
  void open() {
    database = Database.open(folder);
    store = database.modules();
    InstantSource clock = InstantSource.fixed(NOW);
    modules = Written.acts(database, clock, () -> {}).keeper(Documents.MODULE);
    changes = Written.acts(database, clock, () -> {});
  }

  @AfterEach
  void close() {
    database.close();
  }

  private static Module module(UUID id, String slug, String label, double most) {
    String json =
        "{\"label\": \"%s\", \"title\": \"Envelope\", \"controls\": [{\"name\": \"decay\","
            + " \"unit\": \"ms\", \"taper\": \"exponential\", \"from\": 0.002, \"to\": %s}]}";
    Module module =
        Documents.MODULE.fromJson(
            json.formatted(label, most).getBytes(StandardCharsets.UTF_8),
            new SameIdentity(id, slug));
    return module;
  }

  private Kept<Module> stored() {
    return store.find(ID.toString()).orElseThrow();
  }

  @Test
  void writtenChangedUndoneAndGoneBackTo() {
    Module first = module(ID, "e1", "E1", 8);
    Module second = module(ID, "e1-new", "E1", 10);
    long added = modules.create(first, PIA, "wrote it down");
    assertThat(Rack.of(store).module("e1")).contains(first);
    assertThat(modules.change(ID, 1, first, PIA, "nothing")).isEqualTo(added);
    long changed = modules.change(ID, 1, second, PIA, "changed decay");
    assertThat(store.find("e1")).isEqualTo(store.find("e1-new")).contains(stored());
    changes.undo(changed, PIA);
    assertThat(stored().document()).isEqualTo(Documents.write(first));
    assertThat(store.revisions(ID, 0, 10)).extracting(Revision::number).containsExactly(3, 2, 1);
    modules.restore(ID, stored().version(), 2, PIA);
    assertThat(stored().thing()).isEqualTo(second.withSlug("e1"));
    assertVerified();
  }

  @Test
  void binnedTakenBackAndBothUndone() {
    modules.create(module(ID, "e1", "E1", 8), PIA, "wrote it down");
    long binned = modules.bin(ID, 1, PIA);
    assertThat(store.all()).isEmpty();
    assertThat(Rack.of(store).isEmpty()).isTrue();
    assertThat(store.binned(100)).containsExactly(stored());
    changes.undo(binned, PIA);
    modules.bin(ID, stored().version(), PIA);
    modules.unbin(ID, PIA);
    assertThat(store.all()).containsExactly(stored());
    assertVerified();
  }

  @Test
  void aLabelIsTakenOnce() {
    modules.create(module(ID, "e1", "E1", 8), PIA, "wrote it down");
    Module other = module(new UUID(2, 2), "e2", "e1", 8);
    assertThatThrownBy(() -> modules.create(other, PIA, "again"))
        .isInstanceOfSatisfying(
            Refusal.class,
            refusal -> {
              assertThat(refusal.kind()).isEqualTo(Refusal.Kind.CONFLICT);
              assertThat(refusal.faults()).extracting("code").containsExactly("label-taken");
            });
    modules.bin(ID, 1, PIA);
    modules.create(other, PIA, "now it is free");
    assertThatThrownBy(() -> modules.unbin(ID, PIA)).isInstanceOf(Refusal.class);
  }

  private void assertVerified() {
    assertThat(Database.verify(folder).wrong()).isEmpty();
  }
}
