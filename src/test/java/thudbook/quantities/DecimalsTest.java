package thudbook.quantities;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Property: the shortest number reads back, and no shorter one does. The cases where the nearest is
 * not the shortest lie at powers of two (Steele and White, PLDI 1990, from memory).
 */
class DecimalsTest {
  @ParameterizedTest
  @CsvSource({
    "0.1, 0.1",
    "100, 100",
    "-0.0, 0",
    "0.0021, 0.0021",
    "1e-12, 0.000000000001",
    "1e-13, 1e-13",
    "2e23, 2e23",
    "2e-3, 0.002",
    "4.9e-324, 5e-324",
    "1.7976931348623157e308, 1.7976931348623157e308",
    "123456789012345680000, 123456789012345680000",
    "9007199254740993, 9007199254740992",
    "-66, -66"
  })
  void writesTheFewestDigits(double value, String text) {
    assertThat(Decimals.text(value, 0)).isEqualTo(text);
  }

  @Tag("long")
  @Test
  void readsBackAndNoShorterNumberDoes() {
    Random random = new Random(20261002);
    for (int i = 0; i < 20_000; i++) {
      double value = value(random, i);
      BigDecimal shortest = Decimals.shortest(value);
      assertThat(shortest.doubleValue()).isEqualTo(value);
      int digits = shortest.precision();
      if (digits > 1) {
        assertThat(anyReadsBack(value, digits - 1)).as("%s", value).isFalse();
      }
    }
  }

  private static double value(Random random, int i) {
    double value =
        switch (i % 4) {
          case 0 -> Double.longBitsToDouble(random.nextLong());
          case 1 -> Math.scalb(1.0, random.nextInt(2000) - 1000);
          case 2 -> random.nextInt(1_000_000) / 1000.0;
          default -> random.nextDouble() * 60;
        };
    return Double.isFinite(value) && value != 0 ? value : 1.5;
  }

  /** Whether one of the two numbers of so many digits around a value reads back as it. */
  static boolean anyReadsBack(double value, int digits) {
    BigDecimal exact = new BigDecimal(value).abs();
    int scale = digits - (exact.precision() - exact.scale());
    BigInteger below = exact.scaleByPowerOfTen(scale).toBigInteger();
    for (BigInteger mantissa : new BigInteger[] {below, below.add(BigInteger.ONE)}) {
      if (new BigDecimal(mantissa).scaleByPowerOfTen(-scale).doubleValue() == Math.abs(value)) {
        return true;
      }
    }
    return false;
  }

  @Test
  void refusesWhatIsNoNumber() {
    assertThatIllegalArgumentException().isThrownBy(() -> Decimals.shortest(Double.NaN));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Decimals.shortest(Double.NEGATIVE_INFINITY));
  }
}
