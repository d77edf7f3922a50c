package thudbook.storage;

import static thudbook.storage.schema.Tables.MARK;
import static thudbook.storage.schema.Tables.THING;

import java.time.Instant;
import java.util.Collection;
import java.util.UUID;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.documents.Documents;
import thudbook.library.MarkStore;

/** Marks of members in their table. */
final class StoredMarks implements MarkStore {
  private final Connections connections;

  StoredMarks(Connections connections) {
    this.connections = connections;
  }

  @Override
  public boolean favourite(UUID recipe, Author member, boolean favourite) {
    return connections.write(
        db -> {
          Long id = key(db, recipe);
          if (id == null) {
            return false;
          }
          db.insertInto(MARK)
              .set(MARK.MEMBER, member.name())
              .set(MARK.RECIPE, id)
              .set(MARK.FAVOURITE, favourite ? 1L : 0L)
              .onConflict(MARK.MEMBER, MARK.RECIPE)
              .doUpdate()
              .set(MARK.FAVOURITE, favourite ? 1L : 0L)
              .execute();
          return true;
        });
  }

  @Override
  public void used(Collection<UUID> recipes, Author member, Instant at) {
    connections.write(
        db -> {
          for (UUID recipe : recipes) {
            Long id = key(db, recipe);
            if (id != null) {
              db.insertInto(MARK)
                  .set(MARK.MEMBER, member.name())
                  .set(MARK.RECIPE, id)
                  .set(MARK.FAVOURITE, 0L)
                  .set(MARK.LAST_USED_AT, at.toEpochMilli())
                  .onConflict(MARK.MEMBER, MARK.RECIPE)
                  .doUpdate()
                  .set(MARK.LAST_USED_AT, at.toEpochMilli())
                  .execute();
            }
          }
          return recipes.size();
        });
  }

  private static @Nullable Long key(DSLContext db, UUID recipe) {
    return db.select(THING.ID)
        .from(THING)
        .where(StoredThings.is(Documents.RECIPE, recipe.toString()))
        .fetchOne(THING.ID);
  }
}
