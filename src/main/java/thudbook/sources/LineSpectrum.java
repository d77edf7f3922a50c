package thudbook.sources;

import java.util.List;

/** A spectrum of single partials: an oscillator's harmonics, or a modulated carrier's sides. */
public final class LineSpectrum implements Spectrum {
  /** 20 dB in power: within it of the strongest, a partial is strong. */
  private static final double STRONG = 0.01;

  private final List<Partial> partials;
  private final double[] hertz;

  /** Shares of the whole power. */
  private final double[] share;

  private LineSpectrum(List<Partial> partials) {
    this.partials = partials;
    hertz = partials.stream().mapToDouble(Partial::hertz).toArray();
    share = partials.stream().mapToDouble(Partial::power).toArray();
    double power = 0;
    for (double each : share) {
      power += each;
    }
    for (int i = 0; i < share.length; i++) {
      share[i] /= power;
    }
  }

  /** The lines of an oscillator or of a modulated carrier. */
  static LineSpectrum of(Source source) {
    if (source instanceof Source.Oscillator oscillator) {
      return new LineSpectrum(new Harmonics(oscillator));
    }
    if (source instanceof Source.FrequencyModulation modulation) {
      return new LineSpectrum(SideFrequencies.of(modulation));
    }
    throw new IllegalArgumentException("no lines in " + source);
  }

  /** All partials, from the lowest frequency to the highest. */
  public List<Partial> partials() {
    return partials;
  }

  @Override
  public double passedShare(double... poleHertz) {
    Spectrum.checkPoles(poleHertz);
    if (poleHertz.length == 0) {
      return 1;
    }
    double sum = 0;
    for (int i = 0; i < hertz.length; i++) {
      sum += share[i] / divisor(hertz[i], poleHertz);
    }
    return Math.min(1, sum);
  }

  @Override
  public double centroidHertz(double... poleHertz) {
    Spectrum.checkPoles(poleHertz);
    double sum = 0;
    double moment = 0;
    for (int i = 0; i < hertz.length; i++) {
      double passed = share[i] / divisor(hertz[i], poleHertz);
      sum += passed;
      moment += passed * hertz[i];
    }
    return moment / sum;
  }

  private static double divisor(double hertz, double[] poleHertz) {
    double divisor = 1;
    for (double pole : poleHertz) {
      double ratio = hertz / pole;
      divisor *= 1 + ratio * ratio;
    }
    return divisor;
  }

  @Override
  public double lowestStrongHertz() {
    double strongest = 0;
    for (double each : share) {
      strongest = Math.max(strongest, each);
    }
    int i = 0;
    while (share[i] < STRONG * strongest) {
      i++;
    }
    return hertz[i];
  }
}
