package thudbook.documents;

import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Tree;
import thudbook.envelopes.Drive;
import thudbook.quantities.Dimension;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.StageEntry;

/** One of the {@code stages} of a recipe. */
final class StagePart {
  private StagePart() {}

  static StageEntry read(Tree tree, Faults faults) {
    Fields fields = Fields.of(tree, faults);
    String gate = gate(fields, faults);
    String channel = fields.line("channel", Limits.NAME);
    Drive drive = drive(fields);
    EnvelopeEntry envelope = envelope(fields, faults);
    fields.done();
    return new StageEntry(gate, channel, drive, envelope);
  }

  /** The slug or id of the stage's gate. */
  static @Nullable String gate(Fields fields, Faults faults) {
    return Names.reference(fields, "gate", "the slug of a gate, such as keeper-twin", faults);
  }

  static Drive drive(Fields fields) {
    return new Drive(
        fields.quantity("gain", Limits.GAIN, Drive.UNITY.gain()),
        fields.quantity("offset", Limits.VOLTS, Drive.UNITY.offsetVolts()),
        fields.quantity("controlRail", Limits.RAIL, Drive.UNITY.railVolts()));
  }

  static @Nullable EnvelopeEntry envelope(Fields fields, Faults faults) {
    Tree tree = fields.get("envelope");
    return tree == null ? null : EnvelopePart.read(tree, faults);
  }

  static Draft write(StageEntry stage) {
    EnvelopeEntry envelope = stage.envelope();
    return Draft.keys()
        .words("gate", stage.gate())
        .words("channel", stage.channel())
        .quantity("gain", stage.drive().gain(), Dimension.NUMBER)
        .quantity("offset", stage.drive().offsetVolts(), Dimension.VOLTAGE)
        .quantity("controlRail", stage.drive().railVolts(), Dimension.VOLTAGE)
        .put("envelope", envelope == null ? null : EnvelopePart.write(envelope))
        .lines();
  }
}
