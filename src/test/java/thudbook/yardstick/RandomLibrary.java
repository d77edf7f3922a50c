package thudbook.yardstick;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Hands;
import thudbook.changes.Write;
import thudbook.documents.Documents;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Rise;
import thudbook.envelopes.Strikes;
import thudbook.equipment.Gate;
import thudbook.equipment.StudioChannel;
import thudbook.gates.Cell;
import thudbook.gates.Cells;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.gates.Output;
import thudbook.gates.Response;
import thudbook.gates.Transfer;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.quantities.Frequency;
import thudbook.quantities.Position;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;
import thudbook.recipes.SourceEntry;
import thudbook.recipes.StageEntry;
import thudbook.sources.Modulator;
import thudbook.sources.Source;
import thudbook.storage.Database;
import thudbook.storage.Written;

/**
 * A seeded library of any size that is spread as a studio's is: few tags, people and gates are in
 * most recipes and many in few, words follow Zipf's law, knobs stand at round values, some recipes
 * are half-written. Recipes share so many voices (a sound on a gate channel) that predicting them
 * all is not what takes the time.
 */
public final class RandomLibrary {
  private static final int WORDS = 4_000;
  private static final int TAGS = 60;
  private static final int PEOPLE = 14;
  private static final int GATES = 6;
  private static final int AT_ONCE = 1_000;
  private static final Instant FIRST = Instant.parse("2020-01-01T09:00:00Z");
  private static final List<String> SYLLABLES =
      List.of(
          "ka", "lo", "mi", "tun", "ré", "sol", "bar", "ke", "üm", "dra", "pel", "o", "tik", "na",
          "shu", "gra", "ve", "il", "mo", "thu", "ces", "ba", "ŋa", "zo");

  private final Random random;
  private final List<String> words = new ArrayList<>();
  private final List<String> tags = new ArrayList<>();
  private final List<String> people = new ArrayList<>();
  private final List<Gate> gates = new ArrayList<>();
  private final List<Voice> voices = new ArrayList<>();
  private final Map<Voice, Prediction> predicted = new HashMap<>();
  private int made;

  /** What is struck. */
  private record Voice(
      @Nullable SourceEntry source,
      @Nullable EnvelopeEntry envelope,
      @Nullable Strikes strikes,
      List<StageEntry> stages) {}

  /** A library of the same recipes for the same seed. */
  public RandomLibrary(long seed, int voices) {
    random = new Random(seed);
    Set<String> different = new LinkedHashSet<>();
    while (different.size() < WORDS) {
      different.add(word(1 + random.nextInt(4)));
    }
    words.addAll(different);
    for (int i = 0; i < TAGS; i++) {
      tags.add(i % 7 == 3 ? words.get(i * 11) + " " + words.get(i * 5) : words.get(i * 13));
    }
    for (int i = 0; i < PEOPLE; i++) {
      String name = words.get(100 + i * 17);
      people.add(name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1));
    }
    for (int i = 0; i < GATES; i++) {
      gates.add(gate(i));
    }
    for (int i = 0; i < voices; i++) {
      this.voices.add(voice());
    }
  }

  /** Words that occur, common ones first. */
  public List<String> words() {
    return words;
  }

  /** Tags that occur, common ones first. */
  public List<String> tags() {
    return tags;
  }

  /** People who make recipes. */
  public List<String> people() {
    return people;
  }

  /** The gates that recipes use. */
  public List<Gate> gates() {
    return gates;
  }

  /** Writes gates and so many recipes into an empty notebook, a thousand in one act. */
  public void fill(Database database, int count) {
    for (int from = 0; from < count; from += AT_ONCE) {
      List<Write<Gate>> first =
          from > 0
              ? List.of()
              : gates.stream().map(gate -> Write.added(Documents.GATE, gate)).toList();
      List<Write<Recipe>> writes = new ArrayList<>();
      for (int i = from; i < Math.min(count, from + AT_ONCE); i++) {
        writes.add(next());
      }
      database
          .changes()
          .write(
              Written.act(database, first, writes),
              Hands.OWNER,
              FIRST.plusSeconds(3_600L * (from / AT_ONCE)),
              "filled");
    }
  }

  /** The next recipe with its text and prediction. */
  public Write<Recipe> next() {
    Voice voice = voices.get(random.nextInt(voices.size()));
    Recipe recipe = recipe(voice);
    return Written.added(recipe, prediction(voice, recipe));
  }

  private @Nullable Prediction prediction(Voice voice, Recipe recipe) {
    Prediction known = predicted.get(voice);
    if (known == null && !predicted.containsKey(voice)) {
      Map<String, Gate> bySlug = new HashMap<>();
      gates.forEach(gate -> bySlug.put(gate.slug(), gate));
      known =
          Resolution.of(recipe, new Studio(bySlug)).complete().map(Predictor::predict).orElse(null);
      predicted.put(voice, known);
    }
    return known;
  }

  private Recipe recipe(Voice voice) {
    int number = made++;
    List<String> some = new ArrayList<>();
    for (int i = random.nextInt(5); i > 0; i--) {
      String tag = zipf(tags);
      if (!some.contains(tag)) {
        some.add(tag);
      }
    }
    String slug = "r" + number;
    return new Recipe(
        UUID.nameUUIDFromBytes(slug.getBytes(StandardCharsets.UTF_8)),
        slug,
        sentence(2 + random.nextInt(3)),
        some,
        random.nextInt(5) > 0 ? zipf(people) : null,
        random.nextInt(3) > 0 ? LocalDate.of(2020, 1, 1).plusDays(random.nextInt(2500)) : null,
        null,
        random.nextInt(3) > 0 ? sentence(2 + random.nextInt(6)) : null,
        random.nextBoolean() ? 1 + random.nextInt(5) : null,
        voice.source(),
        voice.envelope(),
        voice.strikes(),
        voice.stages(),
        null,
        List.of(new Recipe.Connection("N1 noise", "G1 in " + (1 + random.nextInt(2)))),
        List.of(
            new Recipe.Setting(
                "E1", "decay", new Position.Share(random.nextInt(101) / 100.0), null)),
        List.of(),
        List.of(),
        random.nextInt(6) > 0
            ? List.of()
            : List.of(new Recipe.Photo("0".repeat(64) + ".jpg", sentence(3))),
        random.nextInt(4) > 0 ? null : sentence(4),
        random.nextInt(4) > 0 ? List.of() : List.of(zipf(people)),
        random.nextInt(8) == 0 ? "" : sentence(8 + random.nextInt(40)));
  }

  private String sentence(int length) {
    List<String> some = new ArrayList<>();
    for (int i = 0; i < length; i++) {
      some.add(zipf(words));
    }
    return String.join(random.nextInt(4) > 0 ? " " : ", ", some);
  }

  /** One of a list: the k-th about 1/k as often as the first. */
  private <T> T zipf(List<T> list) {
    double k = Math.exp(random.nextDouble() * Math.log(list.size() + 1.0)) - 1;
    return list.get(Math.min(list.size() - 1, (int) k));
  }

  private String word(int length) {
    StringBuilder word = new StringBuilder();
    for (int i = 0; i < length; i++) {
      word.append(SYLLABLES.get(random.nextInt(SYLLABLES.size())));
    }
    return word.toString();
  }

  private Voice voice() {
    if (random.nextInt(12) == 0) {
      return new Voice(random.nextBoolean() ? source() : null, null, null, List.of());
    }
    List<StageEntry> stages = new ArrayList<>();
    for (int i = random.nextInt(10) == 0 ? 2 : 1; i > 0; i--) {
      Gate gate = zipf(gates);
      String channel =
          random.nextInt(20) == 0
              ? null
              : gate.channels().get(random.nextInt(gate.channels().size())).channel().name();
      stages.add(new StageEntry(gate.slug(), channel, Drive.UNITY, null));
    }
    Strikes strikes =
        random.nextInt(6) > 0
            ? null
            : new Strikes.Every(
                0.125 + random.nextInt(4) / 8.0, 2 + random.nextInt(3), Strikes.Restart.LEVEL);
    return new Voice(source(), envelope(), strikes, stages);
  }

  private SourceEntry source() {
    double hertz = Math.rint(30 * Math.pow(2, random.nextInt(60) / 12.0) * 10) / 10;
    return switch (random.nextInt(3)) {
      case 0 -> new SourceEntry.Noise(Source.Colour.WHITE, 20, 20_000, 5);
      case 1 -> new SourceEntry.Oscillator(Source.Wave.TRIANGLE, Frequency.ofHertz(hertz), 0.5, 5);
      default ->
          new SourceEntry.FrequencyModulation(
              Frequency.ofHertz(hertz),
              new Modulator.Ratio(1 + random.nextInt(4) / 2.0),
              Source.Wave.SINE,
              random.nextInt(40) / 10.0,
              Source.Phase.LOCKED,
              5);
    };
  }

  private EnvelopeEntry envelope() {
    double peak = 2 + random.nextInt(13) / 2.0;
    if (random.nextInt(5) == 0) {
      return new EnvelopeEntry.Pulse(peak, (1 + random.nextInt(30)) / 1000.0);
    }
    return new EnvelopeEntry.AttackHoldDecay(
        peak,
        Rise.linear((1 + random.nextInt(20)) / 1000.0),
        random.nextInt(3) == 0 ? random.nextInt(50) / 1000.0 : 0,
        new EnvelopeEntry.FallEntry(
            (20 + 10 * random.nextInt(80)) / 1000.0, Curve.EXPONENTIAL, 0.01));
  }

  private Gate gate(int number) {
    String slug = "gate-" + words.get(200 + number).replaceAll("[^a-z]", "x");
    List<StudioChannel> channels = new ArrayList<>();
    for (String name : List.of("quick", "long")) {
      double release = name.equals("quick") ? 0.01 + number / 400.0 : 0.06 + number / 50.0;
      channels.add(
          new StudioChannel(
              new Channel(
                  name,
                  Transfer.between(1 + number / 3.0, 5 + number / 4.0),
                  new Cells(
                      0.001 + number / 2000.0,
                      List.of(new Cell(0.9, release, null), new Cell(0.1, release * 6, null))),
                  new Response.Both(new Level(-66, 1, 0), new Filter(2, 1, 40, 9000, 1)),
                  new Output(number / 4.0, 10)),
              null));
    }
    return new Gate(
        UUID.nameUUIDFromBytes(slug.getBytes(StandardCharsets.UTF_8)),
        slug,
        "Gate " + words.get(200 + number),
        Gate.Caution.NONE,
        channels,
        "");
  }
}
