/**
 * The file of a notebook: its lock, its schema, migrations, backups, restoring, and what is said of
 * one that is refused. Times are moments in UTC, sizes bytes. Knows no noun; what migrations can't
 * make of documents, and verifying, is handed in. May use {@code quantities}.
 */
@NullMarked
package thudbook.storage.keeping;

import org.jspecify.annotations.NullMarked;
