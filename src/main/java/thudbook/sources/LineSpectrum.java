package thudbook.sources;

import java.util.List;

/** A spectrum of single partials: an oscillator's harmonics, or a modulated carrier's sides. */
public final class LineSpectrum implements Spectrum {
  /** 20 dB in power, and a hair: within it of the strongest, a partial is strong. */
  private static final double STRONG = 0.01 * (1 - 1e-12);

  private final List<Partial> partials;
  private final double lowestStrongHertz;

  /** The lines that are summed; many partials are condensed to few. */
  private final double[] hertz;

  /** Their shares of the whole power. */
  private final double[] share;

  private LineSpectrum(List<Partial> partials) {
    this.partials = partials;
    lowestStrongHertz = lowestStrong(partials);
    LineRule rule = new LineRule(partials);
    hertz = rule.hertz();
    share = rule.power();
    double power = 0;
    for (double each : share) {
      power += each;
    }
    for (int i = 0; i < share.length; i++) {
      share[i] /= power;
    }
  }

  /** The lines of an oscillator. */
  static LineSpectrum of(Source.Oscillator oscillator) {
    return new LineSpectrum(new Harmonics(oscillator));
  }

  /** The lines of a modulated carrier. */
  static LineSpectrum of(Source.FrequencyModulation modulation) {
    return new LineSpectrum(SideFrequencies.of(modulation));
  }

  private static double lowestStrong(List<Partial> partials) {
    double strongest = 0;
    for (Partial partial : partials) {
      strongest = Math.max(strongest, partial.power());
    }
    int i = 0;
    while (partials.get(i).power() < STRONG * strongest) {
      i++;
    }
    return partials.get(i).hertz();
  }

  /**
   * All partials, from the lowest frequency to the highest. Of an oscillator each is computed when
   * it is asked for.
   */
  public List<Partial> partials() {
    return partials;
  }

  @Override
  public double passedShare(double... poleHertz) {
    Spectrum.checkPoles(poleHertz);
    return switch (poleHertz.length) {
      case 0 -> 1;
      case 1 -> Math.min(1, share(inverseSquare(poleHertz[0]), 0));
      case 2 -> Math.min(1, share(inverseSquare(poleHertz[0]), inverseSquare(poleHertz[1])));
      case 3, 4 -> Math.min(1, shareOfFour(Spectrum.inverseSquares(poleHertz)));
      default -> Math.min(1, shareOfMany(poleHertz));
    };
  }

  /** One and two poles are what most chains have: one division for each line. */
  private double share(double inverseSquare, double otherInverseSquare) {
    double sum = 0;
    for (int i = 0; i < hertz.length; i++) {
      double square = hertz[i] * hertz[i];
      sum += share[i] / ((1 + square * inverseSquare) * (1 + square * otherInverseSquare));
    }
    return sum;
  }

  /** Chains of two stages, or of one with a coupling, have three or four. */
  private double shareOfFour(double... inverseSquares) {
    double a = inverseSquares[0];
    double b = inverseSquares[1];
    double c = inverseSquares[2];
    double d = inverseSquares.length == 4 ? inverseSquares[3] : 0;
    double sum = 0;
    for (int i = 0; i < hertz.length; i++) {
      double square = hertz[i] * hertz[i];
      sum += share[i] / ((1 + square * a) * (1 + square * b) * (1 + square * c) * (1 + square * d));
    }
    return sum;
  }

  private double shareOfMany(double... poleHertz) {
    double[] inverseSquares = Spectrum.inverseSquares(poleHertz);
    double sum = 0;
    for (int i = 0; i < hertz.length; i++) {
      sum += share[i] / divisor(hertz[i], inverseSquares);
    }
    return sum;
  }

  @Override
  public double centroidHertz(double... poleHertz) {
    Spectrum.checkPoles(poleHertz);
    double[] inverseSquares = Spectrum.inverseSquares(poleHertz);
    double sum = 0;
    double moment = 0;
    for (int i = 0; i < hertz.length; i++) {
      double passed = share[i] / divisor(hertz[i], inverseSquares);
      sum += passed;
      moment += passed * hertz[i];
    }
    return moment / sum;
  }

  private static double inverseSquare(double poleHertz) {
    return 1 / (poleHertz * poleHertz);
  }

  private static double divisor(double hertz, double... inverseSquares) {
    double square = hertz * hertz;
    double divisor = 1;
    for (double inverseSquare : inverseSquares) {
      divisor *= 1 + square * inverseSquare;
    }
    return divisor;
  }

  @Override
  public double lowestStrongHertz() {
    return lowestStrongHertz;
  }
}
