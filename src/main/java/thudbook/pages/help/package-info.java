/**
 * The help: its index and pages, and what to do about each kind of error. Of {@code pages}, uses
 * {@code frame}.
 */
@NullMarked
package thudbook.pages.help;

import org.jspecify.annotations.NullMarked;
