package thudbook.storage;

import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_REVISION;
import static thudbook.storage.schema.Tables.GATE_SLUG;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.DSLContext;
import thudbook.equipment.Gate;
import thudbook.equipment.GateStore;
import thudbook.quantities.Refusal;

/** The gates as one transaction sees them; a text that was read before is not read again. */
final class GateTexts {
  private final Map<String, Gate> read = new HashMap<>();

  /** The studio in the state of a transaction. */
  GateStore studio(DSLContext db) {
    Map<String, String> texts = new HashMap<>();
    db.select(GATE.UUID, GATE_SLUG.SLUG, GATE_REVISION.DOCUMENT)
        .from(GATE)
        .join(GATE_SLUG)
        .on(GATE_SLUG.GATE.eq(GATE.ID))
        .join(GATE_REVISION)
        .on(GATE_REVISION.GATE.eq(GATE.ID), GATE_REVISION.NUMBER.eq(GATE.HEAD))
        .forEach(
            row -> {
              texts.put(row.value1(), row.value3());
              texts.put(row.value2(), row.value3());
            });
    return new GateStore() {
      @Override
      public Optional<Stored> find(String slugOrId) {
        return Optional.ofNullable(texts.get(slugOrId)).flatMap(text -> stored(text));
      }

      @Override
      public List<Stored> all() {
        return texts.values().stream().distinct().flatMap(text -> stored(text).stream()).toList();
      }
    };
  }

  private Optional<GateStore.Stored> stored(String text) {
    try {
      Gate gate = read.computeIfAbsent(text, StoredText::gate);
      return Optional.of(GateStore.Stored.fresh(gate, text));
    } catch (Refusal | IllegalStateException e) {
      return Optional.empty(); // told where the gates themselves are looked at
    }
  }
}
