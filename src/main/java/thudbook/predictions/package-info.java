/**
 * What will be heard of a {@link thudbook.predictions.Sound}: its metrics, its curve and its small
 * shape. Seconds, volts, hertz, decibels. May use {@code quantities}, {@code sources}, {@code
 * envelopes} and {@code gates}.
 */
@NullMarked
package thudbook.predictions;

import org.jspecify.annotations.NullMarked;
