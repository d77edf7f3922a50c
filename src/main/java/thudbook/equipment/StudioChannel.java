package thudbook.equipment;

import org.jspecify.annotations.Nullable;
import thudbook.gates.Channel;

/**
 * A channel and where its numbers come from.
 *
 * @param measured null: entered by hand
 * @param unused what is written down besides, and not used by the channel's response
 */
public record StudioChannel(Channel channel, @Nullable Measured measured, UnusedNumbers unused) {
  /** A channel of which only what it uses is written down. */
  public StudioChannel(Channel channel, @Nullable Measured measured) {
    this(channel, measured, UnusedNumbers.usual(channel.response().kind()));
  }
}
