/**
 * What every page stands in: the layout and its templates, posted forms, addresses, notes as HTML,
 * notices, and what the pages read and may do. Uses no other room of {@code pages}.
 */
@NullMarked
package thudbook.pages.frame;

import org.jspecify.annotations.NullMarked;
