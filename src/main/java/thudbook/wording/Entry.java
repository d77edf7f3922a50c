package thudbook.wording;

/**
 * One line of a table of settings.
 *
 * @param key the value of the sound that it shows, such as {@code envelope.decay}; empty: none
 * @param name in words
 * @param value with its unit
 */
public record Entry(String key, String name, String value) {}
