package thudbook.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Rise;
import thudbook.envelopes.Strikes;
import thudbook.recipes.EnvelopeEntry;

/** Envelopes and strikes in plain words. */
public final class EnvelopeWords {
  private static final String NOT_YET = "not written yet";

  private EnvelopeWords() {}

  /**
   * Every value of an envelope.
   *
   * @param prefix of the keys, such as {@code envelope.}
   */
  public static List<Entry> entries(EnvelopeEntry entry, String prefix) {
    List<Entry> entries = new ArrayList<>();
    if (entry instanceof EnvelopeEntry.Pulse pulse) {
      entries.add(new Entry(prefix + "kind", "Kind", "pulse"));
      entries.add(peak(prefix, pulse.peakVolts()));
      entries.add(new Entry(prefix + "length", "Length", time(pulse.lengthSeconds())));
    } else if (entry instanceof EnvelopeEntry.AttackHoldDecay ahd) {
      entries.add(new Entry(prefix + "kind", "Kind", "attack, hold, decay"));
      entries.add(peak(prefix, ahd.peakVolts()));
      entries.add(attack(prefix, ahd.attack()));
      entries.add(new Entry(prefix + "hold", "Hold", Reading.enteredTime(ahd.holdSeconds())));
      entries.add(fall(prefix + "decay", "Decay", ahd.decay()));
    } else if (entry instanceof EnvelopeEntry.AttackDecaySustainRelease adsr) {
      entries.add(new Entry(prefix + "kind", "Kind", "attack, decay, sustain, release"));
      entries.add(peak(prefix, adsr.peakVolts()));
      entries.add(attack(prefix, adsr.attack()));
      entries.add(fall(prefix + "decay", "Decay", adsr.decay()));
      entries.add(
          new Entry(
              prefix + "sustain",
              "Sustain",
              adsr.sustain() == null ? NOT_YET : Reading.enteredShare(adsr.sustain())));
      entries.add(new Entry(prefix + "length", "Key length", time(adsr.lengthSeconds())));
      entries.add(fall(prefix + "release", "Release", adsr.release()));
    } else if (entry instanceof EnvelopeEntry.Recorded recorded) {
      entries.add(new Entry(prefix + "kind", "Kind", "recorded control voltage"));
      entries.add(
          new Entry(
              prefix + "samples",
              "Samples",
              recorded.samples() == null
                  ? NOT_YET
                  : recorded.samples().size()
                      + " over "
                      + Reading.enteredTime(
                          recorded.samples().get(recorded.samples().size() - 1).seconds())));
    }
    return entries;
  }

  /** Every value of a train of strikes. */
  public static List<Entry> entries(Strikes strikes) {
    List<Entry> entries = new ArrayList<>();
    if (strikes instanceof Strikes.Every every) {
      entries.add(new Entry("strikes.every", "Every", Reading.enteredTime(every.everySeconds())));
      entries.add(new Entry("strikes.count", "Strikes", String.valueOf(every.count())));
    } else if (strikes instanceof Strikes.Tempo tempo) {
      entries.add(
          new Entry(
              "strikes.tempo",
              "Tempo",
              Reading.entered(tempo.beatsPerMinute()) + "\u00a0quarter notes per minute"));
      entries.add(new Entry("strikes.note", "Note", tempo.numerator() + "/" + tempo.denominator()));
      entries.add(new Entry("strikes.count", "Strikes", String.valueOf(tempo.count())));
    } else if (strikes instanceof Strikes.At at) {
      entries.add(
          new Entry(
              "strikes.at",
              "Strikes at",
              at.seconds().stream().map(Reading::enteredTime).collect(Collectors.joining(", "))));
    }
    entries.add(
        new Entry(
            "strikes.restart",
            "Restart",
            strikes.restart() == Strikes.Restart.LEVEL ? "from the level reached" : "from zero"));
    return entries;
  }

  private static Entry peak(String prefix, @Nullable Double volts) {
    return new Entry(
        prefix + "peak", "Peak", volts == null ? NOT_YET : Reading.entered(volts, "V"));
  }

  private static Entry attack(String prefix, Rise rise) {
    String shape =
        rise.seconds() == 0
            ? ""
            : rise.curve() == Curve.LINEAR
                ? ", linear"
                : ", exponential towards " + Reading.entered(rise.overshoot()) + " × the peak";
    return new Entry(prefix + "attack", "Attack", Reading.enteredTime(rise.seconds()) + shape);
  }

  private static Entry fall(String key, String name, EnvelopeEntry.FallEntry fall) {
    if (fall.seconds() == null) {
      return new Entry(key, name, NOT_YET);
    }
    String shape =
        fall.curve() == Curve.LINEAR
            ? ", linear"
            : ", exponential to " + Reading.enteredShare(fall.decaysTo());
    return new Entry(key, name, Reading.enteredTime(fall.seconds()) + shape);
  }

  private static String time(@Nullable Double seconds) {
    return seconds == null ? NOT_YET : Reading.enteredTime(seconds);
  }
}
