/**
 * Finding: the rows of the recipe list. May use {@code quantities}, {@code predictions}, {@code
 * recipes} and {@code access}.
 */
@NullMarked
package thudbook.library;

import org.jspecify.annotations.NullMarked;
