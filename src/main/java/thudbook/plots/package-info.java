/**
 * Drawings of a sound or a channel, with the numbers behind them as tables: shape, level, transfer,
 * release, the standard strike. Takes seconds, volts, hertz and decibels. May use the numerical
 * core, {@code equipment}, {@code wording} and {@code drawings}.
 */
@NullMarked
package thudbook.plots;

import org.jspecify.annotations.NullMarked;
