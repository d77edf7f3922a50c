package thudbook.pages;

import java.util.List;
import thudbook.gates.Channel;

/**
 * The plots of a gate's channel. Each is one safe SVG for any width, with its numbers as a table.
 */
public final class ChannelPlots {
  private ChannelPlots() {}

  /** Openness over control voltage. */
  public static String transfer(Channel channel) {
    return "<svg></svg>";
  }

  /** The knots of the transfer. */
  public static DataTable transferTable(Channel channel) {
    return new DataTable("Transfer", List.of("Control voltage"), List.of());
  }

  /** Level and cutoff over openness, as far as the response moves them. */
  public static String levelAndCutoff(Channel channel) {
    return "<svg></svg>";
  }

  /** Level and cutoff at some opennesses. */
  public static DataTable levelAndCutoffTable(Channel channel) {
    return new DataTable("Level and cutoff", List.of("Openness"), List.of());
  }

  /** How the channel falls from fully open when it is told to close at once. */
  public static String release(Channel channel) {
    return "<svg></svg>";
  }

  /** Openness, level and cutoff at some times after closing. */
  public static DataTable releaseTable(Channel channel) {
    return new DataTable("Natural release", List.of("Time"), List.of());
  }
}
