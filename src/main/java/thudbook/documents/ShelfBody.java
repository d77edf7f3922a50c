package thudbook.documents;

import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.JsonTree;
import thudbook.quantities.Refusal;

/**
 * A shelf: {@code {"name": "…", "search": "q=kick&tag=dry"}}.
 *
 * @param search the query of an address; empty: everything
 */
public record ShelfBody(String name, String search) {
  private static final int LONGEST_NAME = 80;
  private static final int LONGEST_SEARCH = 8_000;

  /**
   * Reads the body.
   *
   * @throws Refusal with all faults of it
   */
  public static ShelfBody of(byte[] json) {
    Faults faults = new Faults();
    Fields fields = Fields.of(JsonTree.read(json), faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    String name = fields.needLine("name", LONGEST_NAME);
    String search = fields.line("search", LONGEST_SEARCH);
    fields.done();
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    return new ShelfBody(name == null ? "" : name, search == null ? "" : search);
  }
}
