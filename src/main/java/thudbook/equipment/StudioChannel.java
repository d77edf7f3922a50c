package thudbook.equipment;

import org.jspecify.annotations.Nullable;
import thudbook.gates.Channel;

/**
 * A channel and where its numbers come from.
 *
 * @param measured null: entered by hand
 */
public record StudioChannel(Channel channel, @Nullable Measured measured) {}
