package thudbook.pages.writing;

import static thudbook.pages.writing.EditorField.Look.CHOICE;
import static thudbook.pages.writing.EditorField.Look.LINE;
import static thudbook.pages.writing.EditorField.Look.LINES;
import static thudbook.pages.writing.EditorField.Look.NUMBER;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thudbook.documents.Limits;
import thudbook.pages.writing.EditorField.Option;
import thudbook.pages.writing.EditorField.Turn;
import thudbook.quantities.Range;

/** What the fields of a gate are called, what may stand in them and what they do. */
final class GateFieldWords {
  private static final String CHANNEL = "channels.N.";
  private static final Turn TIMES = new Turn(false, 0.1, 2000, "ms");
  private static final Turn CUTOFFS = new Turn(false, 10, 20_000, "Hz");
  private static final Turn SHARES = new Turn(true, 0, 1, "");

  private final Map<String, FieldWords> words = new HashMap<>();

  private GateFieldWords() {}

  /** The words of all fields, by their names; all channels have the same. */
  static Map<String, FieldWords> all() {
    GateFieldWords all = new GateFieldWords();
    all.gate();
    all.opening();
    all.sound();
    all.output();
    all.measured();
    return all.words;
  }

  private void gate() {
    choice(
        "caution",
        "Caution",
        "Shown wherever the gate appears.",
        Option.of("none", "none"),
        Option.of("tube", "tubes: high voltage and hot glass"));
    line("name", "Name", "At most 100 characters.", "As it stands on the panel.", "quick");
    choice(
        CHANNEL + "response",
        "Response",
        "What the control voltage moves: level, cutoff or both.",
        Option.of("both", "both"),
        Option.of("amplitude", "level only"),
        Option.of("low-pass", "cutoff only"));
  }

  private void opening() {
    words.put(
        CHANNEL + "transfer",
        new FieldWords(
            "Transfer",
            "2 to 64 knots.",
            "A knot a line: control voltage and openness, from the threshold at 0 to the ceiling"
                + " at 1.",
            "2.4 V, 0\n5 V, 1",
            LINES,
            List.of(),
            null));
    number("opening", "Opening", Limits.TIME, "Time constant of the rise.", "1.2 ms", TIMES);
    number("release.N.share", "Share", Limits.CELL_SHARE, "", "1", SHARES);
    number("release.N.time", "Falls in", Limits.TIME, "", "18 ms", TIMES);
    number("release.N.opening", "Opens in", Limits.TIME, "", "as above", TIMES);
  }

  private void sound() {
    number("cutoff.closed", "Cutoff, closed", Limits.CUTOFF, "", "40 Hz", CUTOFFS);
    number("cutoff.open", "Cutoff, open", Limits.CUTOFF, "", "9 kHz", CUTOFFS);
    choice(
        CHANNEL + "poles",
        "Filter",
        "How steep it is above the cutoff.",
        Option.of("2", "two poles, 12 dB per octave"),
        Option.of("1", "one pole, 6 dB per octave"));
    number(
        "spread", "Spread", Limits.SPREAD, "How far apart two poles are, as a factor.", "1", null);
    number(
        "exponents.cutoff",
        "Cutoff exponent",
        Limits.EXPONENT,
        "How the cutoff follows the openness.",
        "1",
        new Turn(true, 0.5, 4, ""));
    number(
        "leak",
        "Leak when closed",
        Limits.LEAK,
        "What still passes.",
        "-66 dB",
        new Turn(true, -120, 0, "dB"));
    number(
        "exponents.level",
        "Level exponent",
        Limits.EXPONENT,
        "How the level follows the openness.",
        "1",
        new Turn(true, 0.5, 4, ""));
    number(
        "saturation",
        "Saturation",
        Limits.SATURATION,
        "How early the level stops rising with the openness; 0: it does not.",
        "0",
        null);
  }

  private void output() {
    number(
        "bleed",
        "Bleed of the control",
        Limits.VOLTS,
        "Offset at the output when fully open: the thump.",
        "0 V",
        new Turn(true, -3, 3, "V"));
    number(
        "outputRail",
        "Output rail",
        Limits.RAIL,
        "Where tone and offset together are cut.",
        "10 V",
        new Turn(true, 1, 15, "V"));
  }

  private void measured() {
    choice(
        CHANNEL + "measured.how",
        "Measured",
        "Where these numbers come from.",
        Option.of("", "entered by hand"),
        Option.of("sweep", "with a sweep"),
        Option.of("recording", "from a recording"),
        Option.of("data sheet", "taken from a data sheet"));
    line("measured.date", "On", "", "The day.", "2026-10-02");
    number("measured.warmUp", "Warmed up for", Limits.WARM_UP, "", "20 min", null);
  }

  private void line(String name, String label, String range, String help, String usual) {
    words.put(CHANNEL + name, new FieldWords(label, range, help, usual, LINE, List.of(), null));
  }

  private void number(
      String name, String label, Range range, String help, String usual, @Nullable Turn turn) {
    words.put(
        CHANNEL + name,
        new FieldWords(label, FieldWords.said(range), help, usual, NUMBER, List.of(), turn));
  }

  private void choice(String name, String label, String help, Option... options) {
    words.put(name, new FieldWords(label, "", help, "", CHOICE, Arrays.asList(options), null));
  }
}
