package thudbook.documents;

import thudbook.documents.tree.Choice;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Strikes;
import thudbook.equipment.Gate;
import thudbook.equipment.Measured;
import thudbook.equipment.Module;
import thudbook.equipment.Port;
import thudbook.gates.Response;
import thudbook.sources.Source;

/** The words of documents for enumerations. */
final class Choices {
  static final Choice<Source.Colour> COLOUR = new Choice<>(Source.Colour.values(), '-');
  static final Choice<Source.Wave> WAVE = new Choice<>(Source.Wave.values(), '-');
  static final Choice<Source.Wave> MODULATOR_WAVE =
      new Choice<>(
          new Source.Wave[] {
            Source.Wave.SINE, Source.Wave.TRIANGLE, Source.Wave.SAWTOOTH, Source.Wave.SQUARE
          },
          '-');
  static final Choice<Source.Phase> PHASE = new Choice<>(Source.Phase.values(), '-');
  static final Choice<Curve> CURVE = new Choice<>(Curve.values(), '-');
  static final Choice<Strikes.Restart> RESTART = new Choice<>(Strikes.Restart.values(), '-');
  static final Choice<Response.Kind> RESPONSE = new Choice<>(Response.Kind.values(), '-');
  static final Choice<Gate.Caution> CAUTION = new Choice<>(Gate.Caution.values(), '-');
  static final Choice<Measured.How> HOW = new Choice<>(Measured.How.values(), ' ');

  static final Choice<SessionDocument.Place> PLACE =
      new Choice<>(SessionDocument.Place.values(), '-');
  static final Choice<SessionDocument.Stays> STAYS =
      new Choice<>(SessionDocument.Stays.values(), '-');

  static final Choice<Module.Kind> MODULE_KIND = new Choice<>(Module.Kind.values(), '-');
  static final Choice<Port.Direction> DIRECTION = new Choice<>(Port.Direction.values(), '-');
  static final Choice<Port.Carries> CARRIES = new Choice<>(Port.Carries.values(), ' ');
  static final Choice<BulkBody.Act> BULK = new Choice<>(BulkBody.Act.values(), '-');

  private Choices() {}
}
