package thudbook.pages;

import static thudbook.pages.EditorField.Look.CHOICE;
import static thudbook.pages.EditorField.Look.LINE;
import static thudbook.pages.EditorField.Look.LINES;
import static thudbook.pages.EditorField.Look.NUMBER;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thudbook.documents.Limits;
import thudbook.pages.EditorField.Look;
import thudbook.pages.EditorField.Option;
import thudbook.pages.EditorField.Turn;
import thudbook.quantities.Dimension;
import thudbook.quantities.Range;

/**
 * What the fields of the editor are called, what may stand in them and what they do.
 *
 * @param usual what counts where nothing is written, or an example of what may be
 */
record FieldWords(
    String label,
    String range,
    String help,
    String usual,
    Look look,
    List<Option> options,
    @Nullable Turn turn) {
  private static final Map<String, FieldWords> ALL = new HashMap<>();

  private static final Turn TIMES = new Turn(false, 0.1, 10_000, "ms");
  private static final Turn PITCHES = new Turn(false, 20, 12_000, "Hz");
  private static final Turn VOLTS = new Turn(true, 0, 10, "V");

  static {
    words();
    source();
    envelope();
    strikes();
    stage();
    patch();
    ALL.putAll(GateFieldWords.all());
  }

  /** The words of a field, by its name; all stages, and all rows of a list, have the same. */
  static FieldWords of(String name) {
    String key =
        name.replaceAll("\\.[0-9]+\\.", ".N.").replaceFirst("^stages\\.N\\.envelope", "envelope");
    FieldWords words = ALL.get(key);
    if (words == null) {
      throw new IllegalArgumentException("no field " + name);
    }
    return words;
  }

  private static void words() {
    line("title", "Title", Limits.TITLE, "The one thing that a recipe must have.", "");
    line("tags", "Tags", 0, "With commas between them, at most 32.", "dry, kick");
    line("heard", "Heard", Limits.SENTENCE, "What it sounds like, in one line, by ear.", "");
    line("by", "By", Limits.NAME, "Who made the patch.", "");
    line("with", "With", 0, "The other people, with commas between them.", "");
    line("made", "Made", 0, "The day of the patch.", "2026-10-02");
    line(
        "room",
        "Room",
        Limits.SENTENCE,
        "Where and how it was heard.",
        "close, monitors at 70 dB(A)");
    choice(
        "rating",
        "Rating",
        "How much you want it back.",
        option("", "not rated"),
        option("1", "1 of 5"),
        option("2", "2 of 5"),
        option("3", "3 of 5"),
        option("4", "4 of 5"),
        option("5", "5 of 5"));
    line(
        "slug",
        "Address",
        80,
        "Its name in addresses and files. Links to the old one go on to work.",
        "made of the title");
    line("derivedFrom", "Derived from", 80, "The address of the recipe that this one varies.", "");
    put(
        "notes",
        new FieldWords(
            "Notes",
            "At most 64 KiB.",
            "In CommonMark: **bold**, lists, tables, links.",
            "",
            LINES,
            List.of(),
            null));
  }

  private static void source() {
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

  private static void envelope() {
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
    put(
        "envelope.recorded.samples",
        new FieldWords(
            "Samples",
            "2 to 4096 pairs.",
            "A pair a line, time and voltage; the first time is 0.",
            "0 ms, 0 V\n2 ms, 7 V\n180 ms, 0 V",
            LINES,
            List.of(),
            null));
  }

  private static void strikes() {
    String count = "How many strikes.";
    number(
        "strikes.every.every",
        "Every",
        Limits.TIME,
        "From strike to strike.",
        "375 ms",
        new Turn(false, 10, 4000, "ms"));
    put("strikes.every.count", whole("Count", "1 to 64", count, "8"));
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
    put("strikes.tempo.count", whole("Count", "1 to 64", count, "8"));
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

  private static void stage() {
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
    put(
        "stages.N.tried",
        new FieldWords(
            "A channel to try out",
            "",
            "In the words of a gate’s document. It is predicted, not kept: save it in a gate first.",
            "transfer: [[2.4 V, 0], [5 V, 1]]\nopening: 1.2 ms\nrelease: [{share: 1, time: 18 ms}]\ncutoff: {closed: 40 Hz, open: 9 kHz}\nleak: -66 dB",
            LINES,
            List.of(),
            null));
    number(
        "output.coupling",
        "Coupling high-pass",
        Limits.COUPLING,
        "Behind the last stage; keeps the thump from the loudspeaker. 0: none.",
        "0 Hz",
        new Turn(true, 0, 100, "Hz"));
  }

  private static void patch() {
    line("connections.N.out", "From output", Limits.NAME, "", "E1 out");
    line("connections.N.in", "To input", Limits.NAME, "", "G1 control 1");
    line("settings.N.module", "Module", Limits.NAME, "", "E1");
    line("settings.N.control", "Control", Limits.NAME, "", "decay");
    line(
        "settings.N.at",
        "At",
        0,
        "A clock position, an angle, a share, a value or a name.",
        "10:30");
    choice("settings.N.for", "Sets", "The value of the sound that it sets.");
    line("mix.N.into", "Into", Limits.NAME, "", "desk 3");
    number("mix.N.level", "Level", Limits.MIX, "", "-6 dB", null);
    line("after.N.what", "What", Limits.NAME, "", "spring reverb");
    line("after.N.how", "How", Limits.SENTENCE, "", "a third wet");
    line("photos.N.file", "File", 0, "", "");
    line("photos.N.shows", "Shows", Limits.SENTENCE, "For readers who don’t see it.", "");
  }

  private static void line(String name, String label, int longest, String help, String usual) {
    String range = longest == 0 ? "" : "At most " + longest + " characters.";
    put(name, new FieldWords(label, range, help, usual, LINE, List.of(), null));
  }

  private static void number(
      String name, String label, Range range, String help, String usual, @Nullable Turn turn) {
    put(name, new FieldWords(label, said(range), help, usual, NUMBER, List.of(), turn));
  }

  /** A range as a reader reads it. */
  static String said(Range range) {
    Dimension dimension = range.dimension();
    String words =
        (range.orZero() ? "0, " : "")
            + dimension.say(range.least())
            + " to "
            + dimension.say(range.most());
    return words.replace("-", "−");
  }

  private static FieldWords whole(String label, String range, String help, String usual) {
    return new FieldWords(label, range, help, usual, NUMBER, List.of(), null);
  }

  private static void choice(String name, String label, String help, Option... options) {
    put(name, new FieldWords(label, "", help, "", CHOICE, Arrays.asList(options), null));
  }

  private static Option same(String word) {
    return option(word, word);
  }

  private static Option option(String value, String label) {
    return Option.of(value, label);
  }

  private static void put(String name, FieldWords words) {
    ALL.put(name, words);
  }
}
