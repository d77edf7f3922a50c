package thudbook.yardstick;

import java.util.List;
import thudbook.gates.Cell;
import thudbook.gates.Cells;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.gates.Output;
import thudbook.gates.Response;
import thudbook.gates.Transfer;

/** The three channels of the worked examples: two cells, response both, exponents 1. */
public final class WorkedChannels {
  private WorkedChannels() {}

  /** The channel of a name: quick, long or plain. */
  public static Channel of(String name) {
    return switch (name) {
      case "quick" -> channel(name, 2.4, 1.2e-3, 18e-3, 120e-3, 0.12, 2, 40, 9000, -66, 1.1);
      case "long" -> channel(name, 2.3, 3.5e-3, 75e-3, 480e-3, 0.22, 2, 40, 7000, -62, 1.4);
      case "plain" -> channel(name, 0, 14e-3, 60e-3, 700e-3, 0.10, 1, 60, 5000, -48, 0.05);
      default -> throw new IllegalArgumentException("no such channel: " + name);
    };
  }

  private static Channel channel(
      String name,
      double threshold,
      double opening,
      double fast,
      double slow,
      double slowShare,
      int poles,
      double closedHertz,
      double openHertz,
      double leakDb,
      double bleed) {
    return new Channel(
        name,
        Transfer.between(threshold, 5),
        new Cells(
            opening, List.of(new Cell(1 - slowShare, fast, null), new Cell(slowShare, slow, null))),
        new Response.Both(new Level(leakDb, 1, 0), new Filter(poles, 1, closedHertz, openHertz, 1)),
        new Output(bleed, 10));
  }
}
