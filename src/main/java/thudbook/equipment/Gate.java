package thudbook.equipment;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import thudbook.changes.Thing;

/**
 * A gate of the studio: one module with one or more channels, as its document says.
 *
 * @param slug its name in addresses and in recipes
 * @param caution what to be careful about wherever it appears
 * @param channels at least one, with names of their own
 * @param notes CommonMark
 */
public record Gate(
    UUID id, String slug, String title, Caution caution, List<StudioChannel> channels, String notes)
    implements Thing {
  public Gate {
    channels = List.copyOf(channels);
    if (channels.isEmpty()) {
      throw new IllegalArgumentException("a gate has at least one channel");
    }
    long names = channels.stream().map(c -> c.channel().name()).distinct().count();
    if (names != channels.size()) {
      throw new IllegalArgumentException("channels of one gate have names of their own");
    }
  }

  /** The channel of this name, if there is one. */
  public Optional<StudioChannel> channel(String name) {
    return channels.stream().filter(c -> c.channel().name().equals(name)).findFirst();
  }

  /** The same gate under another name in addresses. */
  public Gate withSlug(String other) {
    return new Gate(id, other, title, caution, channels, notes);
  }

  /** What to be careful about. */
  public enum Caution {
    NONE,
    /** High voltage and hot glass. */
    TUBE
  }
}
