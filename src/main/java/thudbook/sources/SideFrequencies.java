package thudbook.sources;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.complex.Complex;

/**
 * The partials of a modulated carrier: its side frequencies f_c + n·f_m, those below 0 folded up.
 *
 * <p>The wave is the imaginary part of Σ c_n e^{j2π(f_c + n f_m)t}. A term of negative frequency is
 * the same wave at |f| with amplitude −conj(c_n) (Chowning 1973 for real c_n); one at 0 Hz is a
 * constant and vanishes. Partials that meet, nearer than 1e-9 relative, add with their signs if the
 * phase is locked; if it is free their powers add, and the partial's amplitude is the root of that.
 */
final class SideFrequencies {
  private static final double SAME = 1e-9;

  private SideFrequencies() {}

  /** The partials from the lowest frequency to the highest. */
  static List<Partial> of(Source.FrequencyModulation modulation) {
    double carrier = modulation.carrier().hertz();
    double modulator = modulation.modulatorHertz();
    SideAmplitudes amplitudes = SideAmplitudes.of(modulation.wave(), modulation.index());
    List<Partial> upright = new ArrayList<>();
    List<Partial> folded = new ArrayList<>();
    for (int n = -amplitudes.highest(); n <= amplitudes.highest(); n++) {
      double hertz = carrier + n * modulator;
      Complex c = amplitudes.at(n);
      if (hertz > SAME * carrier) {
        upright.add(new Partial(hertz, c.getReal(), c.getImaginary()));
      } else if (hertz < -SAME * carrier) {
        folded.add(new Partial(-hertz, -c.getReal(), c.getImaginary()));
      }
    }
    return merge(upright, folded, modulation.phase());
  }

  /** Merges the rising upright partials with the folded ones, whose frequencies fall. */
  private static List<Partial> merge(
      List<Partial> upright, List<Partial> folded, Source.Phase phase) {
    List<Partial> merged = new ArrayList<>(upright.size() + folded.size());
    int up = 0;
    int down = folded.size() - 1;
    while (up < upright.size() && down >= 0) {
      Partial one = upright.get(up);
      Partial other = folded.get(down);
      if (Math.abs(one.hertz() - other.hertz()) < SAME * one.hertz()) {
        merged.add(sum(one, other, phase));
        up++;
        down--;
      } else if (one.hertz() < other.hertz()) {
        merged.add(one);
        up++;
      } else {
        merged.add(other);
        down--;
      }
    }
    merged.addAll(upright.subList(up, upright.size()));
    for (; down >= 0; down--) {
      merged.add(folded.get(down));
    }
    return List.copyOf(merged);
  }

  private static Partial sum(Partial one, Partial other, Source.Phase phase) {
    return switch (phase) {
      case LOCKED ->
          new Partial(one.hertz(), one.real() + other.real(), one.imaginary() + other.imaginary());
      case FREE -> new Partial(one.hertz(), Math.sqrt(one.power() + other.power()), 0);
    };
  }
}
