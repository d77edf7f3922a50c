package thudbook.gates;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Check;

/**
 * One channel of a gate: everything that its output follows from. Keys that the response does not
 * use are kept.
 *
 * @param name as printed or written on it
 * @param openingSeconds time constant with which cells open that have none of their own
 * @param release 1 to 4 cells whose shares sum to 1 (±1e-6)
 * @param poles of the filter, 1 or 2
 * @param spread ratio s of the two poles, f_c and s·f_c, 1 to 1000
 * @param cutoff null only where the response is amplitude
 * @param levelExponent γ, 0.5 to 4
 * @param cutoffExponent κ, 0.5 to 4
 * @param saturation k, 0 to 1e6; 0: a plain power
 * @param leakDb level of the closed gate, −140 dB to 0 dB; null only where the response is low-pass
 * @param bleedVolts offset at the output of the fully open gate, −20 V to 20 V, signed
 * @param outputRailVolts the output clips at ± this, 0.1 V to 20 V
 */
public record Channel(
    String name,
    Response response,
    Transfer transfer,
    double openingSeconds,
    List<Cell> release,
    int poles,
    double spread,
    @Nullable Cutoff cutoff,
    double levelExponent,
    double cutoffExponent,
    double saturation,
    @Nullable Double leakDb,
    double bleedVolts,
    double outputRailVolts) {
  public Channel {
    Check.positiveTime("opening", openingSeconds);
    release = List.copyOf(release);
    Check.inRange("number of cells", release.size(), 1, 4);
    Check.inRange(
        "sum of shares", release.stream().mapToDouble(Cell::share).sum(), 1 - 1e-6, 1 + 1e-6);
    Check.inRange("poles", poles, 1, 2);
    Check.inRange("spread", spread, 1, 1000);
    if (cutoff == null && response.movesCutoff()) {
      throw new IllegalArgumentException("cutoff is missing, and the response moves it");
    }
    Check.inRange("level exponent", levelExponent, 0.5, 4);
    Check.inRange("cutoff exponent", cutoffExponent, 0.5, 4);
    Check.inRange("saturation", saturation, 0, 1e6);
    if (leakDb != null) {
      Check.inRange("leak in dB", leakDb, -140, 0);
    } else if (response.movesLevel()) {
      throw new IllegalArgumentException("leak is missing, and the response moves the level");
    }
    Check.inRange("bleed in volts", bleedVolts, -20, 20);
    Check.inRange("outputRail in volts", outputRailVolts, 0.1, 20);
  }

  /**
   * The cutoff of the closed and of the open gate.
   *
   * @param closedHertz 0.01 Hz to 200 kHz
   * @param openHertz at least the closed one, to 200 kHz
   */
  public record Cutoff(double closedHertz, double openHertz) {
    public Cutoff {
      Check.inRange("closed cutoff in hertz", closedHertz, 0.01, 200_000);
      Check.inRange("open cutoff in hertz", openHertz, 0.01, 200_000);
      if (closedHertz > openHertz) {
        throw new IllegalArgumentException(
            "the closed cutoff must not be above the open one, was "
                + closedHertz
                + " and "
                + openHertz);
      }
    }
  }

  /** Level and cutoff over openness. */
  public Law law() {
    return new Law(this);
  }

  /** The level at an openness from 0 to 1: {@link Law#level}. */
  public double level(double openness) {
    return law().level(openness);
  }

  /** The cutoff at an openness from 0 to 1 in hertz: {@link Law#cutoffHertz}. */
  public double cutoffHertz(double openness) {
    return law().cutoffHertz(openness);
  }
}
