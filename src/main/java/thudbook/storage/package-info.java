/**
 * SQLite through jOOQ: implements every store. The generated schema stays inside. May use the nouns
 * and {@code documents}.
 */
@NullMarked
package thudbook.storage;

import org.jspecify.annotations.NullMarked;
