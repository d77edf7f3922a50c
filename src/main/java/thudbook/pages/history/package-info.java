/**
 * What was: revisions of recipes and gates, changes and their undo, the bin. Of {@code pages}, uses
 * {@code frame} and {@code reading}.
 */
@NullMarked
package thudbook.pages.history;

import org.jspecify.annotations.NullMarked;
