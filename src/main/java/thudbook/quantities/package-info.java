/**
 * Checked numbers with units, read and written as people write them, and what is said when one is
 * refused. SI inside: seconds, hertz, volts, decibels, shares from 0 to 1. May use no other room.
 */
@NullMarked
package thudbook.quantities;

import org.jspecify.annotations.NullMarked;
