/**
 * SQLite through jOOQ: implements every store on one file in a folder that one process owns. One
 * connection writes, a few read. The generated schema stays inside. May use the nouns and {@code
 * documents}.
 */
@NullMarked
package thudbook.storage;

import org.jspecify.annotations.NullMarked;
