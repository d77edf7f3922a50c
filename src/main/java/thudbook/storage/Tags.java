package thudbook.storage;

import static thudbook.storage.schema.Tables.TAG;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jspecify.annotations.Nullable;
import thudbook.library.Words;

/** The tags of one act: each is looked up once. */
final class Tags {
  private final DSLContext db;
  private final Map<String, Known> known = new HashMap<>();

  Tags(DSLContext db) {
    this.db = db;
  }

  private record Known(long key, String name) {}

  /** The keys of tags in the order of the text; new ones are added. */
  List<Long> keys(List<String> names) {
    Set<Long> keys = new LinkedHashSet<>();
    for (String name : names) {
      keys.add(key(name, Words.fold(name)));
    }
    return new ArrayList<>(keys);
  }

  private long key(String name, String folded) {
    Known tag = known.computeIfAbsent(folded, this::find);
    if (tag == null) {
      long key =
          db.insertInto(TAG)
              .set(TAG.NAME, name)
              .set(TAG.FOLDED, folded)
              .returningResult(TAG.ID)
              .fetchSingle()
              .value1();
      tag = new Known(key, name);
    } else if (!tag.name().equals(name)) {
      // The spelling that was written last counts.
      db.update(TAG).set(TAG.NAME, name).where(TAG.ID.eq(tag.key())).execute();
      tag = new Known(tag.key(), name);
    }
    known.put(folded, tag);
    return tag.key();
  }

  private @Nullable Known find(String folded) {
    Record row = db.select(TAG.ID, TAG.NAME).from(TAG).where(TAG.FOLDED.eq(folded)).fetchOne();
    return row == null ? null : new Known(row.get(TAG.ID), row.get(TAG.NAME));
  }
}
