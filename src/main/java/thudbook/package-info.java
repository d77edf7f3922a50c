/** Start, settings, command line and wiring of the rooms. May use every room. */
@NullMarked
package thudbook;

import org.jspecify.annotations.NullMarked;
