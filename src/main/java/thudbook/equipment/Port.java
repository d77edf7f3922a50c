package thudbook.equipment;

import org.jspecify.annotations.Nullable;

/**
 * Where a cable goes into a module or comes out of it.
 *
 * @param name what is printed beside it, such as {@code control 1}; its own within its direction
 * @param carries what it gives or expects
 * @param channel the part of the module that it belongs to, such as {@code quick}; null: all of it.
 *     Signals pass inside a module between ports of one channel, and to and from ports of none. A
 *     port of a low-pass gate names the channel as the gate's document does.
 */
public record Port(String name, Direction direction, Carries carries, @Nullable String channel) {
  /** Whether a signal goes from this input to that output inside a module. */
  public boolean leadsTo(Port output) {
    return direction == Direction.IN
        && output.direction == Direction.OUT
        && (channel == null || output.channel == null || channel.equals(output.channel));
  }

  /** Which way a signal goes, seen from the module. */
  public enum Direction {
    OUT,
    IN
  }

  /**
   * What a port is made for. Any of them is a voltage: a wrong one sounds wrong, it breaks nothing.
   */
  public enum Carries {
    AUDIO,
    CONTROL_VOLTAGE,
    /** High for as long as a key is down. */
    GATE_SIGNAL,
    /** A short pulse that starts something. */
    TRIGGER;

    /** What it is called in sentences, with its article. */
    public String words() {
      return switch (this) {
        case AUDIO -> "audio";
        case CONTROL_VOLTAGE -> "a control voltage";
        case GATE_SIGNAL -> "a gate signal";
        case TRIGGER -> "a trigger";
      };
    }
  }
}
