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
import thudbook.access.Revision;
import thudbook.documents.Documents;
import thudbook.documents.SameIdentity;
import thudbook.equipment.Module;
import thudbook.equipment.ModuleStore;
import thudbook.quantities.Refusal;
import thudbook.recipes.Changes;
import thudbook.recipes.Modules;

/** Modules as they are kept, every act done and undone. Property tests. */
class StoredModulesTest {
  private static final Instant NOW = Instant.parse("2026-11-02T10:00:00Z");
  private static final Author PIA = new Author("Pia");
  private static final UUID ID = new UUID(1, 1);

  @TempDir private Path folder;
  private Database database;
  private Modules modules;
  private Changes changes;
  private ModuleStore store;

  @BeforeEach
  void open() {
    database = Database.open(folder);
    store = database.modules();
    InstantSource clock = InstantSource.fixed(NOW);
    modules = new Modules(database.changes(), store, clock);
    changes =
        new Changes(database.changes(), database.recipes(), database.gates(), clock, () -> {});
  }

  @AfterEach
  void close() {
    database.close();
  }

  private static Modules.Written module(UUID id, String slug, String label, double most) {
    String json =
        "{\"label\": \"%s\", \"title\": \"Envelope\", \"controls\": [{\"name\": \"decay\","
            + " \"unit\": \"ms\", \"taper\": \"exponential\", \"from\": 0.002, \"to\": %s}]}";
    Module module =
        Documents.moduleFromJson(
            json.formatted(label, most).getBytes(StandardCharsets.UTF_8),
            new SameIdentity(id, slug));
    return new Modules.Written(module, Documents.write(module));
  }

  private ModuleStore.Stored stored() {
    return store.find(ID.toString()).orElseThrow();
  }

  @Test
  void writtenChangedUndoneAndGoneBackTo() {
    Modules.Written first = module(ID, "e1", "E1", 8);
    Modules.Written second = module(ID, "e1-new", "E1", 10);
    long added = modules.create(first, PIA, "wrote it down");
    assertThat(store.rack().module("e1")).contains(first.module());
    assertThat(modules.change(ID, 1, first, PIA, "nothing")).isEqualTo(added);
    long changed = modules.change(ID, 1, second, PIA, "changed decay");
    assertThat(store.find("e1")).isEqualTo(store.find("e1-new")).contains(stored());
    changes.undo(changed, PIA);
    assertThat(stored().document()).isEqualTo(first.document());
    assertThat(store.revisions(ID, 0, 10)).extracting(Revision::number).containsExactly(3, 2, 1);
    modules.restore(ID, stored().version(), 2, PIA, Documents::write);
    assertThat(stored().module()).isEqualTo(second.module().withSlug("e1"));
    assertVerified();
  }

  @Test
  void binnedTakenBackAndBothUndone() {
    modules.create(module(ID, "e1", "E1", 8), PIA, "wrote it down");
    long binned = modules.bin(ID, 1, PIA);
    assertThat(store.all()).isEmpty();
    assertThat(store.rack().isEmpty()).isTrue();
    assertThat(store.binned()).containsExactly(stored());
    changes.undo(binned, PIA);
    modules.bin(ID, stored().version(), PIA);
    modules.unbin(ID, PIA);
    assertThat(store.all()).containsExactly(stored());
    assertVerified();
  }

  @Test
  void aLabelIsTakenOnce() {
    modules.create(module(ID, "e1", "E1", 8), PIA, "wrote it down");
    Modules.Written other = module(new UUID(2, 2), "e2", "e1", 8);
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
