/** HTML routes, forms and view models. May use every room but {@code storage} and {@code api}. */
@NullMarked
package thudbook.pages;

import org.jspecify.annotations.NullMarked;
