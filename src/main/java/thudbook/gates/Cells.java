package thudbook.gates;

import java.util.List;
import thudbook.quantities.Check;

/**
 * The parts of a photoresistor's state, in parallel.
 *
 * @param openingSeconds time constant with which those open that have none of their own, 1 µs to 60
 *     s
 * @param list 1 to 4 cells whose shares sum to 1 (±1e-6)
 */
public record Cells(double openingSeconds, List<Cell> list) {
  public Cells {
    Check.positiveTime("opening", openingSeconds);
    list = List.copyOf(list);
    Check.inRange("number of cells", list.size(), 1, 4);
    Check.inRange(
        "sum of shares", list.stream().mapToDouble(Cell::share).sum(), 1 - 1e-6, 1 + 1e-6);
  }
}
