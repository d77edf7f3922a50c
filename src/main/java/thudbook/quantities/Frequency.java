package thudbook.quantities;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A frequency as it was written: in hertz, or as a note of the equal-tempered scale. What was typed
 * is kept, because "A1" says more to a player than 55 Hz.
 */
public sealed interface Frequency {
  /** Lowest frequency that can be entered, in hertz. */
  double LOWEST_HERTZ = 0.01;

  /** Highest frequency that can be entered, in hertz. */
  double HIGHEST_HERTZ = 20_000;

  /** The frequency in hertz, 0.01 Hz to 20 kHz. */
  double hertz();

  /** A frequency of so many hertz. */
  static Frequency ofHertz(double hertz) {
    return new Hertz(hertz);
  }

  /**
   * A frequency given in hertz.
   *
   * @param hertz 0.01 Hz to 20 kHz
   */
  record Hertz(double hertz) implements Frequency {
    public Hertz {
      Check.inRange("frequency in hertz", hertz, LOWEST_HERTZ, HIGHEST_HERTZ);
    }
  }

  /**
   * A note of the equal-tempered scale, f = 440 · 2^((n − 69)/12) Hz with n the number of semitones
   * counted so that A4 is 69.
   *
   * <p>Source: A4 = 440 Hz is ISO 16:1975; octave numbers count from C, with A4 above middle C.
   *
   * @param name a letter A–G, optionally {@code #} or {@code b}, and an octave from −1 to 9, such
   *     as {@code A1}, {@code C#3}, {@code Eb2}
   */
  record Note(String name) implements Frequency {
    private static final Pattern FORM = Pattern.compile("([A-Ga-g])([#b♯♭]?)(-1|[0-9])");

    public Note {
      Matcher matcher = FORM.matcher(name);
      if (!matcher.matches()) {
        throw new IllegalArgumentException("a note such as A1 or C#3 was expected, found " + name);
      }
      name =
          matcher.group(1).toUpperCase(Locale.ROOT)
              + matcher.group(2).replace('♯', '#').replace('♭', 'b')
              + matcher.group(3);
      Check.inRange("frequency of the note " + name, hertzOf(name), LOWEST_HERTZ, HIGHEST_HERTZ);
    }

    /** The note that a text names, if it names one. */
    public static Optional<Note> read(String text) {
      return FORM.matcher(text).matches() ? Optional.of(new Note(text)) : Optional.empty();
    }

    @Override
    public double hertz() {
      return hertzOf(name);
    }

    private static double hertzOf(String name) {
      int semitone =
          switch (name.charAt(0)) {
            case 'C' -> 0;
            case 'D' -> 2;
            case 'E' -> 4;
            case 'F' -> 5;
            case 'G' -> 7;
            case 'A' -> 9;
            default -> 11;
          };
      int place = 1;
      if (name.charAt(place) == '#') {
        semitone++;
        place++;
      } else if (name.charAt(place) == 'b') {
        semitone--;
        place++;
      }
      int octave = Integer.parseInt(name.substring(place));
      int semitonesFromA4 = semitone + 12 * (octave + 1) - 69;
      return 440 * Math.pow(2, semitonesFromA4 / 12.0);
    }
  }
}
