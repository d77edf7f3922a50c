/**
 * Sound sources as spectra: noise, oscillators and pairs of oscillators in linear frequency
 * modulation. Frequencies in hertz, levels in volts, powers relative. May use {@code quantities}.
 */
@NullMarked
package thudbook.sources;

import org.jspecify.annotations.NullMarked;
