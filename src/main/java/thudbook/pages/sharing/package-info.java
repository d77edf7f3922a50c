/**
 * Taking in and giving out: a look before anything is written, and tables. Of {@code pages}, uses
 * {@code frame}.
 */
@NullMarked
package thudbook.pages.sharing;

import org.jspecify.annotations.NullMarked;
