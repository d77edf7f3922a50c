package thudbook.documents;

import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.JsonTree;
import thudbook.quantities.Refusal;

/** The new name of a tag: {@code {"name": "…"}}. */
public final class TagBody {
  private TagBody() {}

  /**
   * Reads the body.
   *
   * @throws Refusal with all faults of it
   */
  public static String of(byte[] json) {
    Faults faults = new Faults();
    Fields fields = Fields.of(JsonTree.read(json), faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    String name = fields.needLine("name", Limits.TAG);
    fields.done();
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    return name == null ? "" : name;
  }
}
