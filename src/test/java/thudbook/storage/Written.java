package thudbook.storage;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.access.Hands;
import thudbook.changes.Act;
import thudbook.changes.Changes;
import thudbook.changes.Write;
import thudbook.documents.Documents;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Rise;
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
import thudbook.notebook.Acts;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Prediction;
import thudbook.predictions.Reach;
import thudbook.predictions.SmallShape;
import thudbook.quantities.Frequency;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.Predicted;
import thudbook.recipes.Recipe;
import thudbook.recipes.SourceEntry;
import thudbook.recipes.StageEntry;
import thudbook.sources.Source;

/** Recipes, gates and predictions that tests write into a real store. */
public final class Written {
  /** The time of the acts of tests. */
  public static final Instant NOON = Instant.parse("2026-10-02T12:00:00Z");

  private Written() {}

  /** A recipe with everything that a prediction needs, on a channel of a gate. */
  public static Recipe recipe(String slug, String title, List<String> tags, String gate) {
    return recipe(
        slug,
        title,
        tags,
        new SourceEntry.Oscillator(Source.Wave.SINE, Frequency.ofHertz(55), 0.5, 5),
        new EnvelopeEntry.AttackHoldDecay(
            7.0, Rise.linear(0.001), 0, new EnvelopeEntry.FallEntry(0.18, Curve.EXPONENTIAL, 0.01)),
        List.of(new StageEntry(gate, "quick", Drive.UNITY, null)));
  }

  /** A recipe of the given parts. */
  public static Recipe recipe(
      String slug,
      String title,
      List<String> tags,
      @Nullable SourceEntry source,
      @Nullable EnvelopeEntry envelope,
      List<StageEntry> stages) {
    return new Recipe(
        idOf(slug),
        slug,
        title,
        tags,
        "Oona",
        null,
        null,
        "short, woody",
        null,
        source,
        envelope,
        null,
        stages,
        null,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        "Monitors down before connecting.");
  }

  /** A gate with the channels quick and slow. */
  public static Gate gate(String slug, String title) {
    return new Gate(
        idOf(slug),
        slug,
        title,
        Gate.Caution.NONE,
        List.of(channel("quick", 2.4), channel("slow", 2.4)),
        "");
  }

  /** A channel that begins to open at a threshold, in volts. */
  public static StudioChannel channel(String name, double threshold) {
    return new StudioChannel(
        new Channel(
            name,
            Transfer.between(threshold, 5),
            new Cells(0.0012, List.of(new Cell(0.88, 0.018, null), new Cell(0.12, 0.12, null))),
            new Response.Both(new Level(-66, 1, 0), new Filter(2, 1, 40, 9000, 1)),
            new Output(1.1, 10)),
        null);
  }

  /** A gate with its canonical text. */
  public static Write<Gate> added(Gate gate) {
    return Write.added(Documents.GATE, gate);
  }

  /** A recipe with its canonical text. */
  public static Write<Recipe> added(Recipe recipe, @Nullable Prediction prediction) {
    return Write.added(Documents.RECIPE, recipe).with(new Predicted(prediction, 0));
  }

  /** A recipe for tests that never read its text back. */
  static Write<Recipe> unread(Recipe recipe, @Nullable Prediction prediction) {
    return new Write<>(
        Documents.RECIPE, recipe, "never read back", null, new Predicted(prediction, 0));
  }

  /** Adds recipes in one act at noon. */
  static void add(Database database, Stream<Write<Recipe>> recipes) {
    add(database, List.of(), recipes.toList(), Hands.OWNER);
  }

  /** Adds gates and recipes in one act at noon, with the predictions that they bring. */
  public static void add(
      Database database, List<Write<Gate>> gates, List<Write<Recipe>> recipes, Author author) {
    database.changes().write(act(database, gates, recipes), author, NOON, "a test");
  }

  /** An act of the predictions that recipes bring, as if they were made with the gates of now. */
  public static Act act(Database database, List<Write<Gate>> gates, List<Write<Recipe>> recipes) {
    long studio = database.changes().state(Documents.GATE);
    List<Write<?>> writes = new ArrayList<>(gates);
    for (Write<Recipe> write : recipes) {
      writes.add(
          write.derived() instanceof Predicted predicted
              ? write.with(new Predicted(predicted.prediction(), studio))
              : write);
    }
    return Act.of(writes);
  }

  /** What can be done with a notebook. */
  public static Changes acts(Database database, InstantSource clock, Runnable afterwards) {
    return Acts.on(database, clock, afterwards).changes();
  }

  /** What writes gates and recipes down that are new. */
  public static List<Write<?>> writes(List<Gate> gates, List<Recipe> recipes) {
    List<Write<?>> writes = new ArrayList<>();
    gates.forEach(gate -> writes.add(Write.added(Documents.GATE, gate)));
    recipes.forEach(recipe -> writes.add(Write.added(Documents.RECIPE, recipe)));
    return writes;
  }

  /** A prediction of the given metrics. */
  static Prediction prediction(Map<Metric, Double> metrics, Set<Metric> envelopeOnly) {
    List<Double> levels = DoubleStream.iterate(0, level -> level - 1.25).limit(48).boxed().toList();
    return new Prediction(
        new Metrics(metrics, Reach.IDLE_OPEN, envelopeOnly),
        List.of(),
        List.of(),
        new SmallShape(levels),
        null);
  }

  /** A prediction of random doubles over their whole range, with random ones absent. */
  static Prediction randomPrediction(Random random) {
    Map<Metric, Double> metrics = new EnumMap<>(Metric.class);
    for (Metric metric : Metric.values()) {
      if (random.nextInt(4) > 0) {
        metrics.put(metric, anyFinite(random));
      }
    }
    Set<Metric> envelopeOnly = EnumSet.noneOf(Metric.class);
    metrics.keySet().stream().filter(metric -> random.nextBoolean()).forEach(envelopeOnly::add);
    Reach reach = List.copyOf(EnumSet.allOf(Reach.class)).get(random.nextInt(5));
    SmallShape shape =
        new SmallShape(Stream.generate(() -> anyFinite(random)).limit(SmallShape.POINTS).toList());
    return new Prediction(
        new Metrics(metrics, reach, envelopeOnly), List.of(), List.of(), shape, null);
  }

  /** A double whose every bit is random: mostly far out, sometimes subnormal. */
  private static double anyFinite(Random random) {
    double value = Double.longBitsToDouble(random.nextLong());
    if (random.nextInt(8) == 0) {
      value = random.nextDouble() * Double.MIN_NORMAL;
    }
    return Double.isFinite(value) ? value : Double.MAX_VALUE;
  }

  private static UUID idOf(String slug) {
    return UUID.nameUUIDFromBytes(slug.getBytes(StandardCharsets.UTF_8));
  }
}
