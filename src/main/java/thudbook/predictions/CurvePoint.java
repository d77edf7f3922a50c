package thudbook.predictions;

import java.util.List;

/**
 * One point of a curve. Straight lines between points stay within the curve's error; two points of
 * equal time are a jump.
 *
 * @param seconds from the first strike; slightly negative before it
 * @param outputDb output level in dB relative to the open, unfiltered source
 * @param offsetVolts offset at the output, before coupling
 * @param brightnessHertz mean frequency of what passes
 * @param stages one entry per stage
 */
public record CurvePoint(
    double seconds,
    double outputDb,
    double offsetVolts,
    double brightnessHertz,
    List<AtStage> stages) {
  public CurvePoint {
    stages = List.copyOf(stages);
  }

  /**
   * The state of one stage.
   *
   * @param controlVolts its control voltage
   * @param openness 0 to 1
   * @param cutoffHertz infinite for a stage without a filter
   */
  public record AtStage(double controlVolts, double openness, double cutoffHertz) {}
}
