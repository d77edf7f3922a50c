/**
 * The typed language of the search: words, sentences and numbers with units, read and completed,
 * and the address of a search. May use {@code library} and what it may.
 */
@NullMarked
package thudbook.library.typed;

import org.jspecify.annotations.NullMarked;
