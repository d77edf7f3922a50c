package thudbook.envelopes;

import java.util.List;
import java.util.stream.IntStream;
import thudbook.quantities.Check;

/** When the envelopes are struck, at most 64 times, the first time at 0. */
public sealed interface Strikes {
  /** The largest number of strikes. */
  int MOST = 64;

  /** What a strike does to an envelope that is still falling. */
  Restart restart();

  /** The times of the strikes in seconds, rising from 0. */
  List<Double> seconds();

  /** Where a restarted attack begins. */
  enum Restart {
    /** From the level reached, at the attack's own rate, as analog generators commonly do. */
    LEVEL,
    /** From 0. */
    ZERO
  }

  /**
   * Strikes at a fixed distance.
   *
   * @param everySeconds 1 µs to 60 s
   * @param count 1 to 64
   */
  record Every(double everySeconds, int count, Restart restart) implements Strikes {
    public Every {
      Check.positiveTime("every", everySeconds);
      Check.inRange("count", count, 1, MOST);
    }

    @Override
    public List<Double> seconds() {
      return spaced(everySeconds, count);
    }
  }

  /**
   * Strikes on notes of a tempo: every = 240/bpm · n/d seconds.
   *
   * @param beatsPerMinute quarter notes per minute, 10 to 999
   * @param numerator n of the note n/d, 1 to 64
   * @param denominator d of the note n/d, 1 to 128
   * @param count 1 to 64
   */
  record Tempo(double beatsPerMinute, int numerator, int denominator, int count, Restart restart)
      implements Strikes {
    public Tempo {
      Check.inRange("tempo", beatsPerMinute, 10, 999);
      Check.inRange("numerator of the note", numerator, 1, 64);
      Check.inRange("denominator of the note", denominator, 1, 128);
      Check.inRange("count", count, 1, MOST);
      Check.positiveTime("distance of strikes", 240 / beatsPerMinute * numerator / denominator);
    }

    @Override
    public List<Double> seconds() {
      return spaced(240 / beatsPerMinute * numerator / denominator, count);
    }
  }

  /**
   * Strikes at listed times: flams and uneven rolls.
   *
   * @param seconds 1 to 64 times, the first 0, strictly rising, at most 60 s
   */
  record At(List<Double> seconds, Restart restart) implements Strikes {
    public At {
      seconds = List.copyOf(seconds);
      Check.inRange("number of strikes", seconds.size(), 1, MOST);
      if (seconds.get(0) != 0) {
        throw new IllegalArgumentException("the first strike is at 0, was " + seconds.get(0));
      }
      for (int i = 1; i < seconds.size(); i++) {
        Check.inRange("time of a strike in seconds", seconds.get(i), 0, 60);
        if (seconds.get(i) <= seconds.get(i - 1)) {
          throw new IllegalArgumentException(
              "times of strikes must rise, found "
                  + seconds.get(i)
                  + " after "
                  + seconds.get(i - 1));
        }
      }
    }
  }

  private static List<Double> spaced(double everySeconds, int count) {
    return IntStream.range(0, count).mapToObj(k -> k * everySeconds).toList();
  }
}
