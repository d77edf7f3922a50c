/**
 * HTTP basics: start and stop, error map, host and origin checks, entity tags, static assets. May
 * use {@code access}, and {@code quantities} for what is said of refused input.
 */
@NullMarked
package thudbook.web;

import org.jspecify.annotations.NullMarked;
