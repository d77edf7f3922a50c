/**
 * What was: revisions, changes and their undo, the bin, and plain pages of nouns that have none of
 * their own. Of {@code pages}, uses {@code frame} and {@code reading}.
 */
@NullMarked
package thudbook.pages.history;

import org.jspecify.annotations.NullMarked;
