/**
 * The table of settings and how they are read from options and the environment. May use {@code
 * quantities}.
 */
@NullMarked
package thudbook.settings;

import org.jspecify.annotations.NullMarked;
