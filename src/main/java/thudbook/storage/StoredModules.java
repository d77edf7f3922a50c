package thudbook.storage;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import thudbook.access.Revision;
import thudbook.equipment.Module;
import thudbook.equipment.ModuleStore;
import thudbook.recipes.Act;

/** Modules in their tables. */
final class StoredModules implements ModuleStore {
  private final PlainTables<Module> tables;

  StoredModules(Connections connections) {
    tables = new PlainTables<>(connections, Act.Noun.MODULE, StoredText::module);
  }

  @Override
  public Optional<Stored> find(String slugOrId) {
    return tables.find(slugOrId).map(StoredModules::stored);
  }

  @Override
  public boolean slugTaken(String slug) {
    return tables.slugTaken(slug);
  }

  @Override
  public List<Stored> all() {
    return tables.all().stream()
        .map(StoredModules::stored)
        .sorted(Comparator.comparing(stored -> stored.module().label()))
        .toList();
  }

  @Override
  public List<Stored> binned() {
    return tables.binned().stream().map(StoredModules::stored).toList();
  }

  @Override
  public List<Revision<Module>> revisions(UUID module, int below, int limit) {
    return tables.revisions(module, below, limit);
  }

  @Override
  public Optional<Revision<Module>> revision(UUID module, int number) {
    return tables.revision(module, number);
  }

  private static Stored stored(PlainTables.Row<Module> row) {
    return new Stored(row.noun(), row.version(), row.revision(), row.binnedAt(), row.document());
  }
}
