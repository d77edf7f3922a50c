package thudbook.changes;

import java.util.UUID;

/**
 * A thing on its way into the bin or out of it.
 *
 * @param version the version that is meant
 */
public record Binning(Noun<?> noun, UUID id, long version, boolean intoBin) {}
