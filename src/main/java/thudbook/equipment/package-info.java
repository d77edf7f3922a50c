/**
 * The studio's equipment: gates with their channels, modules with their controls and ports, where
 * the numbers come from, and cautions. Angles in degrees, everything else in SI units. May use
 * {@code quantities}, {@code gates} and {@code access}.
 */
@NullMarked
package thudbook.equipment;

import org.jspecify.annotations.NullMarked;
