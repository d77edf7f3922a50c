/**
 * Sound sources as spectra: noise, oscillators and pairs of oscillators in linear frequency
 * modulation. Frequencies in hertz, levels in volts, powers relative. May use {@code quantities}.
 *
 * <p>{@link thudbook.sources.Spectrum#of} turns a source into what a filter is asked about: the
 * share of its power behind some poles, and the brightness of that. Noise is integrated in closed
 * form; partials are summed.
 */
@NullMarked
package thudbook.sources;

import org.jspecify.annotations.NullMarked;
