/**
 * The control voltage over time, as exact pieces: envelopes, strikes and the drive that scales
 * them. Seconds and volts, the first strike at 0. May use {@code quantities}.
 */
@NullMarked
package thudbook.envelopes;

import org.jspecify.annotations.NullMarked;
