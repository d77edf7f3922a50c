/**
 * The modules of the studio: to read, to write, and their history. Of {@code pages}, uses {@code
 * frame} and {@code history}.
 */
@NullMarked
package thudbook.pages.rack;

import org.jspecify.annotations.NullMarked;
