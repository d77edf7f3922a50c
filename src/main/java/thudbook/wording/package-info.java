/**
 * Numbers, names and sentences for people, on pages and on the command line alike. Takes seconds,
 * volts, hertz, decibels and shares, and writes them in the unit that suits their size. May use the
 * numerical core, {@code changes}, {@code equipment}, {@code recipes}, {@code library} and {@code
 * sessions}.
 */
@NullMarked
package thudbook.wording;

import org.jspecify.annotations.NullMarked;
