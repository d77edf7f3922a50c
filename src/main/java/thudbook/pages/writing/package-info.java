/**
 * Editors of recipes and gates: the fields of a form with their words, live answers, drafts, and
 * the choice between two versions. Of {@code pages}, uses {@code frame} and {@code reading}.
 */
@NullMarked
package thudbook.pages.writing;

import org.jspecify.annotations.NullMarked;
