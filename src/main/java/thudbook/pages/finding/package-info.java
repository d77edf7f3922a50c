/**
 * The list of recipes with its search and filters, likeness, tags, shelves, and what is done with
 * many recipes. Of {@code pages}, uses {@code frame} and {@code reading}.
 */
@NullMarked
package thudbook.pages.finding;

import org.jspecify.annotations.NullMarked;
