package thudbook.wording;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * When something happened, as it is shown; a script puts it into the reader's own time zone.
 *
 * @param words in UTC
 * @param iso ISO 8601, UTC
 */
public record TimeOfRecord(String words, String iso) {
  private static final DateTimeFormatter WORDS =
      DateTimeFormatter.ofPattern("d MMMM yyyy, HH:mm 'UTC'", Locale.ENGLISH);

  public static TimeOfRecord of(Instant time) {
    return new TimeOfRecord(WORDS.format(time.atOffset(ZoneOffset.UTC)), time.toString());
  }
}
