/**
 * Planning a day, and recall: sheets to set a patch up from, and their ticks. Of {@code pages},
 * uses {@code frame} and {@code reading}.
 */
@NullMarked
package thudbook.pages.sessions;

import org.jspecify.annotations.NullMarked;
