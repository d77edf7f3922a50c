/**
 * The studio's equipment: gates with their channels, where the numbers come from, and cautions. May
 * use {@code quantities}, {@code gates} and {@code access}.
 */
@NullMarked
package thudbook.equipment;

import org.jspecify.annotations.NullMarked;
