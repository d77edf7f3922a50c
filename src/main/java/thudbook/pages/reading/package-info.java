/**
 * Recipes and gates to read, also beside each other, with what is predicted of them. Numbers stand
 * as {@code wording} says them. Of {@code pages}, uses {@code frame}.
 */
@NullMarked
package thudbook.pages.reading;

import org.jspecify.annotations.NullMarked;
