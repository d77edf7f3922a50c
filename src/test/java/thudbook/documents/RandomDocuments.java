package thudbook.documents;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Rise;
import thudbook.envelopes.Strikes;
import thudbook.equipment.Gate;
import thudbook.equipment.Measured;
import thudbook.equipment.StudioChannel;
import thudbook.equipment.UnusedNumbers;
import thudbook.gates.Cell;
import thudbook.gates.Cells;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.gates.Output;
import thudbook.gates.Response;
import thudbook.gates.Transfer;
import thudbook.quantities.Dimension;
import thudbook.quantities.Frequency;
import thudbook.quantities.Position;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.EnvelopeEntry.FallEntry;
import thudbook.recipes.Recipe;
import thudbook.recipes.SourceEntry;
import thudbook.recipes.StageEntry;
import thudbook.sessions.Session;
import thudbook.sources.Modulator;
import thudbook.sources.Source;

/** Recipes and gates at random, as a reader may give them: whole, half-written, strange. */
final class RandomDocuments {
  /** The gate of the design's example. */
  static final Gate KEEPER_TWIN =
      new Gate(
          KnownIdentity.ID,
          "keeper-twin",
          "Keeper twin",
          Gate.Caution.NONE,
          List.of(
              new StudioChannel(
                  new Channel(
                      "quick",
                      Transfer.between(2.4, 5),
                      new Cells(
                          0.0012, List.of(new Cell(0.88, 0.018, null), new Cell(0.12, 0.12, null))),
                      new Response.Both(new Level(-66, 1, 0), new Filter(2, 1, 40, 9000, 1)),
                      new Output(1.1, 10)),
                  null)),
          "");

  private static final String[] PIECES = {
    "kick",
    "Gong",
    "A1",
    "no",
    "Yes",
    "null",
    "012",
    "1e5",
    "0x1F",
    "10:30",
    "2026-10-02",
    "~",
    " ",
    "  ",
    "-",
    "--",
    "---",
    ":",
    ": ",
    " #",
    "#",
    "\"",
    "\\",
    "'",
    "\\n",
    ",",
    "[",
    "]",
    "{",
    "}",
    "&a",
    "*a",
    "!",
    "|",
    ">",
    "%",
    "@",
    "`",
    "?",
    "é",
    "e\u0301",
    "ß",
    "日本",
    "🥁",
    "\u202e",
    "°",
    "µ",
    "<b>",
    "&amp;",
    "=",
    "<<",
    "y",
    "N",
    "on",
    ".5",
    "+1",
    "1_000",
    "\u00a0",
    "\ud83e\udee0"
  };

  private final Random random;

  RandomDocuments(long seed) {
    this.random = new Random(seed);
  }

  Recipe recipe() {
    EnvelopeEntry envelope = maybe(() -> envelope(true));
    List<StageEntry> stages = list(4, this::stage);
    boolean recorded =
        envelope instanceof EnvelopeEntry.Recorded
            || stages.stream().anyMatch(s -> s.envelope() instanceof EnvelopeEntry.Recorded);
    return new Recipe(
        new UUID(random.nextLong(), random.nextLong()),
        slug(),
        line(200),
        tags(),
        maybe(() -> line(100)),
        maybe(this::date),
        maybe(
            () ->
                random.nextBoolean()
                    ? slug()
                    : new UUID(random.nextLong(), random.nextLong()).toString()),
        maybe(() -> line(500)),
        maybe(() -> 1 + random.nextInt(5)),
        maybe(this::source),
        envelope,
        recorded ? null : maybe(this::strikes),
        stages,
        maybe(() -> zeroOr(0.001, 1000)),
        list(5, () -> new Recipe.Connection(line(100), line(100))),
        list(
            8,
            () ->
                new Recipe.Setting(line(100), line(100), position(), maybe(() -> "stages.0.gain"))),
        list(3, () -> new Recipe.Mix(line(100), maybe(() -> between(-140, 40)))),
        list(3, () -> new Recipe.After(line(100), maybe(() -> line(500)))),
        list(2, () -> new Recipe.Photo(hash() + ".jpg", maybe(() -> line(500)))),
        maybe(() -> line(500)),
        list(4, () -> line(100)),
        notes());
  }

  Gate gate() {
    List<StudioChannel> channels = new ArrayList<>();
    int count = 1 + random.nextInt(4);
    for (int i = 0; i < count; i++) {
      channels.add(
          channel(
              i + " " + line(90),
              maybe(
                  () ->
                      new Measured(
                          of(Measured.How.values()), date(), maybe(() -> zeroOr(0.1, 600))))));
    }
    return new Gate(
        new UUID(random.nextLong(), random.nextLong()),
        slug(),
        line(200),
        of(Gate.Caution.values()),
        channels,
        notes());
  }

  Session session() {
    List<Session.Entry> entries = new ArrayList<>();
    int count = random.nextInt(7);
    for (int i = 0; i < count; i++) {
      String above = i == 0 ? null : entries.get(i - 1).layer();
      String layer = above != null && random.nextBoolean() ? above : maybe(() -> line(90));
      entries.add(
          new Session.Entry(
              slug(), maybe(() -> line(500)), layer, random.nextBoolean(), random.nextBoolean()));
    }
    return new Session(
        new UUID(random.nextLong(), random.nextLong()),
        slug(),
        line(200),
        maybe(this::date),
        maybe(() -> line(100)),
        Session.tornLayer(entries) < 0 ? entries : List.of(),
        notes());
  }

  private StudioChannel channel(String name, @Nullable Measured measured) {
    double closed = log(0.01, 200_000);
    double open = random.nextInt(5) == 0 ? closed : log(closed, 200_000);
    Level level = new Level(between(-140, 0), between(0.5, 4), zeroOr(1e-6, 1e6));
    Filter filter = new Filter(1 + random.nextInt(2), log(1, 1000), closed, open, between(0.5, 4));
    Response.Kind kind = of(Response.Kind.values());
    Response response =
        switch (kind) {
          case BOTH -> new Response.Both(level, filter);
          case AMPLITUDE -> new Response.Amplitude(level);
          case LOW_PASS -> new Response.LowPass(filter);
        };
    UnusedNumbers unused =
        switch (kind) {
          case BOTH -> new UnusedNumbers.None();
          case AMPLITUDE ->
              new UnusedNumbers.OfFilter(
                  filter.poles(),
                  filter.spread(),
                  maybe(() -> new UnusedNumbers.Cutoff(closed, open)),
                  filter.exponent());
          case LOW_PASS ->
              new UnusedNumbers.OfLevel(maybe(level::leakDb), level.exponent(), level.saturation());
        };
    Cells cells = new Cells(time(), cells());
    Output output = new Output(between(-20, 20), between(0.1, 20));
    return new StudioChannel(
        new Channel(name, transfer(), cells, response, output), measured, unused);
  }

  private Transfer transfer() {
    int count = 2 + random.nextInt(random.nextInt(10) == 0 ? 63 : 4);
    List<Transfer.Knot> knots = new ArrayList<>();
    double volts = between(-20, -10);
    double openness = 0;
    for (int i = 0; i < count; i++) {
      boolean last = i == count - 1;
      knots.add(new Transfer.Knot(volts, last ? 1 : openness));
      volts += between(0.002, 25.0 / count);
      openness = Math.min(1, openness + (random.nextInt(4) == 0 ? 0 : between(0, 2.0 / count)));
    }
    return new Transfer(knots);
  }

  private List<Cell> cells() {
    int count = 1 + random.nextInt(4);
    List<Cell> cells = new ArrayList<>();
    double left = 1;
    for (int i = 0; i < count; i++) {
      double share = i == count - 1 ? left : left * between(0.1, 0.9);
      cells.add(new Cell(share, time(), maybe(this::time)));
      left -= share;
    }
    return cells;
  }

  private SourceEntry source() {
    double level = log(0.001, 20);
    switch (random.nextInt(3)) {
      case 0 -> {
        double from = log(0.01, 19_000);
        return new SourceEntry.Noise(
            of(Source.Colour.values()), from, between(from + 1, 20_000), level);
      }
      case 1 -> {
        Source.Wave wave = of(Source.Wave.values());
        double duty = wave == Source.Wave.PULSE ? between(0.01, 0.99) : 0.5;
        return new SourceEntry.Oscillator(wave, maybe(this::frequency), duty, level);
      }
      default -> {
        Source.Wave wave =
            of(Source.Wave.SINE, Source.Wave.TRIANGLE, Source.Wave.SAWTOOTH, Source.Wave.SQUARE);
        return new SourceEntry.FrequencyModulation(
            maybe(() -> new Frequency.Note("A1")),
            maybe(
                () ->
                    random.nextBoolean()
                        ? new Modulator.Ratio(log(0.001, 300))
                        : new Modulator.Absolute(frequency())),
            wave,
            maybe(() -> zeroOr(1e-6, 50)),
            of(Source.Phase.values()),
            level);
      }
    }
  }

  private Frequency frequency() {
    return random.nextBoolean()
        ? Frequency.ofHertz(log(0.01, 20_000))
        : new Frequency.Note(of("C", "D", "F#", "Gb", "B") + random.nextInt(10));
  }

  private EnvelopeEntry envelope(boolean mayBeRecorded) {
    Double peak = maybe(() -> between(-20, 20));
    return switch (random.nextInt(mayBeRecorded ? 4 : 3)) {
      case 0 -> new EnvelopeEntry.Pulse(peak, maybe(this::time));
      case 1 -> new EnvelopeEntry.AttackHoldDecay(peak, rise(), zeroOr(1e-6, 60), fall());
      case 2 ->
          new EnvelopeEntry.AttackDecaySustainRelease(
              peak, rise(), fall(), maybe(() -> between(0, 1)), maybe(this::time), fall());
      default -> new EnvelopeEntry.Recorded(maybe(this::samples));
    };
  }

  private List<Envelope.Sample> samples() {
    List<Envelope.Sample> samples = new ArrayList<>();
    for (double seconds : moments(2 + random.nextInt(60))) {
      samples.add(new Envelope.Sample(seconds, between(-20, 20)));
    }
    return samples;
  }

  private List<Double> moments(int count) {
    TreeSet<Double> moments = new TreeSet<>(List.of(0.0));
    while (moments.size() < count) {
      moments.add(log(1e-6, 60));
    }
    return List.copyOf(moments);
  }

  private Rise rise() {
    Curve curve = of(Curve.values());
    return new Rise(zeroOr(1e-6, 60), curve, curve == Curve.LINEAR ? 1.3 : between(1.001, 10));
  }

  private FallEntry fall() {
    return new FallEntry(maybe(this::time), of(Curve.values()), log(1e-4, 0.9));
  }

  private Strikes strikes() {
    Strikes.Restart restart = of(Strikes.Restart.values());
    int count = 1 + random.nextInt(64);
    return switch (random.nextInt(3)) {
      case 0 -> new Strikes.Every(time(), count, restart);
      case 1 ->
          new Strikes.Tempo(
              between(10, 999), 1 + random.nextInt(2), 1 + random.nextInt(128), count, restart);
      default -> new Strikes.At(moments(count), restart);
    };
  }

  private StageEntry stage() {
    return new StageEntry(
        maybe(this::slug),
        maybe(() -> line(100)),
        new Drive(between(-2, 2), between(-20, 20), between(0.1, 20)),
        random.nextInt(4) == 0 ? envelope(true) : null);
  }

  private Position position() {
    return switch (random.nextInt(5)) {
      case 0 -> new Position.Clock(LocalTime.of(1 + random.nextInt(12), random.nextInt(60)));
      case 1 -> new Position.Angle(between(0, 3600));
      case 2 -> new Position.Share(between(0, 1));
      case 3 ->
          new Position.Value(
              random.nextBoolean() ? between(-1e9, 1e9) : log(1e-300, 1e300),
              of(
                  Dimension.TIME,
                  Dimension.FREQUENCY,
                  Dimension.VOLTAGE,
                  Dimension.LEVEL,
                  Dimension.RATIO,
                  Dimension.TEMPO,
                  Dimension.MINUTES,
                  Dimension.NUMBER));
      default -> Position.read("mark " + line(90)).orElseThrow();
    };
  }

  private List<String> tags() {
    TreeSet<String> tags = new TreeSet<>();
    for (int i = random.nextInt(6); i > 0; i--) {
      tags.add(of("kick", "low", "no", "012", "dry & short", "\"q\"", "größer", "y", "a: b", "-"));
    }
    return List.copyOf(tags);
  }

  /** One line of text, not blank, without space at its ends. */
  String line(int longest) {
    StringBuilder line = new StringBuilder();
    for (int i = 1 + random.nextInt(6); i > 0; i--) {
      line.append(of(PIECES));
    }
    String stripped = line.toString().strip();
    return stripped.isEmpty() || stripped.length() > longest ? "Tide" : stripped;
  }

  String notes() {
    List<String> lines = list(6, () -> of("", "---", "...", "# Head", "  two spaces\t", line(99)));
    return Notes.kept(String.join("\n", lines));
  }

  String slug() {
    return of("no", "808", "1e5", "tide-kick", "y", "tide-2", "2026-10-02", "null", "a", "0x1f");
  }

  private String hash() {
    return new UUID(random.nextLong(), random.nextLong()).toString().replace("-", "").repeat(2);
  }

  private LocalDate date() {
    return LocalDate.ofEpochDay(random.nextInt(40_000));
  }

  private double time() {
    return log(1e-6, 60);
  }

  /** A number as people choose it, or one with all its digits. */
  private double between(double least, double most) {
    double number = least + random.nextDouble() * (most - least);
    double rounded = Math.rint(number * 100) / 100;
    boolean round = random.nextBoolean() && rounded >= least && rounded <= most;
    return (round ? rounded : number) + 0.0;
  }

  private double log(double least, double most) {
    double number = least * Math.pow(most / least, random.nextDouble());
    return Math.max(least, Math.min(most, number));
  }

  private double zeroOr(double least, double most) {
    return random.nextInt(4) == 0 ? 0 : log(least, most);
  }

  @SafeVarargs
  private <T> T of(T... choices) {
    return choices[random.nextInt(choices.length)];
  }

  private <T> T maybe(Supplier<T> value) {
    return random.nextInt(4) == 0 ? null : value.get();
  }

  private <T> List<T> list(int most, Supplier<T> item) {
    List<T> items = new ArrayList<>();
    for (int i = random.nextInt(most + 1); i > 0; i--) {
      items.add(item.get());
    }
    return items;
  }
}
