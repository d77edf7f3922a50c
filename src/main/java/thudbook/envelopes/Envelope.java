package thudbook.envelopes;

import java.util.List;
import thudbook.quantities.Check;

/** The shape that is sent towards the gate, struck at 0. */
public sealed interface Envelope {

  /** An envelope made of a level from 0 to 1 and its peak in volts. */
  sealed interface Struck extends Envelope {
    /** The voltage at level 1, −20 V to 20 V. */
    double peakVolts();
  }

  /**
   * 1 for a length, then 0.
   *
   * @param lengthSeconds 1 µs to 60 s
   */
  record Pulse(double peakVolts, double lengthSeconds) implements Struck {
    public Pulse {
      checkPeak(peakVolts);
      Check.positiveTime("length", lengthSeconds);
    }
  }

  /**
   * Attack, hold, decay to 0.
   *
   * @param holdSeconds 0, or 1 µs to 60 s
   */
  record AttackHoldDecay(double peakVolts, Rise attack, double holdSeconds, Fall decay)
      implements Struck {
    public AttackHoldDecay {
      checkPeak(peakVolts);
      Check.time("hold", holdSeconds);
    }
  }

  /**
   * Attack, decay to the sustain level, held until key up, then release to 0.
   *
   * @param sustain the level that the decay goes towards, 0 to 1
   * @param lengthSeconds key length, from the strike to key up, 1 µs to 60 s
   */
  record AttackDecaySustainRelease(
      double peakVolts, Rise attack, Fall decay, double sustain, double lengthSeconds, Fall release)
      implements Struck {
    public AttackDecaySustainRelease {
      checkPeak(peakVolts);
      Check.inRange("sustain", sustain, 0, 1);
      Check.positiveTime("length", lengthSeconds);
    }
  }

  /**
   * A sampled control voltage, linear between its samples; the first value holds before 0, the last
   * one after the end.
   *
   * @param samples 2 to 4,096, the first at time 0, times strictly rising
   */
  record Recorded(List<Sample> samples) implements Envelope {
    public Recorded {
      samples = List.copyOf(samples);
      Check.inRange("number of samples", samples.size(), 2, 4096);
      if (samples.get(0).seconds() != 0) {
        throw new IllegalArgumentException(
            "the first sample must be at 0 s, was at " + samples.get(0).seconds());
      }
      for (int i = 1; i < samples.size(); i++) {
        if (samples.get(i).seconds() <= samples.get(i - 1).seconds()) {
          throw new IllegalArgumentException(
              "times of samples must rise, found "
                  + samples.get(i).seconds()
                  + " after "
                  + samples.get(i - 1).seconds());
        }
      }
    }
  }

  /**
   * One sample of a recorded control voltage.
   *
   * @param seconds 0 to 60 s
   * @param volts −20 V to 20 V
   */
  record Sample(double seconds, double volts) {
    public Sample {
      Check.inRange("time of a sample in seconds", seconds, 0, 60);
      Check.inRange("sample in volts", volts, -20, 20);
    }
  }

  private static void checkPeak(double peakVolts) {
    Check.inRange("peak in volts", peakVolts, -20, 20);
  }
}
