package thudbook.sources;

/**
 * Noise between two frequencies: the density is f^c, c = 0 for white and −1 for pink, so that its
 * power is the moment of order c of {@link NoiseBand} and its centroid the moment above over it.
 */
final class NoiseSpectrum implements Spectrum {
  private final NoiseBand band;
  private final NoiseBand.Order density;
  private final NoiseBand.Order timesFrequency;
  private final double power;

  NoiseSpectrum(Source.Noise noise) {
    band = new NoiseBand(noise.fromHertz(), noise.toHertz());
    boolean white = noise.colour() == Source.Colour.WHITE;
    density = white ? NoiseBand.Order.ZEROTH : NoiseBand.Order.RECIPROCAL;
    timesFrequency = white ? NoiseBand.Order.FIRST : NoiseBand.Order.ZEROTH;
    power = band.moment(density);
  }

  @Override
  public double passedShare(double... poleHertz) {
    Spectrum.checkPoles(poleHertz);
    return Math.min(1, band.moment(density, poleHertz) / power);
  }

  @Override
  public double centroidHertz(double... poleHertz) {
    Spectrum.checkPoles(poleHertz);
    return band.moment(timesFrequency, poleHertz) / band.moment(density, poleHertz);
  }

  @Override
  public double lowestStrongHertz() {
    return Double.POSITIVE_INFINITY;
  }
}
