package thudbook.sources;

import java.util.AbstractList;
import java.util.RandomAccess;
import thudbook.quantities.Frequency;

/**
 * The harmonics of an oscillator's wave of peak 1, up to 20 kHz: the textbook Fourier series, with
 * n the number of the harmonic. Harmonics that the wave lacks are left out.
 *
 * <ul>
 *   <li>sine: 1 at n = 1
 *   <li>triangle: (8/π²)(−1)^((n−1)/2)/n², n odd
 *   <li>sawtooth, rising through 0: (2/π)(−1)^(n+1)/n
 *   <li>square: (4/π)/n, n odd
 *   <li>pulse of duty d, high around a quarter of the cycle: (4/π) sin(πnd)/n · j^(1−n); at d = ½
 *       it is the square
 * </ul>
 *
 * <p>Each harmonic is computed when it is asked for: at 0.01 Hz there are two million.
 */
final class Harmonics extends AbstractList<Partial> implements RandomAccess {
  /** So that rounding loses no harmonic that lies on the limit. */
  private static final double ON_THE_LIMIT = 1 + 1e-9;

  private final Source.Wave wave;
  private final double fundamental;
  private final double duty;
  private final int step;
  private final int size;

  Harmonics(Source.Oscillator oscillator) {
    wave = oscillator.wave();
    fundamental = oscillator.frequency().hertz();
    duty = oscillator.duty();
    step = wave == Source.Wave.TRIANGLE || wave == Source.Wave.SQUARE ? 2 : 1;
    int highest = (int) (Frequency.HIGHEST_HERTZ * ON_THE_LIMIT / fundamental);
    size = wave == Source.Wave.SINE ? 1 : (highest + step - 1) / step;
  }

  @Override
  public int size() {
    return size;
  }

  @Override
  public Partial get(int index) {
    if (index < 0 || index >= size) {
      throw new IndexOutOfBoundsException("harmonic " + index + " of " + size);
    }
    int n = 1 + index * step;
    double hertz = n * fundamental;
    return switch (wave) {
      case SINE -> new Partial(hertz, 1, 0);
      case TRIANGLE -> new Partial(hertz, (n % 4 == 1 ? 8 : -8) / (Math.PI * Math.PI * n * n), 0);
      case SAWTOOTH -> new Partial(hertz, (n % 2 == 1 ? 2 : -2) / (Math.PI * n), 0);
      case SQUARE -> new Partial(hertz, 4 / (Math.PI * n), 0);
      case PULSE -> pulse(n, hertz);
    };
  }

  private Partial pulse(int n, double hertz) {
    double amplitude = 4 / (Math.PI * n) * Math.sin(Math.PI * n * duty);
    return switch (n % 4) {
      case 0 -> new Partial(hertz, 0, amplitude);
      case 1 -> new Partial(hertz, amplitude, 0);
      case 2 -> new Partial(hertz, 0, -amplitude);
      default -> new Partial(hertz, -amplitude, 0);
    };
  }
}
