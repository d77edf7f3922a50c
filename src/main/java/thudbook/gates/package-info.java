/**
 * The physical model of a percussion gate: control voltage in; openness, level, cutoff and offset
 * out, in closed form. May use {@code quantities} and {@code envelopes}.
 */
@NullMarked
package thudbook.gates;

import org.jspecify.annotations.NullMarked;
