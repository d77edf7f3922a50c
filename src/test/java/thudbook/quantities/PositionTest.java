package thudbook.quantities;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.LocalTime;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Property: positions are read as people write them, and written so that they read. */
class PositionTest {
  @ParameterizedTest
  @CsvSource({
    "10:30, 10:30",
    "07:00, 7:00",
    "75 deg, 75 deg",
    "75°, 75 deg",
    "75 degrees, 75 deg",
    "25 %, 25 %",
    "180ms, 180 ms",
    "1.2 kHz, 1200 Hz",
    "-6 dB, -6 dB",
    "1.5x, 1.5 x",
    "80 bpm, 80 bpm",
    "7, 7",
    "low, low",
    "16', 16'",
    "A1, A1",
    "1/4, 1/4",
    "12 o'clock, 12 o'clock"
  })
  void readsAndWrites(String text, String canonical) {
    Position position = Position.read(text).orElseThrow();
    assertThat(position.text()).isEqualTo(canonical);
    assertThat(Position.read(canonical)).contains(position);
  }

  @Test
  void tellsKindsApart() {
    assertThat(Position.read("10:30")).contains(new Position.Clock(LocalTime.of(10, 30)));
    assertThat(Position.read("25 %")).contains(new Position.Share(0.25));
    assertThat(Position.read("180 ms")).contains(new Position.Value(0.18, Dimension.TIME));
    assertThat(Position.read("7")).contains(new Position.Value(7, Dimension.NUMBER));
    assertThat(Position.read("16'")).contains(new Position.Named("16'"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"13:30", "0:30", "10:75", "4000 deg", "-1°", "150 %", "1,2 ms", "1e400 Hz", " "})
  void refuses(String text) {
    assertThat(Position.read(text)).isEqualTo(Optional.empty());
  }

  @ParameterizedTest
  @ValueSource(strings = {"7", "10:30", "25 %", "75 deg", "1,2", "13:99", ""})
  void aNameIsNothingElse(String name) {
    assertThatIllegalArgumentException().isThrownBy(() -> new Position.Named(name));
  }
}
