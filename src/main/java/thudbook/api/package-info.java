/** JSON routes under {@code /api}. May use every room but {@code storage} and {@code pages}. */
@NullMarked
package thudbook.api;

import org.jspecify.annotations.NullMarked;
