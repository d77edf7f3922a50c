package thudbook.sources;

/**
 * One sine in a spectrum, the imaginary part of c·e^{j2πft}: c = 1 is a sine, c = j a cosine of
 * peak 1.
 *
 * @param hertz its frequency, above 0
 * @param real real part of its complex amplitude c, relative to the source's level
 * @param imaginary imaginary part of c
 */
public record Partial(double hertz, double real, double imaginary) {
  public Partial {
    if (!(hertz > 0 && Double.isFinite(hertz + real + imaginary))) {
      throw new IllegalArgumentException(
          "a partial must have a positive frequency and a finite amplitude, was "
              + hertz
              + " Hz, "
              + real
              + " + "
              + imaginary
              + "j");
    }
  }

  /** Its power |c|², relative. */
  public double power() {
    return real * real + imaginary * imaginary;
  }
}
