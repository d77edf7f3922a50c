package thudbook.sources;

import java.util.EnumSet;
import thudbook.quantities.Check;
import thudbook.quantities.Frequency;

/** What sounds before the gate: the kind of source, its settings and its level. */
public sealed interface Source {
  /**
   * The level in volts, 1 mV to 20 V: the peak of the wave; of noise, four standard deviations. 5 V
   * is common practice, no source.
   */
  double levelVolts();

  /** The colours of noise. */
  enum Colour {
    /** Equal power per hertz. */
    WHITE,
    /** Equal power per octave: density falls as 1/f. */
    PINK
  }

  /** The waves of oscillators and modulators. */
  enum Wave {
    SINE,
    TRIANGLE,
    SAWTOOTH,
    SQUARE,
    /** A rectangle of any duty; oscillators only. */
    PULSE
  }

  /** How partials that fall on one frequency add. */
  enum Phase {
    /** With their signs, as from oscillators in step. */
    LOCKED,
    /** By power: the mean over phase, which unsynchronised oscillators show on average. */
    FREE
  }

  /**
   * Noise between two frequencies.
   *
   * @param fromHertz lower edge of the band, 0.01 Hz to 20 kHz, usually 20 Hz
   * @param toHertz upper edge of the band, above the lower one, usually 20 kHz
   */
  record Noise(Colour colour, double fromHertz, double toHertz, double levelVolts)
      implements Source {
    public Noise {
      Check.inRange("from in hertz", fromHertz, Frequency.LOWEST_HERTZ, Frequency.HIGHEST_HERTZ);
      Check.inRange("to in hertz", toHertz, Frequency.LOWEST_HERTZ, Frequency.HIGHEST_HERTZ);
      if (fromHertz >= toHertz) {
        throw new IllegalArgumentException(
            "from must be below to, was " + fromHertz + " and " + toHertz);
      }
      checkLevel(levelVolts);
    }
  }

  /**
   * One oscillator.
   *
   * @param duty share of the cycle that a pulse is high, 0.01 to 0.99; other waves ignore it
   */
  record Oscillator(Wave wave, Frequency frequency, double duty, double levelVolts)
      implements Source {
    public Oscillator {
      Check.inRange("duty", duty, 0.01, 0.99);
      checkLevel(levelVolts);
    }
  }

  /**
   * A carrier whose frequency is modulated linearly by a second oscillator.
   *
   * @param index peak frequency deviation over the modulator's frequency, 0 to 50
   */
  record FrequencyModulation(
      Frequency carrier,
      Modulator modulator,
      Wave wave,
      double index,
      Phase phase,
      double levelVolts)
      implements Source {
    public FrequencyModulation {
      if (!EnumSet.complementOf(EnumSet.of(Wave.PULSE)).contains(wave)) {
        throw new IllegalArgumentException("a modulator's wave can't be " + wave);
      }
      Check.inRange("index", index, 0, 50);
      Check.inRange(
          "modulator in hertz",
          modulator.hertz(carrier.hertz()),
          Frequency.LOWEST_HERTZ,
          Frequency.HIGHEST_HERTZ);
      checkLevel(levelVolts);
    }

    /** The modulator's frequency in hertz. */
    public double modulatorHertz() {
      return modulator.hertz(carrier.hertz());
    }

    /** The same pair with free phase, so that nothing jumps where it is tuned. */
    public FrequencyModulation free() {
      return new FrequencyModulation(carrier, modulator, wave, index, Phase.FREE, levelVolts);
    }
  }

  private static void checkLevel(double levelVolts) {
    Check.inRange("level in volts", levelVolts, 1e-3, 20);
  }
}
