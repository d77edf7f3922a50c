package thudbook.changes;

import java.time.Instant;
import thudbook.access.Author;

/**
 * One saved state of a thing. A revision is made whenever a person saves, and never changed again.
 *
 * @param number from 1
 * @param what the act that made it, in words
 * @param change the number of that act
 * @param thing it as it was
 * @param document its canonical text
 * @param <T> what kind of thing
 */
public record Revision<T>(
    int number, Instant at, Author author, String what, long change, T thing, String document) {}
