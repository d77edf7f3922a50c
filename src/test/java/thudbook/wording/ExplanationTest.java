package thudbook.wording;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.envelopes.Strikes;
import thudbook.gates.Cell;
import thudbook.gates.Cells;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.gates.Output;
import thudbook.gates.Response;
import thudbook.gates.Transfer;
import thudbook.predictions.Metric;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.sources.Source;

/** Property: what is said follows from the numbers, and from nothing else. */
class ExplanationTest {
  @Test
  void anEnvelopeBelowTheThresholdIsSaidToBeSilent() {
    assertThat(explained(sound(2, 0, null)))
        .contains("never rises above the threshold of 2.4\u00a0V")
        .doesNotContain("lets go")
        .doesNotContain("offset of");
  }

  @Test
  void anEnvelopeBelowTheCeilingOpensPartly() {
    assertThat(explained(sound(4, 0, null))).contains("stays below its ceiling of 5\u00a0V");
  }

  @Test
  void aHighEnvelopeHasAFlatTop() {
    Sound sound = sound(12, 0, null);
    Prediction prediction = Predictor.predict(sound);
    assertThat(explained(sound))
        .contains("opens fully")
        .contains(Reading.of(Metric.FLAT_TIME, prediction.metrics().get(Metric.FLAT_TIME)));
  }

  @Test
  void whatIsIgnoredAndTheThumpAreThoseOfTheMetrics() {
    Sound sound = sound(7, 0, null);
    Prediction prediction = Predictor.predict(sound);
    assertThat(explained(sound))
        .contains(
            "the last "
                + Reading.of(Metric.IGNORED_SHARE, prediction.metrics().get(Metric.IGNORED_SHARE))
                + " of the decay is ignored")
        .contains(
            "offset of "
                + Reading.of(Metric.THUMP_PEAK, prediction.metrics().get(Metric.THUMP_PEAK)));
  }

  @Test
  void aGateHeldOpenByItsOffsetNeverCloses() {
    assertThat(explained(sound(2, 3, null)))
        .contains("before the strike: the low-pass gate never closes")
        .contains("does not let go");
  }

  @Test
  void strikesThatRunTogetherAreNamed() {
    assertThat(explained(sound(7, 0, new Strikes.Every(0.03, 4, Strikes.Restart.LEVEL))))
        .contains("The strikes run into each other");
    assertThat(explained(sound(7, 0, new Strikes.Every(2, 4, Strikes.Restart.LEVEL))))
        .doesNotContain("run into");
  }

  private static String explained(Sound sound) {
    return String.join("\n", Explanation.of(sound, Predictor.predict(sound)));
  }

  private static Sound sound(double peak, double offset, @Nullable Strikes strikes) {
    Channel channel =
        new Channel(
            "quick",
            Transfer.between(2.4, 5),
            new Cells(0.0012, List.of(new Cell(0.88, 0.018, null), new Cell(0.12, 0.12, null))),
            new Response.Both(new Level(-66, 1, 0), new Filter(2, 1, 40, 9000, 1)),
            new Output(1.1, 10));
    return new Sound(
        new Source.Noise(Source.Colour.WHITE, 20, 20_000, 5),
        new Envelope.AttackHoldDecay(peak, Rise.linear(0.001), 0, Fall.exponential(0.2)),
        strikes,
        List.of(new Stage(channel, new Drive(1, offset, 12), null)),
        0);
  }
}
