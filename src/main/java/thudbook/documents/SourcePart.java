package thudbook.documents;

import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Tree;
import thudbook.quantities.Dimension;
import thudbook.quantities.Frequency;
import thudbook.recipes.SourceEntry;
import thudbook.sources.Modulator;
import thudbook.sources.Source;

/** The {@code source} of a recipe. */
final class SourcePart {
  private static final String KINDS = "noise, oscillator or fm";
  private static final double USUAL_LEVEL = 5;
  private static final double USUAL_DUTY = 0.5;

  private SourcePart() {}

  static @Nullable SourceEntry read(Tree tree, Faults faults) {
    int before = faults.count();
    Fields fields = Fields.of(tree, faults);
    Tree kind = fields.need("kind", KINDS);
    if (kind == null) {
      return null;
    }
    SourceEntry source;
    switch (kind instanceof Tree.Text text ? text.text() : "") {
      case "noise" -> source = noise(fields, faults);
      case "oscillator" -> source = oscillator(fields, faults);
      case "fm" -> source = frequencyModulation(fields, faults);
      default -> {
        faults.add(kind, "unknown-word", KINDS);
        return null;
      }
    }
    fields.done();
    return faults.count() == before ? source : null;
  }

  private static SourceEntry noise(Fields fields, Faults faults) {
    Source.Colour colour = fields.choice("colour", Choices.COLOUR, Source.Colour.WHITE);
    double from = fields.quantity("from", Limits.FREQUENCY, 20);
    double to = fields.quantity("to", Limits.FREQUENCY, 20_000);
    if (from >= to) {
      faults.add(
          fields.placeOf("from"),
          "not-below",
          Dimension.FREQUENCY.say(from),
          "a frequency below to, which is " + Dimension.FREQUENCY.say(to));
    }
    return new SourceEntry.Noise(colour, from, to, level(fields));
  }

  private static SourceEntry oscillator(Fields fields, Faults faults) {
    Source.Wave wave = fields.choice("wave", Choices.WAVE, Source.Wave.SINE);
    Tree frequency = fields.get("frequency");
    double duty = fields.quantity("duty", Limits.DUTY, USUAL_DUTY);
    if (wave != Source.Wave.PULSE && fields.get("duty") != null) {
      faults.dropped(fields.placeOf("duty"), "only a pulse has a duty");
      duty = USUAL_DUTY;
    }
    return new SourceEntry.Oscillator(
        wave,
        frequency == null ? null : FrequencyPart.read(frequency, faults),
        duty,
        level(fields));
  }

  private static SourceEntry frequencyModulation(Fields fields, Faults faults) {
    Tree carrierTree = fields.get("carrier");
    Tree modulatorTree = fields.get("modulator");
    Frequency carrier = carrierTree == null ? null : FrequencyPart.read(carrierTree, faults);
    Modulator modulator =
        modulatorTree == null ? null : FrequencyPart.readModulator(modulatorTree, faults);
    if (carrier != null && modulator != null) {
      double hertz = modulator.hertz(carrier.hertz());
      if (!Limits.FREQUENCY.admits(hertz)) {
        faults.add(
            fields.placeOf("modulator"),
            "out-of-range",
            "a modulator at " + Dimension.FREQUENCY.say(hertz),
            Limits.FREQUENCY.words());
      }
    }
    return new SourceEntry.FrequencyModulation(
        carrier,
        modulator,
        fields.choice("wave", Choices.MODULATOR_WAVE, Source.Wave.SINE),
        fields.quantity("index", Limits.INDEX),
        fields.choice("phase", Choices.PHASE, Source.Phase.LOCKED),
        level(fields));
  }

  private static double level(Fields fields) {
    return fields.quantity("level", Limits.LEVEL, USUAL_LEVEL);
  }

  static Draft write(SourceEntry source) {
    Draft.Keys keys = Draft.keys();
    double level;
    if (source instanceof SourceEntry.Noise noise) {
      keys.token("kind", "noise")
          .choice("colour", Choices.COLOUR, noise.colour())
          .quantity("from", noise.fromHertz(), Dimension.FREQUENCY)
          .quantity("to", noise.toHertz(), Dimension.FREQUENCY);
      level = noise.levelVolts();
    } else if (source instanceof SourceEntry.Oscillator oscillator) {
      Frequency frequency = oscillator.frequency();
      keys.token("kind", "oscillator")
          .choice("wave", Choices.WAVE, oscillator.wave())
          .put("frequency", frequency == null ? null : FrequencyPart.write(frequency));
      if (oscillator.wave() == Source.Wave.PULSE) {
        keys.quantity("duty", oscillator.duty(), Dimension.SHARE);
      }
      level = oscillator.levelVolts();
    } else {
      SourceEntry.FrequencyModulation pair = (SourceEntry.FrequencyModulation) source;
      Frequency carrier = pair.carrier();
      Modulator modulator = pair.modulator();
      keys.token("kind", "fm")
          .put("carrier", carrier == null ? null : FrequencyPart.write(carrier))
          .put("modulator", modulator == null ? null : FrequencyPart.write(modulator))
          .choice("wave", Choices.WAVE, pair.wave())
          .quantity("index", pair.index(), Dimension.NUMBER)
          .choice("phase", Choices.PHASE, pair.phase());
      level = pair.levelVolts();
    }
    return keys.quantity("level", level, Dimension.VOLTAGE).lines();
  }
}
