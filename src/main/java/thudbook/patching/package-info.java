/**
 * What ties a recipe to the rack: its connections and their faults, where knobs stand and what they
 * come to, and what becomes of the sound within the tolerance of a knob. Knob positions in clock
 * times, degrees or shares of the sweep, values in SI units. May use the numerical core, {@code
 * changes}, {@code equipment} and {@code recipes}.
 */
@NullMarked
package thudbook.patching;

import org.jspecify.annotations.NullMarked;
