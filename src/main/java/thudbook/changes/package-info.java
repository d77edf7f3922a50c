/**
 * Anything that is written down: what a thing is called, its revisions, its bin, acts and undoing
 * them. It knows no noun; each is described by a {@link thudbook.changes.Noun} and a {@link
 * thudbook.changes.Rule}. May use quantities and access.
 */
@NullMarked
package thudbook.changes;

import org.jspecify.annotations.NullMarked;
