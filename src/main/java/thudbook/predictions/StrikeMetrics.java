package thudbook.predictions;

import org.jspecify.annotations.Nullable;

/**
 * One strike of a train.
 *
 * @param peakDb its peak level in dB relative to the open, unfiltered source
 * @param separated whether the sound falls at least 10 dB below the lower of this peak and the next
 *     between them; null for the last strike
 */
public record StrikeMetrics(double peakDb, @Nullable Boolean separated) {}
