/**
 * An opened notebook as one thing: where it keeps things, and what can be done with it. Both are
 * made once, when it is opened, and passed on as they are.
 */
@NullMarked
package thudbook.notebook;

import org.jspecify.annotations.NullMarked;
