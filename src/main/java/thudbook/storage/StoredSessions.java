package thudbook.storage;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import thudbook.access.Revision;
import thudbook.recipes.Act;
import thudbook.sessions.Session;
import thudbook.sessions.SessionStore;

/** Sessions in their tables. */
final class StoredSessions implements SessionStore {
  private final PlainTables<Session> tables;

  StoredSessions(Connections connections) {
    tables = new PlainTables<>(connections, Act.Noun.SESSION, StoredText::session);
  }

  @Override
  public Optional<Stored> find(String slugOrId) {
    return tables.find(slugOrId).map(StoredSessions::stored);
  }

  @Override
  public boolean slugTaken(String slug) {
    return tables.slugTaken(slug);
  }

  @Override
  public List<Stored> all() {
    return tables.all().stream().map(StoredSessions::stored).toList();
  }

  @Override
  public List<Stored> binned() {
    return tables.binned().stream().map(StoredSessions::stored).toList();
  }

  @Override
  public List<Revision<Session>> revisions(UUID session, int below, int limit) {
    return tables.revisions(session, below, limit);
  }

  @Override
  public Optional<Revision<Session>> revision(UUID session, int number) {
    return tables.revision(session, number);
  }

  private static Stored stored(PlainTables.Row<Session> row) {
    return new Stored(row.noun(), row.version(), row.revision(), row.binnedAt(), row.document());
  }
}
