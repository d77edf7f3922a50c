/**
 * HTTP basics: start and stop, error map, host and origin checks, entity tags. May use {@code
 * access}.
 */
@NullMarked
package thudbook.web;

import org.jspecify.annotations.NullMarked;
