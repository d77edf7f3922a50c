/**
 * Recipes: patches written down, complete or half-written. May use the numerical core, {@code
 * equipment} and {@code access}.
 */
@NullMarked
package thudbook.recipes;

import org.jspecify.annotations.NullMarked;
