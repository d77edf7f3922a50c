package thudbook.gates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import thudbook.gates.Transfer.Knot;
import thudbook.yardstick.ChannelBuilder;

/**
 * Property: level and cutoff in simple cases (a divider of a resistor and a lamp's conductance; a
 * square), their ends, and the ends of all ranges.
 */
class LawTest {
  private static ChannelBuilder amplifier() {
    return ChannelBuilder.amplifier();
  }

  @Test
  void aLevelGoesFromTheLeakToOne() {
    for (double k : new double[] {0, 1, 300}) {
      for (double exponent : new double[] {0.5, 1, 4}) {
        Channel channel = amplifier().leak(-60.0).bent(exponent, 1, k).build();
        assertThat(channel.level(0)).isEqualTo(1e-3, within(1e-15));
        assertThat(channel.level(1)).isEqualTo(1, within(1e-15));
      }
    }
  }

  @Test
  void aLevelIsADividerOfAPower() {
    assertThat(amplifier().leak(-20.0).build().level(0.5))
        .isEqualTo(0.1 + 0.9 * 0.5, within(1e-15));
    assertThat(amplifier().leak(-20.0).bent(2, 1, 0).build().level(0.5))
        .isEqualTo(0.1 + 0.9 * 0.25, within(1e-15));
    // k = 1: 2y/(1 + y) is 2/3 at one half.
    assertThat(amplifier().leak(-20.0).bent(1, 1, 1).build().level(0.5))
        .isEqualTo(0.1 + 0.9 * 2 / 3, within(1e-15));
    // k = 3 behind a square: 4·0.25/(1 + 3·0.25) = 4/7.
    assertThat(amplifier().leak(-20.0).bent(2, 1, 3).build().level(0.5))
        .isEqualTo(0.1 + 0.9 * 4 / 7, within(1e-15));
  }

  @Test
  void aCutoffGoesFromTheClosedOneToTheOpenOne() {
    Channel channel = amplifier().filter(2, 20, 40, 9000).bent(1, 2, 0).build();
    assertThat(channel.cutoffHertz(0)).isEqualTo(40);
    assertThat(channel.cutoffHertz(1)).isEqualTo(9000);
    assertThat(channel.cutoffHertz(0.5)).isEqualTo(40 + 8960 * 0.25, within(1e-9));
    double[] hertz = new double[3];
    channel.law().poles(0.5, hertz, 1);
    assertThat(hertz).containsExactly(0, 2280, 45_600);
    assertThat(channel.law().poles()).isEqualTo(2);
    assertThat(amplifier().filter(1, 1, 50, 50).build().cutoffHertz(0.3)).isEqualTo(50);
    double[] one = new double[2];
    amplifier().filter(1, 20, 50, 50).build().law().poles(0.5, one, 0);
    assertThat(one).containsExactly(50, 0);
  }

  @Test
  void responsesMoveWhatTheySay() {
    Channel lowPass = amplifier().filter(1, 1, 40, 9000).response(Response.Kind.LOW_PASS).build();
    assertThat(lowPass.level(0)).isEqualTo(1);
    assertThat(lowPass.level(0.3)).isEqualTo(1);
    assertThat(lowPass.cutoffHertz(1)).isEqualTo(9000);
    assertThat(lowPass.law().poles()).isEqualTo(1);
    Channel level = amplifier().filter(1, 1, 40, 9000).response(Response.Kind.AMPLITUDE).build();
    assertThat(level.cutoffHertz(0.5)).isInfinite();
    assertThat(level.law().poles()).isZero();
    double[] untouched = {7};
    level.law().poles(0.5, untouched, 0);
    assertThat(untouched).containsExactly(7);
    assertThat(Response.Kind.BOTH.movesLevel()).isTrue();
    assertThat(Response.Kind.BOTH.movesCutoff()).isTrue();
    assertThat(Response.Kind.AMPLITUDE.movesCutoff()).isFalse();
    assertThat(Response.Kind.LOW_PASS.movesLevel()).isFalse();
  }

  @Test
  void theOffsetIsBleedTimesOpenness() {
    assertThat(amplifier().output(-2, 10).build().law().offsetVolts(0.25)).isEqualTo(-0.5);
  }

  private static void refused(String words, ThrowingCallable call) {
    assertThatIllegalArgumentException().isThrownBy(call).withMessageContaining(words);
  }

  @Test
  void theEndsOfEveryRangeAreTaken() {
    amplifier().times(1e-6, 60).bent(0.5, 4, 1e6).leak(-140.0).output(-20, 0.1).build();
    amplifier().times(60, 1e-6).bent(4, 0.5, 0).leak(0.0).output(20, 20).build();
    amplifier().filter(1, 1000, 0.01, 200_000).build();
    amplifier().filter(2, 1, 1, 1).response(Response.Kind.LOW_PASS).build();
    refused("opening", () -> amplifier().times(0, 1).build());
    refused("release", () -> new Cell(1, 0, null));
    refused("opening", () -> new Cell(1, 1, 61.0));
    refused("share", () -> new Cell(0, 1, null));
    refused("share", () -> new Cell(1.1, 1, null));
    refused("spread", () -> amplifier().filter(1, 0.9, 1, 1).build());
    refused("spread", () -> amplifier().filter(1, 1001, 1, 1).build());
    refused("poles", () -> amplifier().filter(3, 1, 1, 1).build());
    refused("poles", () -> amplifier().filter(0, 1, 1, 1).build());
    refused("level exponent", () -> amplifier().bent(0.49, 1, 0).build());
    refused("cutoff exponent", () -> amplifier().filter(1, 1, 1, 2).bent(1, 4.1, 0).build());
    refused("saturation", () -> amplifier().bent(1, 1, -1).build());
    refused("leak", () -> amplifier().leak(-140.1).build());
    refused("leak", () -> amplifier().leak(0.1).build());
    refused("bleed", () -> amplifier().output(20.1, 10).build());
    refused("outputRail", () -> amplifier().output(0, 20.1).build());
    refused("closed cutoff", () -> new Filter(1, 1, 0.009, 1, 1));
    refused("open cutoff", () -> new Filter(1, 1, 1, 200_001, 1));
    refused("must not be above", () -> new Filter(1, 1, 2, 1, 1));
    assertThat(new Filter(1, 1, 2, 2, 1).openHertz()).isEqualTo(2);
  }

  @Test
  void sharesSumToOne() {
    Cell half = new Cell(0.5, 1, null);
    Cell quarter = new Cell(0.25, 1, null);
    amplifier().cells(List.of(quarter, quarter, quarter, quarter)).build();
    amplifier().cells(List.of(half, new Cell(0.5 + 0.9e-6, 1, null))).build();
    amplifier().cells(List.of(half, new Cell(0.5 - 0.9e-6, 1, null))).build();
    refused("sum", () -> amplifier().cells(List.of(half, quarter)).build());
    refused("sum", () -> amplifier().cells(List.of(half, half, quarter)).build());
    refused("sum", () -> amplifier().cells(List.of(half, new Cell(0.5 + 1.1e-6, 1, null))).build());
    refused("cells", () -> amplifier().cells(List.of()).build());
    Cell fifth = new Cell(0.2, 1, null);
    refused("cells", () -> amplifier().cells(List.of(fifth, fifth, fifth, fifth, fifth)).build());
  }

  @Test
  void knotsRiseByAMillivoltAndNeverFall() {
    assertThat(Transfer.between(2, 2.001).ceilingVolts()).isEqualTo(2.001);
    assertThat(Transfer.between(2, 5).thresholdVolts()).isEqualTo(2);
    refused("1 mV", () -> Transfer.between(2, 2.0009));
    refused("1 mV", () -> Transfer.between(2, 1));
    refused("volts", () -> new Knot(20.1, 0));
    refused("openness", () -> new Knot(0, 1.1));
    Knot shut = new Knot(0, 0);
    Knot open = new Knot(5, 1);
    refused("number of knots", () -> new Transfer(List.of(shut)));
    refused(
        "must not fall",
        () -> new Transfer(List.of(shut, new Knot(1, 0.5), new Knot(2, 0.4), open)));
    refused("first knot", () -> new Transfer(List.of(new Knot(0, 0.1), open)));
    refused("last one", () -> new Transfer(List.of(shut, new Knot(5, 0.9))));
    assertThat(new Transfer(List.of(shut, new Knot(1, 0.5), new Knot(2, 0.5), open)).knots())
        .hasSize(4);
    List<Knot> many = new ArrayList<>();
    for (int i = 0; i < 64; i++) {
      many.add(new Knot(i * 0.1, i / 63.0));
    }
    assertThat(new Transfer(many).knots()).hasSize(64);
    many.add(new Knot(7, 1));
    refused("number of knots", () -> new Transfer(many));
  }
}
