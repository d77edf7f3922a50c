/**
 * The neutral tree of a document, with the place of each value, and its notations: YAML, JSON and
 * the fields of a form, read and printed. Values are checked here and keep their units as SI. Knows
 * no noun. May use {@code quantities}.
 */
@NullMarked
package thudbook.documents.tree;

import org.jspecify.annotations.NullMarked;
