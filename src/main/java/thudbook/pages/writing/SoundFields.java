package thudbook.pages.writing;

import java.util.List;
import thudbook.documents.Limits;
import thudbook.pages.writing.EditorField.Turn;

/** The words of the fields that a sound follows from. */
final class SoundFields extends FieldList {
  private static final Turn TIMES = new Turn(false, 0.1, 10_000, "ms");
  private static final Turn PITCHES = new Turn(false, 20, 12_000, "Hz");
  private static final Turn VOLTS = new Turn(true, 0, 10, "V");

  SoundFields() {
    source();
    envelope();
    strikes();
    stage();
  }

  private void source() {
    choice(
        "source.noise.colour",
        "Colour",
        "Pink falls by 3 dB per octave.",
        same("white"),
        same("pink"));
    number(
        "source.noise.from", "From", Limits.FREQUENCY, "Lower edge of the band.", "20 Hz", PITCHES);
    number(
        "source.noise.to",
        "To",
        Limits.FREQUENCY,
        "Upper edge of the band.",
        "20 kHz",
        new Turn(false, 20, 20_000, "Hz"));
    choice(
        "source.oscillator.wave",
        "Wave",
        "What it is rich in.",
        same("sine"),
        same("triangle"),
        same("sawtooth"),
        same("square"),
        same("pulse"));
    number(
        "source.oscillator.frequency",
        "Frequency",
        Limits.FREQUENCY,
        "Hertz, or a note such as A1.",
        "55 Hz",
        PITCHES);
    number(
        "source.oscillator.duty",
        "Duty",
        Limits.DUTY,
        "How much of a cycle is high; of a pulse only.",
        "50 %",
        new Turn(true, 1, 99, "%"));
    number(
        "source.fm.carrier",
        "Carrier",
        Limits.FREQUENCY,
        "The oscillator that is heard. Hertz, or a note such as A1.",
        "55 Hz",
        PITCHES);
    number(
        "source.fm.modulator",
        "Modulator",
        Limits.FREQUENCY,
        "Hertz, a note, or a ratio of the carrier such as 1.5 x.",
        "1.5 x",
        new Turn(false, 0.1, 16, "x"));
    number(
        "source.fm.index",
        "Index",
        Limits.INDEX,
        "Peak deviation over the modulator’s frequency: how many side tones.",
        "2",
        new Turn(true, 0, 10, ""));
    choice(
        "source.fm.wave",
        "Modulator’s wave",
        "A square one gives a hollow, a sawtooth a lopsided spectrum.",
        same("sine"),
        same("triangle"),
        same("sawtooth"),
        same("square"));
    choice(
        "source.fm.phase",
        "Phase",
        "Locked: partials that meet add with their signs. Free: their powers add.",
        same("locked"),
        same("free"));
    for (String kind : List.of("noise", "oscillator", "fm")) {
      number(
          "source." + kind + ".level",
          "Level",
          Limits.LEVEL,
          kind.equals("noise")
              ? "Four times the effective value."
              : "Peak, at the input of the low-pass gate.",
          "5 V",
          VOLTS);
    }
  }

  private void envelope() {
    for (String kind : List.of("pulse", "attack-hold-decay", "attack-decay-sustain-release")) {
      number(
          "envelope." + kind + ".peak",
          "Peak",
          Limits.VOLTS,
          "Before the control drive.",
          "7 V",
          VOLTS);
    }
    for (String kind : List.of("attack-hold-decay", "attack-decay-sustain-release")) {
      String in = "envelope." + kind + ".";
      number(
          in + "attack",
          "Attack",
          Limits.TIME_OR_ZERO,
          "From the strike to the peak.",
          "0 ms",
          TIMES);
      number(in + "decay", "Decay", Limits.TIME, "From the peak down.", "180 ms", TIMES);
      choice(
          in + "attackCurve",
          "Attack’s curve",
          "Exponential: a capacitor that is charged.",
          same("linear"),
          same("exponential"));
      number(
          in + "overshoot",
          "Overshoot",
          Limits.OVERSHOOT,
          "What an exponential attack aims at, times the peak.",
          "1.3",
          new Turn(true, 1.01, 3, ""));
      choice(
          in + "decayCurve",
          "Decay’s curve",
          "Exponential: fast first, then slower.",
          same("exponential"),
          same("linear"));
      number(
          in + "decaysTo",
          "Decays to",
          Limits.DECAYS_TO,
          "What is left after the decay’s time.",
          "1 %",
          new Turn(false, 0.1, 50, "%"));
    }
    number("envelope.pulse.length", "Length", Limits.TIME, "How long it is high.", "4 ms", TIMES);
    number(
        "envelope.attack-hold-decay.hold",
        "Hold",
        Limits.TIME_OR_ZERO,
        "At the peak, before the decay.",
        "0 ms",
        TIMES);
    String in = "envelope.attack-decay-sustain-release.";
    number(
        in + "sustain",
        "Sustain",
        Limits.PROPORTION,
        "Where the decay ends, as a share of the peak.",
        "0.5",
        new Turn(true, 0, 1, ""));
    number(
        in + "length",
        "Key length",
        Limits.TIME,
        "From the strike until the key goes up.",
        "120 ms",
        TIMES);
    number(in + "release", "Release", Limits.TIME, "After the key goes up.", "200 ms", TIMES);
    choice(
        in + "releaseCurve",
        "Release’s curve",
        "Exponential: fast first, then slower.",
        same("exponential"),
        same("linear"));
    number(
        in + "releasesTo",
        "Releases to",
        Limits.DECAYS_TO,
        "What is left after the release’s time.",
        "1 %",
        new Turn(false, 0.1, 50, "%"));
    lines(
        "envelope.recorded.samples",
        "Samples",
        "2 to 4096 pairs.",
        "A pair a line, time and voltage; the first time is 0.",
        "0 ms, 0 V\n2 ms, 7 V\n180 ms, 0 V");
  }

  private void strikes() {
    String count = "How many strikes.";
    number(
        "strikes.every.every",
        "Every",
        Limits.TIME,
        "From strike to strike.",
        "375 ms",
        new Turn(false, 10, 4000, "ms"));
    whole("strikes.every.count", "Count", "1 to 64", count, "8");
    number(
        "strikes.tempo.tempo",
        "Tempo",
        Limits.TEMPO,
        "Quarter notes per minute.",
        "92 bpm",
        new Turn(true, 40, 240, "bpm"));
    line(
        "strikes.tempo.note",
        "Note",
        0,
        "From strike to strike, as a part of a whole note.",
        "1/8");
    whole("strikes.tempo.count", "Count", "1 to 64", count, "8");
    line(
        "strikes.at.at",
        "Times",
        0,
        "At most 64, with commas between them; the first is 0.",
        "0 ms, 28 ms, 61 ms");
    for (String kind : List.of("every", "tempo", "at")) {
      choice(
          "strikes." + kind + ".restart",
          "Restarts from",
          "Where a strike finds an envelope that is still falling.",
          option("level", "the level reached"),
          option("zero", "zero"));
    }
  }

  private void stage() {
    choice("stages.N.gate", "Low-pass gate", "What the sound goes through.");
    choice("stages.N.channel", "Channel", "Each has its own threshold, ceiling and release.");
    number(
        "stages.N.gain",
        "Control gain",
        Limits.GAIN,
        "What the attenuverter makes of the envelope.",
        "1",
        new Turn(true, -2, 2, ""));
    number(
        "stages.N.offset",
        "Control offset",
        Limits.VOLTS,
        "Added behind the gain.",
        "0 V",
        new Turn(true, -5, 5, "V"));
    number(
        "stages.N.controlRail",
        "Control rail",
        Limits.RAIL,
        "Where the control voltage is cut.",
        "12 V",
        new Turn(true, 1, 15, "V"));
    lines(
        "stages.N.tried",
        "A channel to try out",
        "",
        "In the words of a gate’s document. It is predicted, not kept: save it in a gate first.",
        "transfer: [[2.4 V, 0], [5 V, 1]]\nopening: 1.2 ms\nrelease: [{share: 1, time: 18 ms}]\ncutoff: {closed: 40 Hz, open: 9 kHz}\nleak: -66 dB");
    number(
        "output.coupling",
        "Coupling high-pass",
        Limits.COUPLING,
        "Behind the last stage; keeps the thump from the loudspeaker. 0: none.",
        "0 Hz",
        new Turn(true, 0, 100, "Hz"));
  }
}
