/**
 * Photos of patches: typed by their content, bounded, turned upright, and written anew without
 * anything that a camera put beside the picture. May use {@code quantities}.
 */
@NullMarked
package thudbook.photos;

import org.jspecify.annotations.NullMarked;
