package thudbook.patching;

import thudbook.predictions.Parameter;
import thudbook.predictions.Sound;
import thudbook.quantities.Dimension;

/**
 * The number of a sound that a knob turns, as the knob is marked: a modulator in hertz or as a
 * ratio, whichever the knob has; an exponential decay or release as the time to 1 %.
 */
public final class TurnedNumber {
  private final Sound sound;
  private final String address;
  private final double perMark;

  /**
   * The number that a setting names.
   *
   * @param pointer such as {@code envelope.decay}
   * @param marked the dimension of the knob
   */
  public TurnedNumber(Sound sound, String pointer, Dimension marked) {
    this.sound = sound;
    boolean ratio = pointer.equals("source.modulator") && marked == Dimension.RATIO;
    address = ratio ? "source.ratio" : pointer;
    // Documents name the fraction of a fall with the key of its time: decaysTo, releasesTo.
    perMark =
        Parameter.at(sound, pointer + "sTo")
            .map(fraction -> EnvelopeNumbers.toMark(fraction.value()))
            .orElse(1.0);
  }

  /**
   * The sound with the knob at a value; the same sound where the number makes no difference to it.
   *
   * @throws IllegalArgumentException if the sound can't have it
   */
  public Sound at(double value) {
    return Parameter.at(sound, address).map(number -> number.with(value / perMark)).orElse(sound);
  }
}
