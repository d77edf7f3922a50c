package thudbook.equipment;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * How a channel's numbers were found.
 *
 * @param warmUpMinutes how long the gate had been on, 0 to 600; null: not said
 */
public record Measured(How how, LocalDate date, @Nullable Double warmUpMinutes) {
  /** The ways to find a channel's numbers. */
  public enum How {
    SWEEP,
    RECORDING,
    DATA_SHEET
  }
}
