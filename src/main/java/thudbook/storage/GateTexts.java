package thudbook.storage;

import static thudbook.storage.schema.Tables.REVISION;
import static thudbook.storage.schema.Tables.THING;
import static thudbook.storage.schema.Tables.THING_SLUG;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.DSLContext;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.quantities.Refusal;

/** The gates as one transaction sees them; a text that was read before is not read again. */
final class GateTexts {
  private final Map<String, Gate> read = new HashMap<>();

  /** The studio in the state of a transaction. */
  Things<Gate> studio(DSLContext db) {
    Map<String, String> texts = new HashMap<>();
    db.select(THING.UUID, THING_SLUG.SLUG, REVISION.DOCUMENT)
        .from(THING)
        .join(THING_SLUG)
        .on(THING_SLUG.THING.eq(THING.ID))
        .join(REVISION)
        .on(REVISION.THING.eq(THING.ID), REVISION.NUMBER.eq(THING.HEAD))
        .where(THING.NOUN.eq(Documents.GATE.word()))
        .forEach(
            row -> {
              texts.put(row.value1(), row.value3());
              texts.put(row.value2(), row.value3());
            });
    return new Things<>() {
      @Override
      public Optional<Kept<Gate>> find(String slugOrId) {
        return Optional.ofNullable(texts.get(slugOrId)).flatMap(text -> stored(text));
      }

      @Override
      public List<Kept<Gate>> all() {
        return texts.values().stream().distinct().flatMap(text -> stored(text).stream()).toList();
      }
    };
  }

  private Optional<Kept<Gate>> stored(String text) {
    try {
      Gate gate = read.computeIfAbsent(text, Documents.GATE::read);
      return Optional.of(Kept.fresh(gate, text));
    } catch (Refusal | IllegalStateException e) {
      return Optional.empty(); // told where the gates themselves are looked at
    }
  }
}
