package thudbook.plots;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.sources.Source;
import thudbook.yardstick.WorkedChannels;

/** Property: nothing is told of a level behind the end of its curve that is not known. */
class LevelsPlotTest {
  @Test
  void whatHasFallenOutOfItsCurveIsOnlyToldToBeLower() {
    LevelsPlot plot =
        new LevelsPlot(
            "two",
            List.of(
                LevelsPlot.Line.of("A", "short", 1, pulse(0.002, 5)),
                LevelsPlot.Line.of("B", "long", 2, pulse(2, 5))));
    List<List<String>> rows = plot.table().rows();
    List<String> last = rows.get(rows.size() - 1);
    assertThat(last.get(0)).isEqualTo("2\u00a0s");
    assertThat(last.get(1)).matches("below −6[0-9]\\.[0-9]\u00a0dB");
    assertThat(last.get(2)).doesNotContain("below");
    assertThat(rows.get(0).get(1)).doesNotContain("below");
  }

  private static Sound pulse(double lengthSeconds, double volts) {
    return new Sound(
        new Source.Noise(Source.Colour.WHITE, 20, 20_000, 5),
        new Envelope.Pulse(volts, lengthSeconds),
        null,
        List.of(new Stage(WorkedChannels.of("quick"), Drive.UNITY, null)),
        0);
  }
}
