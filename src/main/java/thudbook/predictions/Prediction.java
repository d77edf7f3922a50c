package thudbook.predictions;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What will be heard of a sound.
 *
 * @param stages one entry per stage
 * @param strikes one entry per strike of a train; empty without one
 * @param curve null unless it was asked for
 */
public record Prediction(
    Metrics metrics,
    List<StageMetrics> stages,
    List<StrikeMetrics> strikes,
    SmallShape shape,
    @Nullable Curve curve) {
  public Prediction {
    stages = List.copyOf(stages);
    strikes = List.copyOf(strikes);
  }
}
