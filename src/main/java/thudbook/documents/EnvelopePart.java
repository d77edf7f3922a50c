package thudbook.documents;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Moments;
import thudbook.documents.tree.Tree;
import thudbook.documents.tree.Values;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Rise;
import thudbook.quantities.Dimension;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.EnvelopeEntry.FallEntry;

/** The {@code envelope} of a recipe or of one of its stages. */
final class EnvelopePart {
  private static final String KINDS =
      "pulse, attack-hold-decay, attack-decay-sustain-release or recorded";
  private static final double USUAL_OVERSHOOT = 1.3;
  private static final double USUAL_DECAYS_TO = 0.01;

  private EnvelopePart() {}

  static @Nullable EnvelopeEntry read(Tree tree, Faults faults) {
    int before = faults.count();
    Fields fields = Fields.of(tree, faults);
    Tree kind = fields.need("kind", KINDS);
    if (kind == null) {
      return null;
    }
    EnvelopeEntry envelope;
    switch (kind instanceof Tree.Text text ? text.text() : "") {
      case "pulse" ->
          envelope =
              new EnvelopeEntry.Pulse(
                  fields.quantity("peak", Limits.VOLTS), fields.quantity("length", Limits.TIME));
      case "attack-hold-decay" ->
          envelope =
              new EnvelopeEntry.AttackHoldDecay(
                  fields.quantity("peak", Limits.VOLTS),
                  attack(fields, faults),
                  fields.quantity("hold", Limits.TIME_OR_ZERO, 0),
                  fall(fields, "decay", Curve.EXPONENTIAL, "decaysTo", USUAL_DECAYS_TO));
      case "attack-decay-sustain-release" -> envelope = sustained(fields, faults);
      case "recorded" -> envelope = new EnvelopeEntry.Recorded(samples(fields, faults));
      default -> {
        faults.add(kind, "unknown-word", KINDS);
        return null;
      }
    }
    fields.done();
    return faults.count() == before ? envelope : null;
  }

  private static EnvelopeEntry sustained(Fields fields, Faults faults) {
    Double peak = fields.quantity("peak", Limits.VOLTS);
    Rise attack = attack(fields, faults);
    FallEntry decay = fall(fields, "decay", Curve.EXPONENTIAL, "decaysTo", USUAL_DECAYS_TO);
    Double sustain = fields.quantity("sustain", Limits.PROPORTION);
    Double length = fields.quantity("length", Limits.TIME);
    // What is not said of the release is as for the decay.
    FallEntry release = fall(fields, "release", decay.curve(), "releasesTo", decay.decaysTo());
    return new EnvelopeEntry.AttackDecaySustainRelease(
        peak, attack, decay, sustain, length, release);
  }

  private static Rise attack(Fields fields, Faults faults) {
    double seconds = fields.quantity("attack", Limits.TIME_OR_ZERO, 0);
    Curve curve = fields.choice("attackCurve", Choices.CURVE, Curve.LINEAR);
    double overshoot = fields.quantity("overshoot", Limits.OVERSHOOT, USUAL_OVERSHOOT);
    if (curve == Curve.LINEAR && fields.get("overshoot") != null) {
      faults.dropped(fields.placeOf("overshoot"), "only an exponential attack has an overshoot");
      overshoot = USUAL_OVERSHOOT;
    }
    return new Rise(seconds, curve, overshoot);
  }

  private static FallEntry fall(
      Fields fields, String key, Curve curve, String fractionKey, double fraction) {
    return new FallEntry(
        fields.quantity(key, Limits.TIME),
        fields.choice(key + "Curve", Choices.CURVE, curve),
        fields.quantity(fractionKey, Limits.DECAYS_TO, fraction));
  }

  private static @Nullable List<Envelope.Sample> samples(Fields fields, Faults faults) {
    Tree tree = fields.get("samples");
    if (tree == null) {
      return null;
    }
    List<Envelope.Sample> samples = new ArrayList<>();
    for (Tree item : Fields.itemsOf(tree, 2, Limits.SAMPLES, faults)) {
      List<Tree> pair = Fields.itemsOf(item, 2, 2, faults);
      Double seconds = pair.isEmpty() ? null : Values.quantity(pair.get(0), Limits.MOMENT, faults);
      Double volts = pair.isEmpty() ? null : Values.quantity(pair.get(1), Limits.VOLTS, faults);
      if (seconds == null || volts == null) {
        continue;
      }
      Moments.check(
          pair.get(0).place(),
          seconds,
          samples.isEmpty() ? null : samples.get(samples.size() - 1).seconds(),
          faults);
      samples.add(new Envelope.Sample(seconds, volts));
    }
    return samples;
  }

  static Draft write(EnvelopeEntry envelope) {
    Draft.Keys keys = Draft.keys();
    if (envelope instanceof EnvelopeEntry.Pulse pulse) {
      keys.token("kind", "pulse")
          .quantity("peak", pulse.peakVolts(), Dimension.VOLTAGE)
          .quantity("length", pulse.lengthSeconds(), Dimension.TIME);
    } else if (envelope instanceof EnvelopeEntry.AttackHoldDecay struck) {
      keys.token("kind", "attack-hold-decay")
          .quantity("peak", struck.peakVolts(), Dimension.VOLTAGE)
          .all(attack(struck.attack()))
          .quantity("hold", struck.holdSeconds(), Dimension.TIME)
          .all(fall("decay", "decaysTo", struck.decay()));
    } else if (envelope instanceof EnvelopeEntry.AttackDecaySustainRelease struck) {
      keys.token("kind", "attack-decay-sustain-release")
          .quantity("peak", struck.peakVolts(), Dimension.VOLTAGE)
          .all(attack(struck.attack()))
          .all(fall("decay", "decaysTo", struck.decay()))
          .quantity("sustain", struck.sustain(), Dimension.NUMBER)
          .quantity("length", struck.lengthSeconds(), Dimension.TIME)
          .all(fall("release", "releasesTo", struck.release()));
    } else {
      List<Envelope.Sample> samples = ((EnvelopeEntry.Recorded) envelope).samples();
      keys.token("kind", "recorded")
          .put(
              "samples",
              samples == null
                  ? null
                  : Draft.lines(samples.stream().map(EnvelopePart::sample).toList()));
    }
    return keys.lines();
  }

  private static Draft.Keys attack(Rise rise) {
    Draft.Keys keys =
        Draft.keys()
            .quantity("attack", rise.seconds(), Dimension.TIME)
            .choice("attackCurve", Choices.CURVE, rise.curve());
    return rise.curve() == Curve.LINEAR
        ? keys
        : keys.quantity("overshoot", rise.overshoot(), Dimension.NUMBER);
  }

  private static Draft.Keys fall(String key, String fractionKey, FallEntry fall) {
    return Draft.keys()
        .quantity(key, fall.seconds(), Dimension.TIME)
        .choice(key + "Curve", Choices.CURVE, fall.curve())
        .quantity(fractionKey, fall.decaysTo(), Dimension.SHARE);
  }

  private static Draft sample(Envelope.Sample sample) {
    return Draft.inline(
        List.of(
            new Draft.Quantity(sample.seconds(), Dimension.TIME),
            new Draft.Quantity(sample.volts(), Dimension.VOLTAGE)));
  }
}
