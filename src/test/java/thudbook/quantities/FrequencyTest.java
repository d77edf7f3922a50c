package thudbook.quantities;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Reference and property tests of frequencies and notes. */
class FrequencyTest {
  /** Reference: the standard pitch of ISO 16:1975. */
  @Test
  void standardPitchIs440Hertz() {
    assertThat(new Frequency.Note("A4").hertz()).isEqualTo(440);
  }

  /**
   * Reference: the equal-tempered scale at A4 = 440 Hz to two to three places, as common tables
   * print it; worked out again in 30 digits with mpmath.
   */
  @ParameterizedTest
  @CsvSource({
    "C-1, 8.176, 5e-4",
    "A0, 27.5, 1e-12",
    "E1, 41.203, 5e-4",
    "A1, 55, 1e-12",
    "C4, 261.626, 5e-4",
    "C#4, 277.183, 5e-4",
    "Eb4, 311.127, 5e-4",
    "G4, 391.995, 5e-4",
    "B4, 493.883, 5e-4",
    "C8, 4186.01, 5e-3",
    "G9, 12543.85, 5e-3"
  })
  void notesHaveThePrintedFrequencies(String name, double hertz, double tolerance) {
    assertThat(new Frequency.Note(name).hertz()).isCloseTo(hertz, within(tolerance));
  }

  /** Property: twelve equal steps make an octave, whichever way a step is spelt. */
  @Test
  void theTwelveStepsOfAnOctaveAreEqual() {
    List<String> sharps = List.of("C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B");
    List<String> flats = List.of("C", "Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B");
    double last = new Frequency.Note("B-1").hertz();
    for (int octave = 0; octave <= 9; octave++) {
      for (int step = 0; step < 12; step++) {
        double hertz = new Frequency.Note(sharps.get(step) + octave).hertz();
        assertThat(hertz / last).isCloseTo(Math.pow(2, 1 / 12.0), within(1e-14));
        assertThat(new Frequency.Note(flats.get(step) + octave).hertz()).isEqualTo(hertz);
        last = hertz;
      }
    }
  }

  /**
   * Property: an octave number counts from C, so B# and Cb belong to the octave they are spelt in.
   */
  @Test
  void accidentalsCrossTheOctave() {
    assertThat(new Frequency.Note("B#3").hertz()).isEqualTo(new Frequency.Note("C4").hertz());
    assertThat(new Frequency.Note("Cb4").hertz()).isEqualTo(new Frequency.Note("B3").hertz());
  }

  @Test
  void spellingIsKeptInOneForm() {
    assertThat(new Frequency.Note("e♭2")).isEqualTo(new Frequency.Note("Eb2"));
    assertThat(new Frequency.Note("c♯3").name()).isEqualTo("C#3");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "H4", "A", "A10", "A-2", "A##4", "4A", "A4 ", " A4", "440"})
  void otherTextsAreNoNotes(String text) {
    assertThat(Frequency.Note.read(text)).isEmpty();
    assertThatThrownBy(() -> new Frequency.Note(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("a note such as A1 or C#3");
  }

  @Test
  void everyNoteThatReadsIsInRange() {
    for (int octave = -1; octave <= 9; octave++) {
      for (String step :
          List.of(
              "C", "C#", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B", "Cb", "B#")) {
        assertThat(Frequency.Note.read(step + octave).orElseThrow().hertz())
            .isBetween(Frequency.LOWEST_HERTZ, Frequency.HIGHEST_HERTZ);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY,
        -1,
        0,
        0.0099,
        20_000.01
      })
  void hertzOutOfRangeAreRefused(double hertz) {
    assertThatThrownBy(() -> Frequency.ofHertz(hertz))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(String.valueOf(hertz));
  }

  @Test
  void theEndsOfTheRangeAreTaken() {
    assertThat(Frequency.ofHertz(0.01).hertz()).isEqualTo(0.01);
    assertThat(Frequency.ofHertz(20_000).hertz()).isEqualTo(20_000);
  }
}
