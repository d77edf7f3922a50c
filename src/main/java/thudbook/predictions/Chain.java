package thudbook.predictions;

import java.util.List;
import thudbook.gates.Channel;
import thudbook.gates.Law;
import thudbook.sources.Spectrum;

/**
 * Stages in series: what their opennesses together do to a source. Levels and |H|² multiply,
 * offsets add up along the way. Reuses its arrays, so it belongs to one thread.
 */
final class Chain {
  private final Law[] laws;
  private final Spectrum spectrum;

  /** Poles of the first n stages, a fresh array per n because the spectrum takes them all. */
  private final double[][] poles;

  Chain(List<Channel> channels, Spectrum spectrum) {
    this.spectrum = spectrum;
    laws = channels.stream().map(Law::new).toArray(Law[]::new);
    poles = new double[laws.length + 1][];
    int count = 0;
    poles[0] = new double[0];
    for (int i = 0; i < laws.length; i++) {
      count += laws[i].poles();
      poles[i + 1] = new double[count];
    }
  }

  int stages() {
    return laws.length;
  }

  Law law(int stage) {
    return laws[stage];
  }

  /** The output level h behind the last stage. */
  double level(double[] openness) {
    return level(openness, laws.length);
  }

  /** The level behind the first so many stages, relative to the open, unfiltered source. */
  double level(double[] openness, int stages) {
    double level = 1;
    for (int i = 0; i < stages; i++) {
      level *= laws[i].level(openness[i]);
    }
    double[] hertz = polesAt(openness, stages);
    return hertz.length == 0 ? level : level * Math.sqrt(spectrum.passedShare(hertz));
  }

  /** The offset behind the first so many stages, in volts: d = d·a + b·y along the chain. */
  double offsetVolts(double[] openness, int stages) {
    double offset = 0;
    for (int i = 0; i < stages; i++) {
      offset = offset * laws[i].level(openness[i]) + laws[i].offsetVolts(openness[i]);
    }
    return offset;
  }

  /** The mean frequency of what passes the whole chain, in hertz. */
  double brightnessHertz(double[] openness) {
    return spectrum.centroidHertz(polesAt(openness, laws.length));
  }

  private double[] polesAt(double[] openness, int stages) {
    double[] hertz = poles[stages];
    int place = 0;
    for (int i = 0; i < stages; i++) {
      laws[i].poles(openness[i], hertz, place);
      place += laws[i].poles();
    }
    return hertz;
  }
}
