package thudbook.predictions;

import org.jspecify.annotations.Nullable;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.gates.Channel;

/**
 * One gate stage of a sound.
 *
 * @param envelope its own envelope; null: the sound's
 */
public record Stage(Channel channel, Drive drive, @Nullable Envelope envelope) {}
