/**
 * Plain series, bands and points as SVG with text alternatives. Knows no noun of the notebook. May
 * use {@code quantities}.
 */
@NullMarked
package thudbook.drawings;

import org.jspecify.annotations.NullMarked;
