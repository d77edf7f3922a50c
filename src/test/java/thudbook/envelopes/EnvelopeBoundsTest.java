package thudbook.envelopes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

/**
 * Property: the ends of every range of envelopes, drives and strikes are taken, what lies beyond is
 * refused.
 */
class EnvelopeBoundsTest {
  private static final Strikes.Restart LEVEL = Strikes.Restart.LEVEL;

  private static void refused(String words, ThrowingCallable call) {
    assertThatIllegalArgumentException().isThrownBy(call).withMessageContaining(words);
  }

  @Test
  void peaksAndLengths() {
    for (double peak : new double[] {-20, 20}) {
      assertThat(new Envelope.Pulse(peak, 60).peakVolts()).isEqualTo(peak);
    }
    Rise rise = Rise.linear(0);
    Fall fall = Fall.exponential(1);
    for (double peak : new double[] {-20.1, 20.1, Double.NaN}) {
      refused("peak", () -> new Envelope.Pulse(peak, 1));
      refused("peak", () -> new Envelope.AttackHoldDecay(peak, rise, 0, fall));
      refused("peak", () -> new Envelope.AttackDecaySustainRelease(peak, rise, fall, 0, 1, fall));
    }
    refused("length", () -> new Envelope.Pulse(1, 0));
    refused("length", () -> new Envelope.AttackDecaySustainRelease(1, rise, fall, 0, 0, fall));
    refused("sustain", () -> new Envelope.AttackDecaySustainRelease(1, rise, fall, -0.1, 1, fall));
    refused("sustain", () -> new Envelope.AttackDecaySustainRelease(1, rise, fall, 1.1, 1, fall));
    refused("hold", () -> new Envelope.AttackHoldDecay(1, rise, 61, fall));
  }

  @Test
  void risesAndFalls() {
    assertThat(new Rise(60, Curve.EXPONENTIAL, 10).seconds()).isEqualTo(60);
    assertThat(new Rise(0, Curve.EXPONENTIAL, 1.001).overshoot()).isEqualTo(1.001);
    refused("attack", () -> new Rise(60.1, Curve.LINEAR, 1.3));
    refused("overshoot", () -> new Rise(1, Curve.LINEAR, 1));
    refused("overshoot", () -> new Rise(1, Curve.LINEAR, 10.1));
    assertThat(new Fall(60, Curve.LINEAR, 0.9).decaysTo()).isEqualTo(0.9);
    refused("decay", () -> new Fall(0, Curve.LINEAR, 0.5));
    refused("decaysTo", () -> new Fall(1, Curve.LINEAR, 0.91));
    refused("decaysTo", () -> new Fall(1, Curve.LINEAR, 0.9e-4));
    assertThat(Fall.exponential(1).timeConstantSeconds())
        .isCloseTo(1 / 4.605170185988092, within(1e-15));
    assertThat(Fall.exponential(2).decaysTo()).isEqualTo(0.01);
    assertThat(Fall.exponential(2).curve()).isEqualTo(Curve.EXPONENTIAL);
    assertThat(Rise.linear(2)).isEqualTo(new Rise(2, Curve.LINEAR, 1.3));
  }

  @Test
  void drives() {
    Drive drive = new Drive(-2, 20, 20);
    assertThat(drive.apply(1)).isEqualTo(18);
    assertThat(drive.apply(20)).isEqualTo(-20);
    assertThat(drive.apply(-1)).isEqualTo(20);
    refused("gain", () -> new Drive(2.1, 0, 12));
    refused("offset", () -> new Drive(1, -20.1, 12));
    refused("controlRail", () -> new Drive(1, 0, 0.09));
    refused("controlRail", () -> new Drive(1, 0, 20.1));
    assertThat(Drive.UNITY.apply(13)).isEqualTo(12);
    assertThat(Drive.UNITY.apply(3)).isEqualTo(3);
  }

  @Test
  void samples() {
    assertThat(new Envelope.Sample(60, -20).volts()).isEqualTo(-20);
    refused("time", () -> new Envelope.Sample(60.1, 0));
    refused("volts", () -> new Envelope.Sample(0, 20.1));
    Envelope.Sample zero = new Envelope.Sample(0, 0);
    Envelope.Sample one = new Envelope.Sample(1, 0);
    refused("number of samples", () -> new Envelope.Recorded(List.of(zero)));
    refused("first sample", () -> new Envelope.Recorded(List.of(one, new Envelope.Sample(2, 0))));
    refused("rise", () -> new Envelope.Recorded(List.of(zero, one, one)));
    List<Envelope.Sample> many = new ArrayList<>();
    for (int i = 0; i < 4096; i++) {
      many.add(new Envelope.Sample(i / 4096.0, 1));
    }
    assertThat(new Envelope.Recorded(many).samples()).hasSize(4096);
    many.add(new Envelope.Sample(1, 1));
    refused("number of samples", () -> new Envelope.Recorded(many));
  }

  /** 120 quarter notes a minute are two a second; an eighth is half of one. */
  @Test
  void strikes() {
    assertThat(new Strikes.Every(0.5, 3, LEVEL).seconds()).containsExactly(0.0, 0.5, 1.0);
    assertThat(new Strikes.Tempo(120, 1, 4, 3, LEVEL).seconds()).containsExactly(0.0, 0.5, 1.0);
    assertThat(new Strikes.Tempo(120, 3, 8, 2, LEVEL).seconds()).containsExactly(0.0, 0.75);
    assertThat(new Strikes.At(List.of(0.0, 60.0), LEVEL).seconds()).containsExactly(0.0, 60.0);
    assertThat(new Strikes.Every(1, 64, LEVEL).seconds()).hasSize(64);
    refused("count", () -> new Strikes.Every(1, 65, LEVEL));
    refused("every", () -> new Strikes.Every(0, 1, LEVEL));
    refused("tempo", () -> new Strikes.Tempo(9, 1, 4, 1, LEVEL));
    refused("numerator", () -> new Strikes.Tempo(120, 65, 4, 1, LEVEL));
    refused("denominator", () -> new Strikes.Tempo(120, 1, 129, 1, LEVEL));
    refused("count", () -> new Strikes.Tempo(120, 1, 4, 0, LEVEL));
    refused("distance", () -> new Strikes.Tempo(10, 64, 1, 1, LEVEL));
    refused("number of strikes", () -> new Strikes.At(List.of(), LEVEL));
    refused("first strike", () -> new Strikes.At(List.of(0.1), LEVEL));
    refused("rise", () -> new Strikes.At(List.of(0.0, 1.0, 1.0), LEVEL));
    refused("time of a strike", () -> new Strikes.At(List.of(0.0, 60.1), LEVEL));
  }
}
