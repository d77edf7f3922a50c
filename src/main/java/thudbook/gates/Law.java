package thudbook.gates;

import java.util.Optional;

/**
 * Level and cutoff of a channel over its openness, with everything that does not depend on the
 * openness worked out once.
 *
 * <p>Level: a(y) = ℓ + (1 − ℓ)·(1 + k)·y^γ/(1 + k·y^γ), ℓ = 10^(leak/20); 1 where the response does
 * not move it. Cutoff: f_c(y) = f_closed + (f_open − f_closed)·y^κ.
 */
public final class Law {
  private final boolean movesLevel;
  private final double leak;
  private final double saturation;
  private final double levelExponent;
  private final int poles;
  private final double spread;
  private final double closedHertz;
  private final double spanHertz;
  private final double cutoffExponent;
  private final double bleedVolts;

  /** The law of a channel. */
  public Law(Channel channel) {
    Optional<Level> level = channel.response().level();
    movesLevel = level.isPresent();
    leak = level.map(l -> Math.pow(10, l.leakDb() / 20)).orElse(1.0);
    saturation = level.map(Level::saturation).orElse(0.0);
    levelExponent = level.map(Level::exponent).orElse(1.0);
    Optional<Filter> filter = channel.response().filter();
    poles = filter.map(Filter::poles).orElse(0);
    spread = filter.map(Filter::spread).orElse(1.0);
    closedHertz = filter.map(Filter::closedHertz).orElse(Double.POSITIVE_INFINITY);
    spanHertz = filter.map(f -> f.openHertz() - f.closedHertz()).orElse(0.0);
    cutoffExponent = filter.map(Filter::exponent).orElse(1.0);
    bleedVolts = channel.output().bleedVolts();
  }

  /** The level at an openness from 0 to 1; 0 to 1. */
  public double level(double openness) {
    if (!movesLevel) {
      return 1;
    }
    double power = power(openness, levelExponent);
    return leak + (1 - leak) * (1 + saturation) * power / (1 + saturation * power);
  }

  /** The cutoff at an openness in hertz; infinite where there is no filter. */
  public double cutoffHertz(double openness) {
    return spanHertz == 0 ? closedHertz : closedHertz + spanHertz * power(openness, cutoffExponent);
  }

  /** The number of poles: 0 where there is no filter. */
  public int poles() {
    return poles;
  }

  /** Puts the poles at an openness, in hertz, into an array from a place on. */
  public void poles(double openness, double[] hertz, int place) {
    if (poles > 0) {
      hertz[place] = cutoffHertz(openness);
    }
    if (poles > 1) {
      hertz[place + 1] = spread * hertz[place];
    }
  }

  /** The offset that leaks into the output at an openness, in volts: bleed times openness. */
  public double offsetVolts(double openness) {
    return bleedVolts * openness;
  }

  private static double power(double openness, double exponent) {
    return exponent == 1 ? openness : Math.pow(openness, exponent);
  }
}
