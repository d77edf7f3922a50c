package thudbook.recipes;

import org.jspecify.annotations.Nullable;
import thudbook.envelopes.Drive;

/**
 * A gate stage as far as it is written down.
 *
 * @param gate slug of a gate; null: not yet
 * @param channel name of one of its channels; null: not yet
 * @param envelope an envelope of its own; null: the recipe's
 */
public record StageEntry(
    @Nullable String gate,
    @Nullable String channel,
    Drive drive,
    @Nullable EnvelopeEntry envelope) {}
