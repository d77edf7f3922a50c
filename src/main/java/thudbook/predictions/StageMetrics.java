package thudbook.predictions;

import org.jspecify.annotations.Nullable;

/**
 * What one stage does with its control voltage; null: absent.
 *
 * @param deadTime seconds from the strike until its control voltage first exceeds the threshold
 * @param flatTime seconds at or above the ceiling
 * @param letGo seconds until it falls through the threshold for good
 * @param ignoredShare share of the falling segment that is ignored, 0 to 1
 * @param peakOpenness the largest openness, 0 to 1
 */
public record StageMetrics(
    @Nullable Double deadTime,
    @Nullable Double flatTime,
    @Nullable Double letGo,
    @Nullable Double ignoredShare,
    double peakOpenness,
    Reach reach) {}
