/** Who is there and who did something. May use no other room. */
@NullMarked
package thudbook.access;

import org.jspecify.annotations.NullMarked;
