package thudbook.storage;

import java.util.List;
import org.jooq.DSLContext;
import thudbook.changes.Binning;
import thudbook.changes.Write;
import thudbook.equipment.Gate;

/** What follows from gates: the recipes that name them are predicted again. */
final class GateRows extends SideRows<Gate> {
  private final DSLContext db;
  private final long change;

  GateRows(DSLContext db, NewRows rows, long change) {
    this.db = db;
    this.change = change;
  }

  @Override
  void written(List<Write<Gate>> writes) {
    writes.forEach(write -> StoredPredictions.markUsersOf(db, write.thing().id(), change));
  }

  @Override
  void moved(long thing, Binning binning) {
    StoredPredictions.markUsersOf(db, binning.id(), change);
  }
}
