package thudbook.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.Envelope;
import thudbook.gates.Channel;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Prediction;
import thudbook.predictions.Reach;
import thudbook.predictions.Sound;
import thudbook.predictions.StageMetrics;

/** Sentences that say what a gate makes of an envelope. Every one follows from the numbers. */
public final class Explanation {
  /** A fall with one time constant takes three times as long to −60 dB as to −20 dB. */
  private static final double ONE_CELL = 3;

  /** From this much slower than that, a tail is called slow. */
  private static final double SLOW = 1.3;

  private final Sound sound;
  private final Prediction prediction;
  private final Metrics metrics;
  private final List<String> sentences = new ArrayList<>();

  private Explanation(Sound sound, Prediction prediction) {
    this.sound = sound;
    this.prediction = prediction;
    this.metrics = prediction.metrics();
  }

  /** The sentences, in the order in which a strike goes by. */
  public static List<String> of(Sound sound, Prediction prediction) {
    Explanation explanation = new Explanation(sound, prediction);
    for (int i = 0; i < prediction.stages().size(); i++) {
      explanation.opening(i);
      explanation.lettingGo(i);
    }
    explanation.tail();
    explanation.brightness();
    explanation.thump();
    explanation.clipping();
    explanation.train();
    explanation.envelopeOnly();
    return List.copyOf(explanation.sentences);
  }

  private void opening(int index) {
    StageMetrics stage = prediction.stages().get(index);
    Channel channel = sound.stages().get(index).channel();
    String threshold = Reading.entered(channel.transfer().thresholdVolts(), "V");
    String ceiling = Reading.entered(channel.transfer().ceilingVolts(), "V");
    String who = who(index);
    String openness = ReadableNumbers.share(stage.peakOpenness());
    switch (stage.reach()) {
      case SILENT ->
          say(
              "The control voltage never rises above the threshold of "
                  + threshold
                  + " of "
                  + who
                  + ": nothing is heard but what leaks.");
      case PARTIAL ->
          say(
              capital(who)
                  + " opens to "
                  + openness
                  + ": the control voltage stays below its ceiling of "
                  + ceiling
                  + ", so every volt of peak counts.");
      case BRIEF ->
          say(
              "The control voltage is at the ceiling of "
                  + ceiling
                  + time(" for ", stage.flatTime())
                  + ", too briefly for "
                  + who
                  + " to open fully: it gets to "
                  + openness
                  + ".");
      case OPEN ->
          say(
              stage.flatTime() == null
                  ? capital(who) + " opens fully, and the control voltage stays at the ceiling."
                  : capital(who)
                      + " opens fully: the control voltage is at the ceiling of "
                      + ceiling
                      + " for "
                      + ReadableNumbers.seconds(stage.flatTime())
                      + ", a flat top that more peak only makes longer.");
      case IDLE_OPEN ->
          say(
              "The control voltage is above the threshold of "
                  + threshold
                  + " before the strike: "
                  + who
                  + " never closes.");
    }
    if (stage.deadTime() != null && stage.deadTime() > 0) {
      say(
          "For the first "
              + ReadableNumbers.seconds(stage.deadTime())
              + " the control voltage is still below the threshold of "
              + who
              + ".");
    }
  }

  private void lettingGo(int index) {
    StageMetrics stage = prediction.stages().get(index);
    if (stage.reach() == Reach.SILENT) {
      return;
    }
    String fall =
        sound.envelopeOf(index) instanceof Envelope.AttackDecaySustainRelease
            ? "falling segment"
            : "decay";
    if (stage.letGo() == null) {
      say(
          "The control voltage never stays below the threshold of "
              + who(index)
              + ": it does not let go.");
    } else if (stage.ignoredShare() == null || stage.ignoredShare() == 0) {
      say(
          capital(who(index))
              + " lets go after "
              + ReadableNumbers.seconds(stage.letGo())
              + " and then falls at its own pace.");
    } else {
      say(
          capital(who(index))
              + " lets go after "
              + ReadableNumbers.seconds(stage.letGo())
              + ": the last "
              + ReadableNumbers.share(stage.ignoredShare())
              + " of the "
              + fall
              + " is ignored, and from there it falls at its own pace.");
    }
  }

  private void tail() {
    OptionalDouble to20 = metrics.get(Metric.RELEASE_20);
    OptionalDouble to60 = metrics.get(Metric.RELEASE_60);
    OptionalDouble floor = metrics.get(Metric.FLOOR_DB);
    if (to20.isPresent() && to60.isPresent()) {
      double ratio = to60.getAsDouble() / to20.getAsDouble();
      say(
          "After the hold the level drops by 20\u00a0dB in "
              + ReadableNumbers.seconds(to20.getAsDouble())
              + " and by 60\u00a0dB in "
              + ReadableNumbers.seconds(to60.getAsDouble())
              + (ratio > SLOW * ONE_CELL
                  ? ": fast at first, with a slow tail (a single pace would take "
                      + ReadableNumbers.seconds(ONE_CELL * to20.getAsDouble())
                      + ")."
                  : "."));
    } else if (to20.isPresent() && floor.isPresent()) {
      say(
          "After the hold the level drops by 20\u00a0dB in "
              + ReadableNumbers.seconds(to20.getAsDouble())
              + "; it never gets further than "
              + ReadableNumbers.decibels(-floor.getAsDouble())
              + " below its peak.");
    }
  }

  private void brightness() {
    OptionalDouble peak = metrics.get(Metric.BRIGHTNESS_PEAK);
    OptionalDouble later = metrics.get(Metric.BRIGHTNESS_AT_20);
    if (peak.isPresent() && later.isPresent() && later.getAsDouble() < 0.9 * peak.getAsDouble()) {
      say(
          "It darkens as it falls: from "
              + ReadableNumbers.hertz(peak.getAsDouble())
              + " at the peak to "
              + ReadableNumbers.hertz(later.getAsDouble())
              + " when it is 20\u00a0dB down.");
    }
  }

  private void thump() {
    OptionalDouble thump = metrics.get(Metric.THUMP_PEAK);
    OptionalDouble toTone = metrics.get(Metric.THUMP_TO_TONE);
    if (thump.isPresent() && thump.getAsDouble() > 0 && toTone.isPresent()) {
      double db = toTone.getAsDouble();
      say(
          "The control pushes an offset of "
              + ReadableNumbers.volts(thump.getAsDouble())
              + " into the output, "
              + ReadableNumbers.decibels(Math.abs(db))
              + (db < 0 ? " below" : " above")
              + " the tone"
              + (sound.couplingHertz() > 0
                  ? ", behind a coupling of " + Reading.enteredHertz(sound.couplingHertz()) + "."
                  : "."));
    }
  }

  private void clipping() {
    OptionalDouble clipped = metrics.get(Metric.CLIPPED_SHARE);
    if (clipped.isPresent() && clipped.getAsDouble() > 0) {
      say(
          "The output clips: up to "
              + ReadableNumbers.share(clipped.getAsDouble())
              + " of a cycle is cut off at a rail.");
    }
  }

  private void train() {
    OptionalDouble buildUp = metrics.get(Metric.BUILD_UP);
    if (buildUp.isPresent() && Math.abs(buildUp.getAsDouble()) >= 0.05) {
      double db = buildUp.getAsDouble();
      say(
          "Over the strikes it "
              + (db > 0 ? "builds up: the last peak is " : "sinks: the last peak is ")
              + ReadableNumbers.decibels(Math.abs(db))
              + (db > 0 ? " above" : " below")
              + " the first.");
    }
    long together =
        prediction.strikes().stream().filter(s -> Boolean.FALSE.equals(s.separated())).count();
    if (together > 0) {
      say(
          together == prediction.strikes().size() - 1
              ? "The strikes run into each other: between them the level falls by less than 10\u00a0dB."
              : together
                  + (together == 1 ? " strike runs" : " strikes run")
                  + " into the next: the level falls by less than 10\u00a0dB between them.");
    }
  }

  private void envelopeOnly() {
    if (!metrics.envelopeOnly().isEmpty()) {
      say(
          "Shorter than two periods of the lowest strong partial, so rather a click than a shape: "
              + metrics.envelopeOnly().stream()
                  .map(
                      m -> MetricWords.of(m).name().toLowerCase(Locale.ENGLISH).replace("db", "dB"))
                  .collect(Collectors.joining(", "))
              + ".");
    }
  }

  private String who(int index) {
    String name = sound.stages().get(index).channel().name();
    return sound.stages().size() == 1
        ? sound.stages().get(index).channel().response().filter().isEmpty()
            ? "the amplifier"
            : "the low-pass gate"
        : Map.of(0, "the first", 1, "the second", 2, "the third", 3, "the fourth").get(index)
            + " stage ("
            + name
            + ")";
  }

  private static String time(String before, @Nullable Double seconds) {
    return seconds == null ? "" : before + ReadableNumbers.seconds(seconds);
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ENGLISH) + text.substring(1);
  }

  private void say(String sentence) {
    sentences.add(sentence);
  }
}
